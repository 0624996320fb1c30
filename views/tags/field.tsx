/** The field for a project's tags. What it offers goes on from those it bears, since a list replaces the whole line. */
import type { FC } from 'hono/jsx';
import { type Tag, typedTags } from '#shared/tags.ts';
import { type Entry, Field } from '../common/field.tsx';

interface Props {
  readonly tags: readonly Tag[];
  readonly usedTags: readonly Tag[];
  readonly entry: Entry;
}

export const TagField: FC<Props> = ({ tags, usedTags, entry }) => {
  const names = tags.map(({ name }) => name);
  return (
    <div>
      <Field
        name="tags"
        label="Tags"
        entry={entry}
        value={typedTags(names)}
        list="used-tags"
        hint="Technique, occasion: with commas between."
      />
      <datalist id="used-tags">
        {usedTags
          .filter(({ name }) => !names.includes(name))
          .map(({ name }) => (
            <option value={typedTags([...names, name])}>{name}</option>
          ))}
      </datalist>
    </div>
  );
};
