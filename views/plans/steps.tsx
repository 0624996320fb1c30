/**
 * The steps at the trimmer on paper, all cuts of one setting together, each with a box to tick by pencil. Knows no order
 * but the given.
 */
import type { FC } from 'hono/jsx';
import type { Step } from '#core/cutting/cuts.ts';
import { settingsOfSteps } from '#core/cutting/steps.ts';
import { howMany } from '#views/common/words.ts';
import { alike, LaidWords, Thumbnail } from './laid.tsx';
import type { PlanView } from './view.ts';
import { sayTrue } from './words.ts';

export const Steps: FC<PlanView> = (view) => (
  <ol class="settings">
    {settingsOfSteps(view.plan.plan.steps).map((steps) => (
      <li>
        <h2>
          Set {sayTrue(steps[0]!.set, view.units)}: <small>{sayCuts(steps)}</small>
        </h2>
        <ul>
          {steps.map((step) => (
            <StepRow {...view} step={step} />
          ))}
        </ul>
      </li>
    ))}
  </ol>
);

const StepRow: FC<PlanView & { step: Step }> = ({ step, ...view }) => (
  <li class="step">
    <span class="box" aria-hidden="true" />
    <ul class="laid">
      {alike(step, view).map((group, index) => (
        <li>
          <Thumbnail {...view} group={group} id={`step-picture-${step.number}-${index}`} />
          <LaidWords {...view} group={group} />
        </li>
      ))}
    </ul>
  </li>
);

/** `one cut`, `6 cuts` */
export function sayCuts(steps: readonly Step[]): string {
  const cuts = steps.reduce((sum, { times }) => sum + times, 0);
  return cuts === 1 ? 'one cut' : howMany(cuts, 'cut');
}
