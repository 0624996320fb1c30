/** The ledger of one piece in words, newest line first, with what was left after each. Knows no arithmetic of its own but that. */
import type { FC } from 'hono/jsx';
import { isByHand, type Movement } from '#core/stash/stash.ts';
import { When } from '#views/common/when.tsx';

interface Props {
  readonly movements: readonly Movement[];
  /** After the newest line. */
  readonly left: number;
  readonly projects: ReadonlyMap<number, string>;
  readonly back: string;
}

export const Ledger: FC<Props> = ({ movements, left, projects, back }) => (
  <div class="scroll">
    <table class="ledger">
      <thead>
        <tr>
          <th>When</th>
          <th>What</th>
          <th class="number">±</th>
          <th class="number">Left</th>
          <th>
            <span class="hidden">Undo</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {withLeft(movements, left).map(({ line, after }) => (
          <tr class={line.reversedBy === null ? undefined : 'undone'}>
            <td>
              <When at={line.at} />
            </td>
            <td>
              {say(line)}
              {line.project === null ? null : (
                <>
                  {' '}
                  for <a href={`/projects/${line.project}`}>{projects.get(line.project) ?? 'a project'}</a>
                </>
              )}
              {line.note === '' ? null : <span class="quiet"> {line.note}</span>}
            </td>
            <td class="number">{signed(line.delta)}</td>
            <td class="number">{after}</td>
            <td>{line.reversedBy === null && isByHand(line) ? <Undo line={line} back={back} /> : null}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);

const Undo: FC<{ line: Movement; back: string }> = ({ line, back }) => (
  <form method="post" action={`/movements/${line.id}`}>
    <input type="hidden" name="_method" value="DELETE" />
    <input type="hidden" name="back" value={back} />
    <button type="submit" class="plain small">
      Undo
    </button>
  </form>
);

function say({ kind, delta, reversedBy }: Movement): string {
  const undone = reversedBy === null ? '' : ' (undone since)';
  if (kind === 'counted') {
    if (delta === 0) return 'counted: as noted';
    return delta > 0 ? 'counted: more than noted' : 'counted: fewer than noted';
  }
  return `${WORDS[kind]}${undone}`;
}

const WORDS = {
  bought: 'bought',
  cut: 'cut',
  'left over': 'left over from a cut',
  spoiled: 'spoiled',
  binned: 'gone',
  'put back': 'put back',
  withdrawn: 'taken out again',
} as const;

const signed = (delta: number): string => (delta > 0 ? `+${delta}` : `${delta}`.replace('-', '−'));

/** Newest first: what was left after a line is what is left now, less all that came later. */
function withLeft(movements: readonly Movement[], left: number): { line: Movement; after: number }[] {
  let after = left;
  return movements.map((line) => {
    const row = { line, after };
    after -= line.delta;
    return row;
  });
}
