/** After the last step: does the card go in? The answer is the envelope's, and decides what comes next. */
import type { FC } from 'hono/jsx';
import { Once } from '../common/once.tsx';
import { MakingHeading, type MakingView, StepLink } from './page.tsx';

export const Folded: FC<MakingView & { token: string; first: boolean }> = ({ token, first, ...view }) => (
  <article id="making" class="making">
    <MakingHeading {...view} />
    <h1 class="instruction">Put the card in. Does it go?</h1>
    <p class="how">
      {first
        ? 'This is what the trial is for: the rest can still be made with another start.'
        : 'Then on to the next; how it came out can be written down for all of them together.'}
    </p>
    <form method="post" action={`/projects/${view.project.id}/made`} class="answers">
      <Once token={token} />
      <input type="hidden" name="envelope" value={`${view.envelope.number}`} />
      <button type="submit" name="goes" value="yes">
        It goes in
      </button>
      <button type="submit" name="goes" value="tight" class="plain">
        Tight
      </button>
      <button type="submit" name="goes" value="no" class="plain">
        It won’t go
      </button>
    </form>
    <nav class="step-links" aria-label="Steps">
      <StepLink {...view} to={view.steps.length} rel="prev">
        Back
      </StepLink>
    </nav>
  </article>
);
