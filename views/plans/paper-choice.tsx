/** Which paper will do: any, a kind, or one design. Knows no sizes. */
import type { FC } from 'hono/jsx';
import type { Design, Piece } from '#core/stash/stash.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import { type Entry, Labelled } from '../common/field.tsx';

interface Props {
  readonly name: string;
  readonly label: string;
  readonly entry: Entry;
  readonly kinds: readonly PaperKind[];
  readonly pieces: readonly Piece[];
}

export const PaperChoice: FC<Props> = ({ name, label, entry, kinds, pieces }) => {
  const chosen = entry.typed[name] ?? '';
  return (
    <Labelled name={name} label={label} entry={entry}>
      <select id={name} name={name} aria-describedby={`${name}-note`}>
        <option value="">any paper</option>
        {kinds.map((kind) => (
          <option value={`kind-${kind}`} selected={chosen === `kind-${kind}`}>
            any {kind}
          </option>
        ))}
        {byPad(pieces).map(([pad, designs]) => (
          <optgroup label={pad}>
            {designs.map(({ id, name }) => (
              <option value={`design-${id}`} selected={chosen === `design-${id}`}>
                {name}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </Labelled>
  );
};

/** The designs of which anything is left, under their pads. */
function byPad(pieces: readonly Piece[]): [string, Design[]][] {
  const designs = new Map(pieces.map(({ design }) => [design.id, design]));
  const pads = new Map<number, [string, Design[]]>();
  for (const design of designs.values()) {
    const { id, name } = design.pad;
    if (!pads.has(id)) pads.set(id, [name, []]);
    pads.get(id)![1].push(design);
  }
  return [...pads.values()];
}
