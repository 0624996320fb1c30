/** A plan that is still looked for, or was not: how far it has come, and what can be done about it. */
import type { FC } from 'hono/jsx';
import type { PlanSoFar } from '#core/cutting/order.ts';
import type { Project } from '#core/project/journal.ts';
import { howMany } from '#views/common/words.ts';
import { Once } from '../common/once.tsx';

interface Props {
  readonly id: number;
  readonly project: Project;
}

export interface SoFar {
  readonly id: number;
  readonly progress: PlanSoFar | undefined;
  readonly leastSheets: number;
  readonly seconds: number;
}

/** Only its lines change as it goes on; without script the page asks for itself again. */
export const Looking: FC<SoFar & { project: Project }> = ({ project, ...far }) => (
  <Frame project={project}>
    <h1>Looking for the best cuts…</h1>
    <div role="status" id="planning-best">
      <Best {...far} />
    </div>
    <Gone {...far} />
    <div class="row">
      <form method="post" action={`/plans/${far.id}/planning`}>
        <input type="hidden" name="_method" value="DELETE" />
        <button type="submit">Good enough: take the best so far</button>
      </form>
      <a href={`/plans/${far.id}`}>Look again</a>
    </div>
  </Frame>
);

/** The time gone, and the best so far where it is not the one that the reader has `seen`: nothing is announced twice. */
export const FarNow: FC<SoFar & { seen: string | undefined }> = ({ seen, ...far }) => (
  <>
    <Gone {...far} />
    {signOf(far) === seen ? null : (
      <div id="planning-best" hx-swap-oob="innerHTML">
        <Best {...far} />
      </div>
    )}
  </>
);

const Best: FC<SoFar> = ({ progress, leastSheets }) =>
  progress ? (
    <>
      <p class="answer">{sayBest(progress)}</p>
      <p class="quiet">{sayBound(progress, leastSheets)}</p>
    </>
  ) : (
    <p class="lead">It waits for its turn.</p>
  );

const Gone: FC<SoFar> = (far) => (
  <p
    id="planning-gone"
    class="quiet"
    hx-get={`/plans/${far.id}/planning?seen=${signOf(far)}`}
    hx-trigger="load delay:1s"
    hx-swap="outerHTML"
  >
    {howMany(far.seconds, 'second')} gone
  </p>
);

/** What the lines about the best speak of. */
const signOf = ({ progress, leastSheets }: SoFar): string =>
  progress ? [progress.placed, progress.newSheets, progress.bounds.unplaced, leastSheets].join('-') : 'waits';

const sayBest = ({ placed, unplaced, newSheets }: PlanSoFar): string =>
  `Best so far: ${unplaced === 0 ? 'everything fits' : `${placed} of ${placed + unplaced} parts fit`}, ${newSheets === 0 ? 'no new sheet' : howMany(newSheets, 'new sheet')}.`;

function sayBound({ bounds }: PlanSoFar, sheets: number): string {
  const known = [
    ...(bounds.unplaced > 0 ? [`at least ${howMany(bounds.unplaced, 'part')} left out`] : []),
    ...(sheets > 0 ? [`at least ${howMany(sheets, 'new sheet')}`] : []),
  ];
  return known.length === 0
    ? 'It may even do without a new sheet.'
    : `Whatever the plan: ${known.join(', ')}.`;
}

/** Nothing is being looked for: all planners are busy, or the app was restarted meanwhile. */
export const NotBegun: FC<Props & { busy: boolean }> = ({ id, project, busy }) => (
  <Frame project={project}>
    <h1>{busy ? 'Too many plans are waiting.' : 'This plan isn’t found yet.'}</h1>
    <p class="lead">
      {busy
        ? 'What you asked for is kept. Try again in a moment.'
        : 'What you asked for is kept, and can be planned again.'}
    </p>
    <Start id={id} />
  </Frame>
);

/** A plan that the judge refused, or a planner that broke down. */
export const Faulty: FC<Props & { token: string }> = ({ id, project, token }) => (
  <Frame project={project}>
    <h1>No plan that can be trusted came out, and that’s our fault.</h1>
    <p class="lead">
      Every plan is checked cut by cut before you see it, and this one did not pass. Nothing of it is kept and
      nothing was taken from the shelf; the log has the details.
    </p>
    <form method="post" action={`/plans/${id}/again`}>
      <Once token={token} />
      <button type="submit">Plan it once more</button>
    </form>
  </Frame>
);

const Start: FC<{ id: number }> = ({ id }) => (
  <form method="post" action={`/plans/${id}/planning`}>
    <button type="submit">Plan it now</button>
  </form>
);

const Frame: FC<{ project: Project; children?: unknown }> = ({ project, children }) => (
  <article class="plan">
    <p>
      <a href={`/projects/${project.id}`}>{project.title}</a>
    </p>
    {children as string}
  </article>
);
