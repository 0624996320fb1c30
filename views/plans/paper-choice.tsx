/** Which paper will do: any that suits, a kind, or one design; the few that are likely to choose from, the rest by name. */
import type { FC } from 'hono/jsx';
import { nameOf } from '#core/finding/named.ts';
import type { Design } from '#core/stash/stash.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import { type Entry, Field, Labelled } from '../common/field.tsx';

/** What every choice of a batch's paper offers. */
export interface PapersOffered {
  readonly kinds: readonly PaperKind[];
  /** Best first. */
  readonly suits: readonly Design[];
  /** Those that the form names. */
  readonly chosen: readonly Design[];
  /** By the field, those that its name may mean. */
  readonly several: ReadonlyMap<string, readonly Design[]>;
}

interface Props extends PapersOffered {
  readonly name: string;
  readonly label: string;
  readonly entry: Entry;
}

export const PaperChoice: FC<Props> = ({ name, label, entry, kinds, suits, chosen, several }) => {
  const value = entry.typed[name] ?? '';
  const meant = several.get(name) ?? [];
  const known = [...meant, ...suits];
  const own = chosen.filter(({ id }) => value === `design-${id}` && !known.some((one) => one.id === id));
  return (
    <>
      <Labelled name={name} label={label} entry={entry}>
        <select id={name} name={name} aria-describedby={`${name}-note`}>
          {meant.length > 0 ? (
            <optgroup label="Called so">
              <option value="which">which of these?</option>
              <Designs designs={meant} value={value} />
            </optgroup>
          ) : null}
          <option value="">any of my paper that suits</option>
          {kinds.map((kind) => (
            <option value={`kind-${kind}`} selected={value === `kind-${kind}`}>
              any {kind} that suits
            </option>
          ))}
          <Designs designs={own} value={value} />
          {suits.length > 0 ? (
            <optgroup label="Suits the envelope best">
              <Designs designs={suits} value={value} />
            </optgroup>
          ) : null}
        </select>
      </Labelled>
      <Field
        name={`${name}Named`}
        label="or one by its name"
        entry={entry}
        likely={{ from: '/likely/papers', first: suits.map(nameOf) }}
      />
    </>
  );
};

const Designs: FC<{ designs: readonly Design[]; value: string }> = ({ designs, value }) => (
  <>
    {designs.map((design) => (
      <option value={`design-${design.id}`} selected={value === `design-${design.id}`}>
        {nameOf(design)} ({design.sheets} left)
      </option>
    ))}
  </>
);
