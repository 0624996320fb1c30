/** Ready-made envelopes in the stash, and those that a card goes into beside its recipe. Works nothing out. */
import type { FC } from 'hono/jsx';
import type { ReadyMade, ReadyMadeJudged, UnsuitedReadyMade } from '#core/stash/ready-made.ts';
import { printSize, type Units } from '#shared/length.ts';
import { SAY_FIT, sayClearance } from '../common/fit.ts';
import type { Query } from '../envelopes/query.ts';

export const ReadyMadeList: FC<{ all: readonly ReadyMade[]; units: Units }> = ({ all, units }) => (
  <section aria-labelledby="ready-made">
    <div class="spread">
      <h2 id="ready-made">Ready-made envelopes</h2>
      <a class="button plain small" href="/ready-made/new">
        Add envelopes you bought
      </a>
    </div>
    {all.length === 0 ? (
      <p class="quiet">None are noted. Those you have stand beside the recipes of every card that fits.</p>
    ) : (
      <ul class="list">
        {all.map((one) => (
          <li class="spread">
            <span>
              <a href={`/ready-made/${one.id}`}>{one.name}</a>{' '}
              <span class="quiet">{printSize(one, units)}</span>
            </span>
            <span class="left">
              <b>{one.count}</b> left
            </span>
          </li>
        ))}
      </ul>
    )}
  </section>
);

/** In a project, where any were taken for it. */
export const Taken: FC<{ taken: readonly { readonly readyMade: ReadyMade; readonly count: number }[] }> = ({
  taken,
}) =>
  taken.length === 0 ? null : (
    <p>
      Bought envelopes taken for it:{' '}
      {taken.map(({ readyMade, count }, index) => (
        <>
          {index === 0 ? '' : ', '}
          {count} <a href={`/ready-made/${readyMade.id}`}>{readyMade.name}</a>
        </>
      ))}
      .
    </p>
  );

/** Nothing at all where none was bought, one line where none will do. */
export const FittingOnes: FC<Fitting> = ({ readyMade: { fitting, leftOut }, query, copies, units }) =>
  fitting.length === 0 ? (
    <LeftOut leftOut={leftOut} />
  ) : (
    <section id="bought">
      <h2>Bought, in your stash</h2>
      <ul class="list">
        {fitting.map(({ readyMade, fit, clearance }) => (
          <li>
            <a href={takingOf(readyMade, query, copies)}>
              {readyMade.count} {readyMade.name}
            </a>{' '}
            <span class="quiet">{printSize(readyMade, units)}</span>: the card{' '}
            <span class="fit">{SAY_FIT[fit]}</span>, {sayClearance(clearance.width, units)} across,{' '}
            {sayClearance(clearance.height, units)} up and down.
          </li>
        ))}
      </ul>
      <LeftOut leftOut={leftOut} />
    </section>
  );

const LeftOut: FC<{ leftOut: readonly UnsuitedReadyMade[] }> = ({ leftOut }) =>
  leftOut.length === 0 ? null : (
    <p class="quiet">
      Bought envelopes left out:{' '}
      {leftOut.map(({ readyMade, why }) => `${readyMade.name} (${SAY_WHY[why]})`).join('; ')}.
    </p>
  );

const SAY_WHY: Record<UnsuitedReadyMade['why'], string> = {
  'none left': 'none left',
  "won't go": 'the card won’t go in',
  loose: 'the card would lie loose',
};

interface Fitting {
  readonly readyMade: ReadyMadeJudged;
  readonly query: Query;
  readonly copies: number;
  readonly units: Units;
}

/** Its page, which knows how many are wanted, and for what. */
export const takingOf = ({ id, count }: ReadyMade, { project }: Query, copies: number): string =>
  `/ready-made/${id}?${new URLSearchParams({ used: `${Math.min(copies, count)}`, ...(project && { project }) })}`;
