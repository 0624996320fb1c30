/** The form for how an envelope came out; everything may be left empty, and the same may go for the rest. */
import type { FC } from 'hono/jsx';
import type { Recipe } from '#core/envelope/recipe.ts';
import { startMoves } from '#core/project/in-use.ts';
import type { Envelope, Project } from '#core/project/journal.ts';
import type { Lesson } from '#core/project/lessons.ts';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import { printExact, type Units } from '#shared/length.ts';
import { FITS } from '#shared/outcome.ts';
import { printPocket } from '#shared/pocket.ts';
import { type Size, turned } from '#shared/size.ts';
import { type Entry, Field, FormProblems, TextArea } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { StepChoice } from '../lessons/step.tsx';
import { AsMadeFields, asKnown, FINISH_FIELDS, notedIn, ReallyMade } from './as-made.tsx';

interface Props {
  readonly project: Project;
  readonly recipe: Recipe;
  readonly envelope: Envelope;
  /** The others of which nothing is noted yet, or those noted alike. */
  readonly rest: readonly Envelope[];
  readonly units: Units;
  readonly entry: Entry;
  /** The pocket turned round, where it fits better so and she is asked. */
  readonly turned?: Size | undefined;
  /** What the project is known by, where it is called finished with this; what was really made is asked from there. */
  readonly finish: WorkingMeasures | undefined;
  /** What was told of it before. */
  readonly lesson: Lesson | undefined;
  readonly token: string;
}

/** Names the pocket that a question was asked about: its answer holds for no other. */
export const pocketAsked = ({ width, height }: Size): string => `${width} ${height}`;

const FIELDS = ['felt', 'pocketWidth', 'pocketHeight', 'square', 'start', 'wrong', 'savedBy'];

export const OutcomeForm: FC<Props> = (props) => {
  const { project, recipe, envelope, rest, units, entry, finish, token } = props;
  const noted = {
    ...notedIn(envelope.outcome, recipe, units),
    ...(finish && asKnown(envelope, recipe, finish, units)),
  };
  const field = { entry, units };
  const asked = { recipe, envelope, units, entry, noted };
  return (
    <article>
      <p class="quiet">
        <a href={`/projects/${project.id}`}>{project.title}</a>
      </p>
      <h1>How did envelope {envelope.number} come out?</h1>
      {finish ? <FinishSilently project={project} /> : null}
      <form method="post" action={`/projects/${project.id}/outcomes`}>
        <Once token={token} />
        {finish ? <input type="hidden" name="finish" value="on" /> : null}
        <input type="hidden" name="envelope" value={`${envelope.number}`} />
        <FormProblems entry={entry} fields={[...FIELDS, ...FINISH_FIELDS]} />
        <Felt chosen={entry.typed.felt ?? envelope.outcome?.felt ?? ''} />
        {startMoves(recipe) && finish ? <ReallyMade {...asked} /> : null}
        <fieldset>
          <legend>The pocket, measured inside</legend>
          <p class="quiet">
            Flat and empty, fold to fold. By the recipe it is {printPocket(recipe.pocket, units)}; what you
            measure teaches the tool page how your tool really sets.
          </p>
          <div class="fields">
            <Field {...field} name="pocketWidth" label="Width" kind="length" value={noted.pocketWidth} />
            <Field {...field} name="pocketHeight" label="Height" kind="length" value={noted.pocketHeight} />
          </div>
          {props.turned ? <Turned pocket={props.turned} units={units} /> : null}
        </fieldset>
        <div class="fields told">
          <TextArea {...field} name="wrong" label="What went wrong?" value={envelope.outcome?.wrong} />
          <TextArea {...field} name="savedBy" label="What saved it?" value={envelope.outcome?.savedBy} />
          <StepChoice id="step" lesson={props.lesson} typed={entry.typed.step} />
        </div>
        {startMoves(recipe) && !finish ? <AsMadeFields {...asked} /> : null}
        {rest.length > 0 ? (
          <p class="rest">
            <label>
              <input type="checkbox" name="rest" checked={restTicked(props)} />
              {envelope.outcome ? 'Correct those written down alike too: ' : 'The same for the rest: '}
              {rest.length === 1 ? 'envelope' : 'envelopes'} {rest.map((one) => one.number).join(', ')}
            </label>
          </p>
        ) : null}
        <button type="submit" class="last">
          {finish ? 'Write it down, and call it finished' : 'Write it down'}
        </button>
      </form>
      {envelope.outcome ? <Withdraw {...props} /> : null}
    </article>
  );
};

/** What was written down together is corrected together, unless she says otherwise. */
const restTicked = ({ envelope, entry: { typed } }: Props): boolean =>
  typed.rest === 'on' || (envelope.outcome !== null && typed.envelope === undefined);

const FinishSilently: FC<{ project: Project }> = ({ project }) => (
  <form method="post" action={`/projects/${project.id}/finish`}>
    <p>
      <button type="submit" class="plain">
        Finish without saying more
      </button>
    </p>
  </form>
);

const Withdraw: FC<Props> = ({ project, envelope, rest }) => (
  <details class="no-print">
    <summary>It was a mistake: withdraw what is written</summary>
    <p>
      Your tool and your measures learn nothing from it any more, and the words go.{' '}
      {envelope.trial || envelope.cut !== null ? 'The envelope stays made.' : 'The envelope goes with them.'}
    </p>
    <form method="post" action={`/projects/${project.id}/outcomes/${envelope.number}`} class="row">
      <input type="hidden" name="_method" value="DELETE" />
      <button type="submit" class="plain small">
        Withdraw it for envelope {envelope.number}
      </button>
      {rest.length > 0 ? (
        <button type="submit" class="plain small" name="rest" value="on">
          And for {rest.map(({ number }) => number).join(', ')} too
        </button>
      ) : null}
    </form>
  </details>
);

const Turned: FC<{ pocket: Size; units: Units }> = ({ pocket, units }) => (
  <div class="caution" role="alert">
    <p>
      Did you mean {printExact(pocket.width, units)} across and {printExact(pocket.height, units)} up? The
      recipe lies that way round.
    </p>
    <input type="hidden" name="asked" value={pocketAsked(turned(pocket))} />
    <p class="row">
      <button type="submit" name="sides" value="turned">
        Yes, swap the two and write it down
      </button>
      <button type="submit" name="sides" value="kept" class="plain">
        No, it is as I typed
      </button>
    </p>
  </div>
);

const Felt: FC<{ chosen: string }> = ({ chosen }) => (
  <fieldset class="choices felt">
    <legend>How does the card sit?</legend>
    {[...FITS, ''].map((fit) => (
      <label>
        <input type="radio" name="felt" value={fit} checked={fit === chosen} />
        {fit === '' ? 'not tried' : fit.replace("'", '’')}
      </label>
    ))}
  </fieldset>
);
