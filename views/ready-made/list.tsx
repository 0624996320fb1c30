/** Ready-made envelopes in the stash, and those that a card goes into beside its recipe. Works nothing out. */
import type { FC } from 'hono/jsx';
import type { FittingReadyMade, ReadyMade } from '#core/project/ready-made.ts';
import { printSize, type Units } from '#shared/length.ts';
import { SAY_FIT, sayClearance } from '../parts/fit.ts';

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

/** Nothing at all where none fits. */
export const FittingOnes: FC<{ fitting: readonly FittingReadyMade[]; units: Units }> = ({
  fitting,
  units,
}) =>
  fitting.length === 0 ? null : (
    <section id="bought">
      <h2>Bought, in your stash</h2>
      <ul class="list">
        {fitting.map(({ readyMade, fit, clearance }) => (
          <li>
            <a href={`/ready-made/${readyMade.id}`}>
              {readyMade.count} {readyMade.name}
            </a>{' '}
            <span class="quiet">{printSize(readyMade, units)}</span>: the card{' '}
            <span class="fit">{SAY_FIT[fit]}</span>, {sayClearance(clearance.width, units)} across,{' '}
            {sayClearance(clearance.height, units)} up and down.
          </li>
        ))}
      </ul>
    </section>
  );
