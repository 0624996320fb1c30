/** What to do next on a project, and beside it where things stand. */
import type { FC } from 'hono/jsx';
import { missingBlanks, ofTheBatch } from '#core/project/next.ts';
import { type Entry, TextArea } from '../common/field.tsx';
import type { ProjectView } from './view.ts';
import { nextAddress, sayNext } from './words.ts';

export const NextThing: FC<ProjectView & { entry: Entry }> = ({ entry, ...view }) => (
  <section class="next no-print" aria-label="What to do next">
    {view.next.kind === 'lesson' ? (
      <LessonForm {...view} entry={entry} />
    ) : view.next.kind === 'nothing' ? (
      <p>{sayNext(view.next)}</p>
    ) : (
      <>
        <a class="button next-thing" href={nextAddress(view.full.project, view.next)}>
          {sayNext(view.next)}
        </a>
        <p class="quiet">
          {progress(view)} <StillToTake {...view} />
        </p>
      </>
    )}
  </section>
);

const LessonForm: FC<ProjectView & { entry: Entry }> = ({ full: { project }, next, entry }) => (
  <form method="post" action={`/projects/${project.id}`}>
    <input type="hidden" name="_method" value="PUT" />
    <p class="next-thing-words">{sayNext(next)}</p>
    <TextArea
      name="lesson"
      label="The lesson, for the next time"
      entry={entry}
      hint="One or two sentences. They stand on top of the page and in the journal."
    />
    <button type="submit">Keep the lesson</button>
  </form>
);

/** Blanks that are missing while others wait to be folded. */
const StillToTake: FC<ProjectView> = ({ full: { project, envelopes }, next }) => {
  const missing = missingBlanks(project.quantity, envelopes);
  if (missing === 0 || (next.kind !== 'make' && next.kind !== 'make trial')) return null;
  return <a href={`/envelopes?project=${project.id}`}>Take {missing} more from the shelf</a>;
};

function progress({ full: { project, envelopes }, next }: ProjectView): string {
  const batch = ofTheBatch(envelopes);
  const made = batch.filter((one) => one.state === 'made').length;
  const missing = missingBlanks(project.quantity, envelopes);
  if (next.kind === 'choose envelope')
    return 'From the card to an envelope that fits it, and to the paper for it.';
  if (next.kind === 'make trial')
    return 'One first, from scrap or from the batch; then the rest with what it taught.';
  if (made === 0 && missing > 0) return 'The recipe stands. Next it needs paper.';
  const spoiled = batch.length - batch.filter((one) => one.state !== 'spoiled').length;
  return [`${made} of ${project.quantity} made`, ...(spoiled > 0 ? [`${spoiled} spoiled`] : [])]
    .join(', ')
    .concat('.');
}
