/** The fields that say what a design looks like, with a picture beside that follows them. Knows no other fields. */
import type { FC } from 'hono/jsx';
import type { Pad } from '#core/stash/stash.ts';
import { inches } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import { MOTIFS, type Swatch } from '#shared/swatch.ts';
import { type Entry, Labelled } from '#views/common/field.tsx';
import { SwatchChip } from '#views/diagrams/swatch.tsx';
import { scaleFor } from '#views/stash/paper.tsx';
import { SheetPicture } from './picture.tsx';

export const FIRST_LOOK: Swatch = {
  motif: 'plain',
  ground: '#f4ead8',
  inks: ['#a8432f', '#3f5f3a', '#2b4a63'],
};

interface Props {
  readonly entry: Entry;
  /** Kept from the design before, or the one that is put right. */
  readonly look: Swatch;
  readonly print: Print;
  readonly pad: Pad;
}

export const LookFields: FC<Props> = ({ entry, look, print, pad }) => {
  const shown = typedLook(entry, look);
  return (
    <div
      class="look"
      hx-get={`/pads/${pad.id}/look`}
      hx-trigger="input delay:120ms"
      hx-include="closest form"
      hx-target="#look"
    >
      <div>
        <fieldset class="motifs">
          <legend>Motif</legend>
          {MOTIFS.map((motif) => (
            <label>
              <input type="radio" name="motif" value={motif} checked={motif === shown.motif} />
              <span aria-hidden="true">
                <SwatchChip id={`motif-${motif}`} swatch={{ ...shown, motif }} name={motif} size={36} />
              </span>
              {motif}
            </label>
          ))}
        </fieldset>
        <fieldset class="inks">
          <legend>Colours</legend>
          <div class="fields">
            <Colour name="ground" label="Ground" value={shown.ground} entry={entry} />
            {[1, 2, 3].map((ink) => (
              <Colour
                name={`ink${ink}`}
                label={`Ink ${ink}`}
                value={shown.inks[ink - 1] ?? FIRST_LOOK.inks[ink - 1]!}
                entry={entry}
              />
            ))}
            <Labelled name="inks" label="Inks" entry={entry}>
              <select id="inks" name="inks" aria-describedby="inks-note">
                {['1', '2', '3'].map((many) => (
                  <option
                    value={many}
                    selected={many === (entry.typed.inks ?? `${Math.min(look.inks.length, 3)}`)}
                  >
                    {many}
                  </option>
                ))}
              </select>
            </Labelled>
          </div>
        </fieldset>
      </div>
      <Look swatch={shown} print={print} pad={pad} />
    </div>
  );
};

/** The picture alone, as it is fetched while colours are being chosen. */
export const Look: FC<{ swatch: Swatch; print: Print; pad: Pad }> = ({ swatch, print, pad }) => (
  <div id="look">
    <SheetPicture design={{ name: '', swatch, print, pad }} scale={scaleFor([pad.sheet], 200, inches(6))} />
  </div>
);

const Colour: FC<{ name: string; label: string; value: string; entry: Entry }> = ({
  name,
  label,
  value,
  entry,
}) => (
  <Labelled name={name} label={label} entry={entry}>
    <input type="color" id={name} name={name} value={value} class={name} aria-describedby={`${name}-note`} />
  </Labelled>
);

function typedLook({ typed }: Entry, look: Swatch): Swatch {
  const colour = (name: string, otherwise: string): string =>
    /^#[0-9a-f]{6}$/i.test(typed[name] ?? '') ? typed[name]! : otherwise;
  return {
    motif: MOTIFS.find((motif) => motif === typed.motif) ?? look.motif,
    ground: colour('ground', look.ground),
    inks: [1, 2, 3].map((ink) => colour(`ink${ink}`, look.inks[ink - 1] ?? FIRST_LOOK.inks[ink - 1]!)),
  };
}
