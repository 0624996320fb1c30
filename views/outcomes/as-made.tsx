/** What of an envelope may be made otherwise than its recipe says: square, start and flaps, as they are asked for. */
import type { FC } from 'hono/jsx';
import type { FlapLetter, Recipe } from '#core/envelope/recipe.ts';
import type { Envelope, Outcome } from '#core/project/journal.ts';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import { type Length, printExact, typedLength, type Units } from '#shared/length.ts';
import { finishField } from '#shared/schemas/finish.ts';
import { FINISH_SHAPES, FLAPS_ASKED } from '#shared/schemas/outcome.ts';
import { Choice, type Entry, Field } from '../common/field.tsx';
import { sayFinish } from '../common/finish.ts';

export const FINISH_FIELDS = FLAPS_ASKED.flatMap((letter) =>
  (['Shape', 'Depth', 'More'] as const).map((part) => finishField(letter, part)),
);

type Noted = ReturnType<typeof notedIn>;

interface AsMadeProps {
  readonly recipe: Recipe;
  readonly envelope: Envelope;
  readonly units: Units;
  readonly entry: Entry;
  readonly noted: Noted;
}

export const AsMadeFields: FC<AsMadeProps> = (props) => (
  <details open={isWrong(props.entry, [...FINISH_FIELDS, 'square', 'start']) || props.noted.differs}>
    <summary>Made otherwise than the recipe says?</summary>
    <SquareAndStart {...props} />
    <Flaps {...props} />
  </details>
);

/** Before it is called finished: what stands is to be looked at, the flaps where they were cut otherwise. */
export const ReallyMade: FC<AsMadeProps> = (props) => (
  <fieldset>
    <legend>What was really made</legend>
    <SquareAndStart {...props} />
    <details open={isWrong(props.entry, FINISH_FIELDS) || props.envelope.outcome?.finishes != null}>
      <summary>Flaps cut otherwise?</summary>
      <Flaps {...props} />
    </details>
  </fieldset>
);

const isWrong = ({ problems }: Entry, fields: readonly string[]): boolean =>
  problems.some(({ field }) => fields.includes(field));

const SquareAndStart: FC<AsMadeProps> = ({ recipe, units, entry, noted }) => {
  const [start, twin] = recipe.starts;
  return (
    <>
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
    </>
  );
};

const Flaps: FC<AsMadeProps> = ({ recipe, envelope, units, entry }) => (
  <>
    {FLAPS_ASKED.map((letter) => (
      <FinishFields letter={letter} recipe={recipe} outcome={envelope.outcome} units={units} entry={entry} />
    ))}
  </>
);

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
export function asKnown(envelope: Envelope, own: Recipe, { recipe }: WorkingMeasures, units: Units) {
  const { asMade } = envelope.outcome ?? {};
  const known = envelope.outcome ? own : recipe;
  return {
    square: typedLength(asMade?.square ?? known.blank.width, units),
    start: typedLength(asMade?.start ?? known.starts[0], units),
  };
}

/** What the record says already, as it would be typed; measures that are the recipe's stay empty. */
export function notedIn(outcome: Outcome | null, recipe: Recipe, units: Units) {
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
