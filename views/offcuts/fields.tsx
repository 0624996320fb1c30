/** The fields that adding an offcut and putting one right have in common. */
import type { FC } from 'hono/jsx';
import { typedLength, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { type Entry, Field } from '#views/common/field.tsx';

interface SizeProps {
  readonly entry: Entry;
  readonly units: Units;
  readonly value?: Size;
  readonly autofocus?: boolean;
}

export const SizeFields: FC<SizeProps> = ({ entry, units, value, autofocus }) => (
  <>
    <Field
      name="width"
      label="Width"
      kind="length"
      entry={entry}
      value={value && typedLength(value.width, units)}
      autofocus={autofocus}
    />
    <Field
      name="height"
      label="Height"
      kind="length"
      entry={entry}
      value={value && typedLength(value.height, units)}
      hint="along the print"
    />
  </>
);

interface PlaceProps {
  readonly entry: Entry;
  readonly places: readonly string[];
  readonly value?: string | undefined;
  readonly autofocus?: boolean;
}

export const PlaceField: FC<PlaceProps> = ({ entry, places, value, autofocus }) => (
  <Field
    name="place"
    label="Place"
    entry={entry}
    value={value}
    likely={{ from: '/likely/places', first: places }}
    autofocus={autofocus}
    hint="the box, drawer or folder it goes into"
  />
);

/** For a design whose border lies along one edge; of any other it is not kept. */
export const BorderTick: FC<{ entry: Entry; value: boolean }> = ({ entry, value }) => {
  const typed = Object.keys(entry.typed).length > 0;
  return (
    <p>
      <label>
        <input type="checkbox" name="border" checked={typed ? entry.typed.border === 'on' : value} />
        The printed border is still on its bottom edge
      </label>
    </p>
  );
};
