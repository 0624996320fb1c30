/** A blank that went wrong: one line on what happened, and where the next one comes from. */
import type { FC } from 'hono/jsx';
import type { Envelope, Project } from '#core/project/journal.ts';
import { type Entry, Field, FormProblems, TextArea } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { StepChoice } from '../lessons/step.tsx';

interface Props {
  readonly project: Project;
  readonly envelope: Envelope;
  readonly entry: Entry;
  readonly token: string;
}

export const Spoiled: FC<Props> = ({ project, envelope, entry, token }) => (
  <article>
    <p class="quiet">
      <a href={`/projects/${project.id}`}>{project.title}</a>
    </p>
    <h1>Envelope {envelope.number} is spoiled</h1>
    <p class="lead">
      {envelope.cut === null
        ? 'It was scrap: nothing leaves the shelf. What happened is worth a line all the same.'
        : 'It happens. The paper is written off, and the project asks for another blank from the shelf.'}
    </p>
    <form method="post" action={`/projects/${project.id}/spoiled`}>
      <Once token={token} />
      <input type="hidden" name="envelope" value={`${envelope.number}`} />
      <FormProblems entry={entry} fields={['wrong', 'savedBy']} />
      <Field
        name="wrong"
        label="What went wrong?"
        entry={entry}
        autofocus
        hint="like: notched on the wrong side of the mark"
      />
      <TextArea name="savedBy" label="What can still be saved, or what would have saved it?" entry={entry} />
      <StepChoice id="step" lesson={undefined} typed={entry.typed.step} />
      <div class="row">
        <button type="submit">Write it off</button>
        <a href={`/projects/${project.id}`}>It isn’t spoiled after all</a>
      </div>
    </form>
  </article>
);
