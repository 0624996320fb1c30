/** The form for how an envelope came out; everything may be left empty, and the same may go for the rest. */
import type { FC } from 'hono/jsx';
import type { FlapLetter, Recipe } from '#core/envelope/recipe.ts';
import { startMoves } from '#core/project/in-use.ts';
import type { Envelope, Outcome, Project } from '#core/project/journal.ts';
import type { Lesson } from '#core/project/lessons.ts';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import { type Length, printExact, typedLength, type Units } from '#shared/length.ts';
import { FITS } from '#shared/outcome.ts';
import { printPocket } from '#shared/pocket.ts';
import { finishField } from '#shared/schemas/finish.ts';
import { FINISH_SHAPES, FLAPS_ASKED } from '#shared/schemas/outcome.ts';
import { type Size, turned } from '#shared/size.ts';
import { Choice, type Entry, Field, FormProblems, TextArea } from '../common/field.tsx';
import { sayFinish } from '../common/finish.ts';
import { Once } from '../common/once.tsx';
import { StepChoice } from '../lessons/step.tsx';

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
const FINISH_FIELDS = FLAPS_ASKED.flatMap((letter) =>
  (['Shape', 'Depth', 'More'] as const).map((part) => finishField(letter, part)),
);

export const OutcomeForm: FC<Props> = (props) => {
  const { project, recipe, envelope, rest, units, entry, finish, token } = props;
  const noted = {
    ...notedIn(envelope.outcome, recipe, units),
    ...(finish && asKnown(envelope, recipe, finish, units)),
  };
  const field = { entry, units };
  return (
    <article>
      <p class="quiet">
        <a href={`/projects/${project.id}`}>{project.title}</a>
      </p>
      <h1>How did envelope {envelope.number} come out?</h1>
      <form method="post" action={`/projects/${project.id}/outcomes`}>
        <Once token={token} />
        {finish ? <input type="hidden" name="finish" value="on" /> : null}
        <input type="hidden" name="envelope" value={`${envelope.number}`} />
        <FormProblems entry={entry} fields={[...FIELDS, ...FINISH_FIELDS]} />
        <Felt chosen={entry.typed.felt ?? envelope.outcome?.felt ?? ''} />
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
        {startMoves(recipe) ? (
          <AsMadeFields recipe={recipe} envelope={envelope} units={units} entry={entry} noted={noted} />
        ) : null}
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
      {finish ? <FinishSilently project={project} /> : null}
      {envelope.outcome ? <Withdraw {...props} /> : null}
    </article>
  );
};

/** What was written down together is corrected together, unless she says otherwise. */
const restTicked = ({ envelope, entry: { typed } }: Props): boolean =>
  typed.rest === 'on' || (envelope.outcome !== null && typed.envelope === undefined);

const FinishSilently: FC<{ project: Project }> = ({ project }) => (
  <form method="post" action={`/projects/${project.id}/finish`}>
    <button type="submit" class="plain">
      Finish without saying more
    </button>
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

type Noted = ReturnType<typeof notedIn>;

interface AsMadeProps {
  readonly recipe: Recipe;
  readonly envelope: Envelope;
  readonly units: Units;
  readonly entry: Entry;
  readonly noted: Noted;
}

const AsMadeFields: FC<AsMadeProps> = ({ recipe, envelope, units, entry, noted }) => {
  const measures = [...FINISH_FIELDS, 'square', 'start'];
  const wrong = entry.problems.some(({ field }) => measures.includes(field));
  const [start, twin] = recipe.starts;
  return (
    <details open={wrong || noted.differs}>
      <summary>Made otherwise than the recipe says?</summary>
      <div class="fields">
        <Field
          name="square"
          label="Square"
          kind="length"
          entry={entry}
          value={noted.square}
          hint={`recipe: ${printExact(recipe.blank.width, units)}`}
        />
        <Field
          name="start"
          label="Start, as the ruler read"
          kind="length"
          entry={entry}
          value={noted.start}
          hint={`recipe: ${printExact(start, units)}, twin ${printExact(twin, units)}`}
        />
      </div>
      <p>
        <label>
          <input type="checkbox" name="twin" checked={(entry.typed.twin ?? noted.twin) === 'on'} />
          Measured from the other corner
        </label>
      </p>
      {FLAPS_ASKED.map((letter) => (
        <FinishFields
          letter={letter}
          recipe={recipe}
          outcome={envelope.outcome}
          units={units}
          entry={entry}
        />
      ))}
    </details>
  );
};

const FinishFields: FC<
  Omit<AsMadeProps, 'envelope' | 'noted'> & { letter: 'C' | 'D'; outcome: Outcome | null }
> = ({ letter, recipe, outcome, units, entry }) => {
  const noted = outcome?.finishes?.[letter];
  const flap = recipe.flaps.find((one) => one.letter === letter)!;
  return (
    <fieldset>
      <legend>
        Flap {letter} ({flap.side})
      </legend>
      <div class="fields">
        <Choice
          name={finishField(letter, 'Shape')}
          label="Finished"
          entry={entry}
          value={noted?.shape ?? 'as planned'}
          hint={`recipe: ${sayFinish(flap.finish, units)}`}
          choices={FINISH_SHAPES.map((shape) => ({ value: shape, label: shape }))}
        />
        <Field
          name={finishField(letter, 'Depth')}
          label="Cut, from its score"
          kind="length"
          entry={entry}
          value={noted && 'depth' in noted ? typedLength(noted.depth, units) : ''}
          hint="straight or tapered"
        />
        <Field
          name={finishField(letter, 'More')}
          label="Taper or radius"
          kind="length"
          entry={entry}
          value={moreOf(noted, units)}
          hint="how far in each side; or the tip’s radius"
        />
      </div>
    </fieldset>
  );
};

function moreOf(finish: NonNullable<Outcome['finishes']>[FlapLetter], units: Units): string {
  if (finish?.shape === 'tapered') return typedLength(finish.taper, units);
  return finish?.shape === 'rounded' ? typedLength(finish.radius, units) : '';
}

/** Square and start as they stand, filled in to be looked at; what is noted of this envelope itself comes first. */
function asKnown(envelope: Envelope, own: Recipe, { recipe }: WorkingMeasures, units: Units) {
  const { asMade } = envelope.outcome ?? {};
  const known = envelope.outcome ? own : recipe;
  return {
    square: typedLength(asMade?.square ?? known.blank.width, units),
    start: typedLength(asMade?.start ?? known.starts[0], units),
    differs: true,
  };
}

/** What the record says already, as it would be typed; measures that are the recipe's stay empty. */
function notedIn(outcome: Outcome | null, recipe: Recipe, units: Units) {
  const typed = (one: Length | undefined): string => (one === undefined ? '' : typedLength(one, units));
  const planned = outcome?.asMade?.start === recipe.starts[outcome?.twin ? 1 : 0];
  const asPlanned = planned && outcome?.asMade?.square === recipe.blank.width;
  return {
    pocketWidth: typed(outcome?.pocket?.width),
    pocketHeight: typed(outcome?.pocket?.height),
    square: asPlanned ? '' : typed(outcome?.asMade?.square),
    start: asPlanned ? '' : typed(outcome?.asMade?.start),
    twin: outcome?.twin ? 'on' : '',
    differs:
      outcome !== null &&
      (outcome.twin || outcome.finishes !== null || (outcome.asMade !== null && !asPlanned)),
  };
}
