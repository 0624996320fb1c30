/** The paper that a plan speaks of and the paper that it leaves out, with the reasons: stands before what it claims. */
import type { FC } from 'hono/jsx';
import type { LeftOut } from '#core/stash/left-out.ts';
import { capital, howMany, listed } from '#views/common/words.ts';
import { sayWhy } from '../common/unsuited.ts';
import type { PlanView } from './view.ts';
import { designsOf, nameOf, tally } from './words.ts';

/** More names than these stand one tap behind. */
const MOST_NAMED = 3;

export const PaperLooked: FC<PlanView> = (view) => {
  const { plan } = view;
  const looked = designsOf(plan).map((design) => nameOf(design, view));
  const left = reasons(
    plan.leftOut.filter(({ part }) => part === null),
    view,
  );
  const long = looked.length > MOST_NAMED || left.some(([, papers]) => papers.length > MOST_NAMED);
  return (
    <div class="quiet">
      <p>
        {looked.length === 0 ? 'No paper was looked at. ' : `Looked at ${few(looked)}. `}
        {left.length === 0 ? null : `Left out: ${left.map((one) => sayReason(one, few)).join('; ')}.`}
      </p>
      {long ? (
        <details>
          <summary>All of the paper by name</summary>
          <ul>
            <li>Looked at {listed(looked)}.</li>
            {left.map(([why, papers]) => (
              <li>
                {capital(listed(papers))}: {why}.
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
};

/** `Fern (no border to show)`: what a part does not come from beside what no part comes from; empty where there is none. */
export const sayLeftOutFor = (part: string, view: PlanView): string =>
  reasons(
    view.plan.leftOut.filter((one) => one.part === part),
    view,
  )
    .map((one) => sayReason(one, few))
    .join('; ');

type Reason = [why: string, papers: string[]];

const sayReason = ([why, papers]: Reason, names: (papers: readonly string[]) => string): string =>
  `${names(papers)} (${why})`;

function reasons(left: readonly LeftOut[], view: PlanView): Reason[] {
  const whys = tally(left.map(({ why }) => sayWhy(why)));
  return [...whys.keys()].map((why) => [
    why,
    left.filter((one) => sayWhy(one.why) === why).map((one) => sayPaper(one, view)),
  ]);
}

function sayPaper({ design, sheets, offcuts, count }: LeftOut, view: PlanView): string {
  const name = nameOf(design, view);
  if (sheets) return `sheets of ${name}`;
  const codes = offcuts.map((id) => view.offcuts.get(id)?.code).filter((code) => code !== undefined);
  return count === codes.length
    ? `${count === 1 ? 'offcut' : 'offcuts'} ${listed(codes)} of ${name}`
    : `${howMany(count, 'offcut')} of ${name}`;
}

const few = (names: readonly string[]): string =>
  names.length > MOST_NAMED
    ? listed([...names.slice(0, MOST_NAMED), `${names.length - MOST_NAMED} more`])
    : listed(names);
