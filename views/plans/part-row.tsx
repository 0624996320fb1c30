/** One part of a batch as a row of fields; all but name, size and number stand behind a tap. Knows no other part. */
import type { FC } from 'hono/jsx';
import { PART_FIELDS } from '#shared/schemas/plan.ts';
import { Choice, type Entry, Field } from '../common/field.tsx';
import { PaperChoice, type PapersOffered } from './paper-choice.tsx';

interface Props extends PapersOffered {
  readonly number: number;
  readonly entry: Entry;
}

/** The names of its fields. */
export const partFields = (number: number): string[] =>
  PART_FIELDS.map((field) => `parts.${number}.${field}`);

export const PartRow: FC<Props> = ({ number, ...view }) => {
  const { entry } = view;
  const name: Named = (field) => `parts.${number}.${field}`;
  const typed = entry.typed[name('name')] ?? '';
  return (
    <fieldset class="part sheet">
      <legend class="hidden">{typed === '' ? `Part ${number + 1}` : typed}</legend>
      <div class="fields">
        <Field name={name('name')} label="Part" entry={entry} autofocus={typed === ''} />
        <Field name={name('width')} label="Width" kind="length" entry={entry} />
        <Field name={name('height')} label="Height" kind="length" entry={entry} />
        <Field name={name('copies')} label="How many" kind="count" entry={entry} />
        <PaperChoice name={name('paper')} label="Paper" {...view} />
        <Choice name={name('print')} label="Print" entry={entry} choices={PRINTS} />
        <Field
          name={name('grammage')}
          label="At least, g/m²"
          kind="count"
          entry={entry}
          hint="only if weight matters"
        />
      </div>
      <Spot {...{ entry, name }} />
      <p class="spread">
        <label>
          <input type="checkbox" name={name('match')} checked={entry.typed[name('match')] === 'on'} />
          the same design as its envelope
        </label>
        <button type="submit" name="do" value={`drop-${number}`} class="plain small">
          Leave it out<span class="hidden">: {typed}</span>
        </button>
      </p>
    </fieldset>
  );
};

type Named = (field: (typeof PART_FIELDS)[number]) => string;

/** A motif that has to be on it: the part is measured out where the motif lies. */
const Spot: FC<{ entry: Entry; name: Named }> = ({ entry, name }) => {
  const fields = [name('fromLeft'), name('fromTop')];
  const asked = fields.some((field) => (entry.typed[field] ?? '') !== '');
  return (
    <details class="spot" open={asked || entry.problems.some(({ field }) => fields.includes(field))}>
      <summary>{asked ? 'From one spot of a whole sheet' : 'From anywhere on the paper'}</summary>
      <p>
        Has a motif of the sheet to be on it? Lay a whole sheet as it is drawn, its print running up and a
        strip that can’t be used cut off, and measure where the part begins. Each copy takes a sheet.
      </p>
      <div class="fields">
        <Field name={fields[0]!} label="Left edge, from the sheet’s left" kind="length" entry={entry} />
        <Field name={fields[1]!} label="Top, from the sheet’s top" kind="length" entry={entry} />
      </div>
    </details>
  );
};

const PRINTS = [
  { value: 'any way', label: 'may lie any way' },
  { value: 'upright', label: 'height along the print' },
  { value: 'bordered', label: 'border along the bottom' },
];
