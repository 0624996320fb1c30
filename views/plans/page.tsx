/** A plan's page: one large answer, its proof in a line, what is missing; pictures, figures and other ways behind. */
import type { FC } from 'hono/jsx';
import { lookedAt } from '#core/batch/planned.ts';
import { capital } from '#views/common/words.ts';
import { Once } from '../common/once.tsx';
import { Problems } from '../common/problems.tsx';
import { LessonsHere } from '../lessons/shown.tsx';
import { Figures } from './figures.tsx';
import { Checks } from './first.tsx';
import { PaperLooked, sayLeftOutFor } from './left-out.tsx';
import { Otherwise } from './otherwise.tsx';
import { Pieces } from './pieces.tsx';
import { AfterCut } from './result.tsx';
import type { PlanView } from './view.ts';
import {
  labelsOf,
  sayChange,
  sayFit,
  sayHelp,
  sayLonger,
  sayLookedAt,
  sayPaper,
  sayProof,
  saySets,
} from './words.ts';

export const PlanPage: FC<PlanView> = (view) => {
  const { plan, project, entry } = view;
  return (
    <article class="plan">
      <p>
        <a href={`/projects/${project.id}`}>{project.title}</a>
      </p>
      <Problems problems={entry.problems} fields={[]} />
      <Answer {...view} />
      <Checks {...view} />
      {view.lessons ? <LessonsHere {...view.lessons} /> : null}
      <Unplaced {...view} />
      {plan.cut ? <AfterCut {...view} /> : <Next {...view} />}
      <Pieces {...view} width={340} height={300} />
      <Figures {...view} />
      {plan.cut || plan.trial ? null : <Otherwise {...view} />}
    </article>
  );
};

const Answer: FC<PlanView> = (view) => {
  const { plan } = view;
  const paper = plan.plan.used.length === 0 ? 'Nothing of this can be cut' : capital(sayPaper(plan, view));
  return (
    <>
      <h1 class="plan-answer">
        {plan.trial ? (
          <>
            First one envelope, from <strong>{sayPaper(plan, view)}</strong>.
          </>
        ) : (
          <>
            <strong>{paper}</strong>: {sayFit(plan)}.
          </>
        )}
      </h1>
      {plan.trial ? null : <PaperLooked {...view} />}
      {plan.suitable > lookedAt(plan) && !plan.trial ? <p class="quiet">{sayLookedAt(plan)}</p> : null}
      <p class="quiet">
        {plan.trial
          ? 'Everything beside the way to it stays whole, and can still be planned otherwise.'
          : `${sayProof(plan, view)} ${saySets(plan)}`}
      </p>
      <Before {...view} />
    </>
  );
};

/** What it stands in for, and why where the shelf decided so. */
const Before: FC<PlanView> = ({ before, ...view }) => {
  if (!before || view.plan.trial || view.plan.cut || view.changes.length > 0) return null;
  const { plan, changes } = before;
  if (changes.length === 0) {
    return (
      <p class="quiet">
        {sayLonger(view.plan, plan)} Before:{' '}
        <a href={`/plans/${plan.id}`}>{`${sayPaper(plan, view)}, ${sayFit(plan)}`}</a>.
      </p>
    );
  }
  return (
    <div class="caution" role="status">
      <p>
        This is a fresh plan: <a href={`/plans/${plan.id}`}>the one before</a> can’t be cut any more.
      </p>
      <Changes {...view} changes={changes} />
    </div>
  );
};

const Changes: FC<Pick<PlanView, 'changes' | 'designs' | 'offcuts' | 'titles' | 'units'>> = ({
  changes,
  ...view
}) => (
  <ul>
    {changes.map((change) => (
      <li>{sayChange(change, view)}.</li>
    ))}
  </ul>
);

const Unplaced: FC<PlanView> = (view) => {
  const { plan } = view;
  const labels = labelsOf(plan, view.titles);
  return plan.plan.unplaced.length === 0 ? null : (
    <section class="caution">
      <h2>Left out</h2>
      <ul>
        {plan.plan.unplaced.map((one) => (
          <li>
            <strong>
              {one.copies} × {labels.get(one.part)?.name ?? one.part}
            </strong>
            {`: ${sayHelp(one, view)}`}.
            <NotFrom part={one.part} {...view} />
          </li>
        ))}
      </ul>
      {plan.plan.proved || plan.cut ? null : (
        <form method="post" action={`/plans/${plan.id}/again`}>
          <Once token={view.token} />
          <button type="submit" name="longer" value="on" class="plain small">
            Look longer, 15 seconds
          </button>
        </form>
      )}
    </section>
  );
};

const NotFrom: FC<PlanView & { part: string }> = ({ part, ...view }) => {
  const left = sayLeftOutFor(part, view);
  return left === '' ? null : <small class="quiet"> Not from {left}.</small>;
};

const Next: FC<PlanView> = (view) => {
  const { plan, changes } = view;
  if (plan.plan.used.length === 0) {
    return (
      <p>
        <a class="button" href={`/projects/${plan.project}/plans/new`}>
          Ask otherwise
        </a>
      </p>
    );
  }
  if (changes.length > 0) {
    return (
      <section class="caution" role="alert">
        <p>This plan can’t be cut any more:</p>
        <Changes {...view} />
        <form method="post" action={`/plans/${plan.id}/again`}>
          <Once token={view.token} />
          <button type="submit">Plan afresh</button>
        </form>
      </section>
    );
  }
  return (
    <div class="answers">
      <a class="button" href={`/plans/${plan.id}/sheet`}>
        To the cut sheet
      </a>
      {!plan.trial && hasSeveral(view) ? (
        <form method="post" action={`/plans/${plan.id}/trials`}>
          <Once token={view.token} />
          <button type="submit" class="plain">
            A trial piece first
          </button>
        </form>
      ) : null}
    </div>
  );
};

const hasSeveral = ({ plan }: PlanView): boolean =>
  plan.plan.used.flatMap((one) => one.rectangles).filter(({ part }) => part === 'envelope').length > 1;
