/** The envelopes of a project one by one, neighbours that came out alike in one line, each with what may be done. */
import type { FC } from 'hono/jsx';
import { alike } from '#core/project/as-made.ts';
import type { Envelope } from '#core/project/journal.ts';
import { hasTried } from '#core/project/next.ts';
import { SAY_FIT } from '../common/fit.ts';
import { Once } from '../common/once.tsx';
import { nameOf } from './words.ts';

interface Props {
  readonly project: number;
  readonly envelopes: readonly Envelope[];
  readonly token: string;
}

export const Envelopes: FC<Props> = ({ project, envelopes, token }) => (
  <ul class="list envelopes">
    {alike(envelopes).map((group) => (
      <Group project={project} group={group} tried={hasTried(envelopes)} token={token} />
    ))}
  </ul>
);

interface GroupProps {
  readonly project: number;
  readonly group: readonly Envelope[];
  /** Once one is folded to the end, she may tick off the rest without the steps. */
  readonly tried: boolean;
  readonly token: string;
}

const Group: FC<GroupProps> = ({ project, group, tried, token }) => {
  const { outcome, state, number } = group[0]!;
  return (
    <li>
      <p class="spread">
        <span>
          <strong>{nameOf(group)}</strong> {SAY[state]}
          {outcome?.felt ? `; the card ${SAY_FIT[outcome.felt]}` : ''}
        </span>
        <span class="no-print">
          <Actions project={project} group={group} />
        </span>
      </p>
      {state === 'blank' && tried ? (
        <form method="post" action={`/projects/${project}/made`}>
          <Once token={token} />
          <input type="hidden" name="envelope" value={`${number}`} />
          <input type="hidden" name="rest" value="on" />
          <button type="submit" class="plain small">
            {group.length > 1 ? 'All of these are folded now' : 'It’s folded now'}
          </button>
        </form>
      ) : null}
      {state === 'made' && !outcome ? <Unmade project={project} group={group} /> : null}
      {state === 'spoiled' ? <Unspoiled project={project} group={group} /> : null}
      {outcome?.wrong ? <p>Went wrong: {outcome.wrong}</p> : null}
      {outcome?.savedBy ? <p>Saved by: {outcome.savedBy}</p> : null}
    </li>
  );
};

/** What was ticked off by mistake goes back to the blanks. */
const Unmade: FC<Pick<GroupProps, 'project' | 'group'>> = ({ project, group }) => (
  <form method="post" action={`/projects/${project}/made`} class="row no-print">
    <input type="hidden" name="_method" value="DELETE" />
    <input type="hidden" name="envelope" value={`${group.at(-1)!.number}`} />
    <button type="submit" class="plain small">
      {group.length > 1 ? 'The last isn’t folded yet' : 'It isn’t folded yet'}
    </button>
    {group.length > 1 ? (
      <button type="submit" class="plain small" name="rest" value="on">
        None of these is
      </button>
    ) : null}
  </form>
);

/** Written off by mistake: a blank again. Neighbours spoiled alike come back one by one. */
const Unspoiled: FC<Pick<GroupProps, 'project' | 'group'>> = ({ project, group }) => (
  <form method="post" action={`/projects/${project}/outcomes/${group.at(-1)!.number}`} class="no-print">
    <input type="hidden" name="_method" value="DELETE" />
    <button type="submit" class="plain small">
      {group.length > 1 ? 'The last isn’t spoiled after all' : 'It isn’t spoiled after all'}
    </button>
  </form>
);

const SAY: Record<Envelope['state'], string> = { blank: 'to be folded', made: 'made', spoiled: 'spoiled' };

const Actions: FC<{ project: number; group: readonly Envelope[] }> = ({ project, group }) => {
  const { number, state, outcome } = group[0]!;
  const several = group.length > 1;
  if (state === 'spoiled') return null;
  if (state === 'blank') {
    return (
      <>
        <a href={`/projects/${project}/make?envelope=${number}&step=1`}>
          {several ? 'Fold the next' : 'Fold it'}
        </a>
        {' · '}
        <a href={`/projects/${project}/spoiled?envelope=${number}`}>
          {several ? 'One is spoiled' : 'It’s spoiled'}
        </a>
      </>
    );
  }
  return (
    <>
      <a href={`/projects/${project}/outcomes/new?envelope=${number}`}>
        {outcome ? 'Correct or add to the record' : 'Write down how it came out'}
      </a>
      {outcome?.pocket ? (
        <>
          {' · '}
          <a href={`/projects/${project}/outcomes/${number}`}>What it says of the tool</a>
        </>
      ) : null}
    </>
  );
};
