/** What is asked about an envelope beside its size: thickness, weight, address, front, what makes trouble. */
import type { FC } from 'hono/jsx';
import type { Units } from '#shared/length.ts';
import type { ADDRESSES, FRONTS, TROUBLES } from '#shared/schemas/post.ts';
import { Choice, type Entry, Field, fieldNote } from '../common/field.tsx';

interface Props {
  readonly entry: Entry;
  readonly units: Units;
  /** What thickness and weight were reckoned with, where she didn’t type them. */
  readonly reckoned?: string | undefined;
  /** Whether it may be a card that travels bare. */
  readonly mayBeBare?: boolean;
}

export const PostFields: FC<Props> = ({ entry, units, reckoned, mayBeBare }) => (
  <>
    <div class="fields">
      <Field name="thick" label="Thickness" kind="length" entry={entry} hint={reckoned ?? HINTS.thick} />
      <Field
        name="mass"
        label="Weight"
        kind="length"
        entry={entry}
        hint={reckoned ?? `with its card, in ${units.unit === 'in' ? 'oz or g' : 'g or oz'}`}
      />
      <Choice name="address" label="The address runs" entry={entry} value="along" choices={ADDRESS_CHOICES} />
      <Choice
        name="front"
        id="post-front"
        label="Its front is"
        entry={entry}
        value="light"
        choices={FRONT_CHOICES}
      />
    </div>
    <Ticks entry={entry} names={mayBeBare ? [...TROUBLE_NAMES, 'bare'] : TROUBLE_NAMES} />
  </>
);

/** The notes that follow as she types. */
export const PostNotes: FC<{ entry: Entry }> = ({ entry }) => (
  <>{(['width', 'height', 'thick', 'mass'] as const).map((name) => fieldNote(name, entry, HINTS[name]))}</>
);

const HINTS = {
  width: '',
  height: '',
  thick: 'closed, at its thickest',
  mass: 'with its card in it',
} as const;

const Ticks: FC<{ entry: Entry; names: readonly (keyof typeof TICKS)[] }> = ({ entry, names }) => (
  <fieldset class="choices" aria-label="What is special about it">
    {names.map((name) => (
      <label>
        <input type="checkbox" name={name} checked={entry.typed[name] === 'on'} />
        {TICKS[name]}
      </label>
    ))}
  </fieldset>
);

const TICKS = {
  lumps: 'a bow, a charm, something uneven',
  rigid: 'it doesn’t bend',
  clasp: 'a clasp, string or button',
  bare: 'a card without envelope',
} as const satisfies Record<(typeof TROUBLES)[number] | 'bare', string>;

const TROUBLE_NAMES = ['lumps', 'rigid', 'clasp'] as const;

const ADDRESS_CHOICES: readonly { value: (typeof ADDRESSES)[number]; label: string }[] = [
  { value: 'along', label: 'along the longer side' },
  { value: 'up', label: 'along the shorter side' },
];

const FRONT_CHOICES: readonly { value: (typeof FRONTS)[number]; label: string }[] = [
  { value: 'light', label: 'light' },
  { value: 'patterned', label: 'patterned' },
  { value: 'dark', label: 'dark' },
];
