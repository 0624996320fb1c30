/** Every design to choose one from, under the pad it belongs to. */
import type { FC } from 'hono/jsx';
import type { Design } from '#core/stash/stash.ts';
import { type Entry, Labelled } from '#views/common/field.tsx';

interface Props {
  readonly label: string;
  readonly entry: Entry;
  readonly designs: readonly Design[];
  readonly value?: number | undefined;
  /** What choosing none is called, where that may be. */
  readonly none?: string;
  readonly autofocus?: boolean;
}

export const DesignChoice: FC<Props> = ({ label, entry, designs, value, none, autofocus }) => {
  const chosen = entry.typed.design ?? `${value ?? ''}`;
  return (
    <Labelled name="design" label={label} entry={entry}>
      <select id="design" name="design" aria-describedby="design-note" autofocus={autofocus}>
        {none === undefined && chosen !== '' ? null : <option value="">{none ?? 'Choose…'}</option>}
        {byPad(designs).map(([pad, ofPad]) => (
          <optgroup label={pad}>
            {ofPad.map((design) => (
              <option
                value={design.id}
                class={design.print.direction === 'one edge' ? 'bordered' : undefined}
                selected={`${design.id}` === chosen}
              >
                {design.name}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </Labelled>
  );
};

function byPad(designs: readonly Design[]): [string, Design[]][] {
  const pads = new Map<number, [string, Design[]]>();
  for (const design of designs) {
    const { id, name } = design.pad;
    if (!pads.has(id)) pads.set(id, [name, []]);
    pads.get(id)![1].push(design);
  }
  return [...pads.values()];
}
