/** One part of a batch as a row of fields; all but name, size and number stand behind a tap. Knows no other part. */
import type { FC } from 'hono/jsx';
import type { PaperKind, Piece } from '#core/project/stash.ts';
import { PART_FIELDS } from '#shared/schemas/plan.ts';
import { Choice, type Entry, Field } from '../parts/field.tsx';
import { PaperChoice } from './paper-choice.tsx';

interface Props {
  readonly number: number;
  readonly entry: Entry;
  readonly kinds: readonly PaperKind[];
  readonly pieces: readonly Piece[];
}

/** The names of its fields. */
export const partFields = (number: number): string[] =>
  PART_FIELDS.map((field) => `parts.${number}.${field}`);

export const PartRow: FC<Props> = ({ number, ...view }) => {
  const { entry } = view;
  const name = (field: (typeof PART_FIELDS)[number]): string => `parts.${number}.${field}`;
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

const PRINTS = [
  { value: 'any way', label: 'may lie any way' },
  { value: 'upright', label: 'height along the print' },
  { value: 'bordered', label: 'border along the bottom' },
];
