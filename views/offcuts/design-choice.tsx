/** The design that something is of: typed by name, or chosen where the name was that of several. */
import type { FC } from 'hono/jsx';
import { nameOf } from '#core/finding/named.ts';
import type { Design } from '#core/stash/stash.ts';
import { type Entry, Field, Labelled } from '#views/common/field.tsx';
import { howMany } from '#views/common/words.ts';

interface Props {
  readonly label: string;
  readonly entry: Entry;
  /** Names that are offered before anything is typed. */
  readonly likely: readonly string[];
  /** Those that the name typed may mean. */
  readonly several?: readonly Design[];
  readonly value?: Design | undefined;
  readonly placeholder?: string;
  readonly autofocus?: boolean;
}

export const DesignChoice: FC<Props> = ({ likely, several = [], value, label, entry, ...rest }) =>
  several.length > 0 ? (
    <Labelled name="design" label={label} entry={entry}>
      <select id="design" name="design" aria-describedby="design-note" autofocus>
        {several.map((design) => (
          <option value={design.id}>
            {nameOf(design)}, {howMany(design.sheets, 'sheet')} left
          </option>
        ))}
        <option value="">none of these</option>
      </select>
    </Labelled>
  ) : (
    <Field
      name="design"
      label={label}
      entry={entry}
      value={value && nameOf(value)}
      likely={{ from: '/likely/designs', first: likely }}
      {...rest}
    />
  );
