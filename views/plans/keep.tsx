/** What is to stay on the shelf: designs of which no new sheet is opened, single offcuts. Everything may be used else. */
import type { FC } from 'hono/jsx';
import { pieceName } from '#core/batch/to-order.ts';
import { type Piece, refOf } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { type Entry, Field } from '../common/field.tsx';
import { howMany } from '../common/words.ts';
import { SwatchChip } from '../diagrams/swatch.tsx';

interface Props {
  readonly kept: readonly Piece[];
  /** What is likely to be cut first. */
  readonly likely: readonly Piece[];
  readonly entry: Entry;
  readonly units: Units;
}

/** More than these are kept without a box of their own. */
const MOST_SHOWN = 40;

export const KeepChoice: FC<Props> = ({ kept, likely, entry, units }) => {
  const wrong = entry.problems.some(({ field }) => field.startsWith('keep'));
  const names = new Set(kept.map(nameIn));
  const shown = [...kept.slice(0, MOST_SHOWN), ...likely.filter((piece) => !names.has(nameIn(piece)))];
  const rest = kept.slice(MOST_SHOWN);
  return (
    <details open={kept.length > 0 || wrong}>
      <summary>
        {kept.length === 0 ? 'All of the shelf may be used' : `${howMany(kept.length, 'paper')} kept`}; keep
        some of it?
      </summary>
      <div class="columns">
        <Ticks heading="Open no new sheet of" pieces={shown.filter(({ offcut }) => !offcut)} entry={entry}>
          {({ design }) => `${design.name} (${design.sheets} left)`}
        </Ticks>
        <Ticks heading="Keep these offcuts" pieces={shown.filter(({ offcut }) => offcut)} entry={entry}>
          {(piece) => `${piece.offcut!.code} ${printExactSize(piece, units)} ${piece.design.name}`}
        </Ticks>
      </div>
      {rest.length > 0 ? (
        <p>
          {rest.map((piece) => (
            <input type="hidden" name={nameIn(piece)} value="on" />
          ))}
          {rest.length.toLocaleString('en-GB')} more stay kept.
        </p>
      ) : null}
      <div class="fields">
        <Field
          name="keepNamed"
          label="Keep another"
          entry={entry}
          hint="a design by its name, or an offcut by its code"
          likely={{ from: '/likely/papers', first: [] }}
        />
        <p class="field press">
          <button type="submit" name="do" value="keep" class="plain small">
            Keep it too
          </button>
        </p>
      </div>
    </details>
  );
};

const nameIn = (piece: Piece): string => `keep.${pieceName(refOf(piece))}`;

interface TicksProps {
  readonly heading: string;
  readonly pieces: readonly Piece[];
  readonly entry: Entry;
  readonly children: (piece: Piece) => string;
}

const Ticks = ({ heading, pieces, entry, children }: TicksProps) =>
  pieces.length === 0 ? null : (
    <fieldset class="keep">
      <legend>{heading}</legend>
      {pieces.map((piece) => {
        const name = nameIn(piece);
        return (
          <label>
            <input type="checkbox" name={name} checked={entry.typed[name] === 'on'} />
            <SwatchChip
              id={name.replace('.', '-')}
              swatch={piece.design.swatch}
              name={piece.design.name}
              size={22}
            />{' '}
            {children(piece)}
          </label>
        );
      })}
    </fieldset>
  );
