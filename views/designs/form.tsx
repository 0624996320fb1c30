/** The form of a design: a new one, with what the one before had, or one put right. */
import type { FC } from 'hono/jsx';
import type { Design, Pad } from '#core/stash/stash.ts';
import { typedLength, type Units } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import { Choice, type Entry, Field, FormProblems } from '#views/common/field.tsx';
import { Once } from '#views/common/once.tsx';
import { howMany } from '#views/common/words.ts';
import { SwatchChip } from '#views/diagrams/swatch.tsx';
import { FIRST_LOOK, LookFields } from './look.tsx';

interface AddProps {
  readonly pad: Pad;
  /** The one before in this row, whose print and colours are kept. */
  readonly added: Design | undefined;
  readonly entry: Entry;
  readonly units: Units;
  readonly token: string;
}

export const AddDesign: FC<AddProps> = ({ pad, added, entry, units, token }) => (
  <>
    <p>
      <a href={`/pads/${pad.id}`}>{pad.name}</a>
    </p>
    <h1>{added ? 'The next design' : 'Its designs'}</h1>
    {added === undefined ? (
      <p class="lead">One pattern or colour at a time, with the sheets there are of it.</p>
    ) : (
      <div class="done" role="status">
        <SwatchChip id="added" swatch={added.swatch} name={added.name} />
        <span>
          <a href={`/designs/${added.id}`}>{added.name}</a>, {howMany(added.sheets, 'sheet')}: noted.
        </span>
      </div>
    )}
    <form method="post" action={`/pads/${pad.id}/designs`} class="sheet">
      <Once token={token} />
      <FormProblems entry={entry} fields={FIELDS} />
      <div class="fields">
        <Field
          name="name"
          label="Name"
          entry={entry}
          autofocus
          hint="yours: ferns, blue stripe, the one with hares"
        />
        <Field
          name="sheets"
          label="Sheets"
          kind="count"
          entry={entry}
          value={`${added?.sheets ?? ''}`}
          hint="0 if only offcuts are left"
        />
      </div>
      <DesignFields kept={added} pad={pad} entry={entry} units={units} />
      <p class="row">
        <button type="submit">Add this design</button>
        <a href={`/pads/${pad.id}`}>That was the last one</a>
        {added ? <a href={`/offcuts/new?design=${added.id}`}>Add offcuts of {added.name}</a> : null}
      </p>
    </form>
  </>
);

interface EditProps {
  readonly design: Design;
  readonly entry: Entry;
  readonly units: Units;
}

export const EditDesign: FC<EditProps> = ({ design, entry, units }) => (
  <>
    <h1>Put {design.name} right</h1>
    <p class="lead">How many sheets there are is counted again on its own page.</p>
    <form method="post" action={`/designs/${design.id}`} class="sheet">
      <input type="hidden" name="_method" value="PUT" />
      <FormProblems entry={entry} fields={FIELDS} />
      <div class="fields">
        <Field name="name" label="Name" entry={entry} value={design.name} autofocus />
        <LowMark design={design} entry={entry} />
      </div>
      <DesignFields kept={design} pad={design.pad} entry={entry} units={units} />
      <p class="row">
        <button type="submit">Keep it so</button>
        <a href={`/designs/${design.id}`}>Leave it as it was</a>
      </p>
    </form>
  </>
);

/** A new design has its share of the pad's. */
export const LowMark: FC<{ design: Design; entry: Entry }> = ({ design, entry }) => (
  <Field
    name="lowMark"
    label="Low mark"
    kind="count"
    entry={entry}
    value={`${design.lowMark ?? ''}`}
    hint={`empty: its share of the pad’s ${design.pad.lowMark}; 0: never`}
  />
);

const FIELDS = ['name', 'sheets', 'lowMark', 'direction', 'border', 'ground', 'inks', 'ink1', 'ink2', 'ink3'];

const DIRECTIONS = [
  { value: 'any way', label: 'may lie any way' },
  { value: 'upright', label: 'stands upright' },
  { value: 'one edge', label: 'has a border on one edge' },
];

const DesignFields: FC<{ kept: Design | undefined; pad: Pad; entry: Entry; units: Units }> = ({
  kept,
  pad,
  entry,
  units,
}) => {
  const typed = Object.keys(entry.typed).length > 0;
  const print: Print = kept?.wholePrint ?? kept?.print ?? { direction: 'any way' };
  return (
    <>
      <div class="fields print-direction">
        <Choice
          name="direction"
          label="The print"
          entry={entry}
          value={print.direction}
          choices={DIRECTIONS}
        />
        <div class="border-depth">
          <Field
            name="border"
            label="Border depth"
            kind="length"
            entry={entry}
            value={print.direction === 'one edge' ? typedLength(print.border, units) : ''}
            hint={
              pad.strip?.edge === 'bottom'
                ? 'from the sheet’s bottom edge up, its strip with it'
                : 'from the bottom edge up'
            }
          />
        </div>
      </div>
      <p>
        <label>
          <input
            type="checkbox"
            name="doubleSided"
            checked={typed ? entry.typed.doubleSided === 'on' : (kept?.doubleSided ?? false)}
          />
          Printed on both sides
        </label>
      </p>
      <LookFields entry={entry} look={kept?.swatch ?? FIRST_LOOK} print={print} pad={pad} />
    </>
  );
};
