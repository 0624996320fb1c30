/** The measures of an answer: every one of them, slips, flaps cut her own way, charts, and other envelopes. */
import type { FC } from 'hono/jsx';
import { foldOf } from '#core/envelope/folds.ts';
import type { Flap, Recipe, Slip } from '#core/envelope/recipe.ts';
import { length, printExact, printLength, type Units } from '#shared/length.ts';
import { printPocket } from '#shared/pocket.ts';
import { FINISH_SHAPES } from '#shared/schemas/envelope.ts';
import { Choice, Field } from '../common/field.tsx';
import { sayFinish } from '../common/finish.ts';
import { SAY_FIT, sayClearance } from '../common/fit.ts';
import { TemplateLinks } from '../templates/links.tsx';
import type { Answered } from './answer.tsx';
import { SLIP_WORDS, sayBlanks, sayEnvelope } from './fold-words.ts';
import { asking, measuresOf, type Query, UNCHOSEN } from './query.ts';

export const Behind: FC<Answered> = (answered) => (
  <section class="behind no-print">
    <TemplateLinks
      at="/templates/envelope"
      query={{ ...asked(answered.query), ...measuresOf(answered.recipe, answered.units) }}
    />
    <details class="every-folded">
      <summary>Every measure</summary>
      <MeasureTable {...answered} />
    </details>
    <Slips {...answered} />
    <OwnFinish {...answered} />
    <Chart {...answered} />
  </section>
);

const asked = ({ show: _, from: __, ...query }: Query): Query => query;

/** In sight where there is room and in print; folded away on a phone, whose drawing says what is set and cut. */
export const EveryMeasure: FC<Pick<Answered, 'recipe' | 'units'>> = (answered) => (
  <div class="every">
    <h2>Every measure</h2>
    <MeasureTable {...answered} />
  </div>
);

const MeasureTable: FC<Pick<Answered, 'recipe' | 'units'>> = ({ recipe, units }) => (
  <div class="scroll">
    <table>
      <tbody>
        {rowsOf(recipe, units).map(([name, value]) => (
          <tr>
            <th scope="row">{name}</th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);

const rowsOf = (recipe: Recipe, units: Units): [string, string][] => [
  ...(recipe.fold === 'diagonal' ? notcherRows(recipe, units) : scoreRows(recipe, units)),
  ['Pocket, inside', printPocket(recipe.pocket, units)],
  ...recipe.flaps.map((flap): [string, string] => [
    `Flap ${flap.letter}, ${flap.side}`,
    sayFlap(flap, units),
  ]),
  ['Seam', `${printLength(recipe.seam.width, units)} wide, ${sayArea(recipe.seam.area, units)} together`],
  ['Glue', `a line up to ${printLength(recipe.seam.glueWidth, units, 'down')} wide, inside the seam`],
];

const SQUARE_CENTIMETRES = 2.54 ** 2;

const sayArea = (squareInches: number, units: Units): string =>
  units.unit === 'in'
    ? `${squareInches.toFixed(1)} in²`
    : `${(squareInches * SQUARE_CENTIMETRES).toFixed(1)} cm²`;

const notcherRows = ({ blank, starts, notcher }: Recipe, units: Units): [string, string][] => [
  ['Square', printExact(blank.width, units)],
  ['Start', printExact(starts[0], units)],
  ['Its twin, from the other corner', printExact(starts[1], units)],
  ['Inset of your tool', printExact(notcher.inset, units)],
];

const scoreRows = (recipe: Recipe, units: Units): [string, string][] => [
  ['Cut', sayBlanks(recipe, units)],
  ...foldOf(recipe)
    .steps(recipe, recipe.notcher.turning ?? 'clockwise')
    .flatMap((step): [string, string][] =>
      step.kind === 'score' && step.at
        ? [[`Score ${step.score}`, `${printExact(step.at.distance, units)} from the ${step.at.from} edge`]]
        : [],
    ),
];

const sayFlap = (flap: Flap, units: Units): string =>
  [
    `reaches ${printLength(flap.depth, units)} in from its score`,
    flap.overrun > 0 && `passes the far fold by ${printLength(flap.overrun, units)}`,
    flap.finish.shape !== 'pointed' && sayFinish(flap.finish, units),
    flap.keepsSeamTo && `keeps its whole seam down to ${printLength(flap.keepsSeamTo, units, 'up')}`,
  ]
    .filter(Boolean)
    .join('; ');

const Slips: FC<Pick<Answered, 'recipe' | 'units'>> = ({ recipe, units }) => (
  <details>
    <summary>If the hand slips</summary>
    <p>{survival(recipe, units)}</p>
    <ul>
      {recipe.slips.map((slip) => (
        <li>
          The {SLIP_WORDS[recipe.fold][slip.off]} {offBy(slip, units)}: pocket{' '}
          {printPocket(slip.pocket, units)}, the card {SAY_FIT[slip.fit]}.
        </li>
      ))}
    </ul>
  </details>
);

function survival({ fold, survives, slips }: Recipe, units: Units): string {
  const off = (what: Slip['off']): string => {
    const by = slips.find((slip) => slip.off === what)!.by;
    return `a ${SLIP_WORDS[fold][what]} ${printExact(length(Math.abs(by)), units)} off`;
  };
  if (survives.square && survives.start) return `Survives ${off('square')} and ${off('start')}.`;
  if (survives.square) return `Survives ${off('square')}, but not ${off('start')}: measure that twice.`;
  if (survives.start) return `Survives ${off('start')}, but not ${off('square')}: cut with care.`;
  return `Survives neither ${off('square')} nor ${off('start')}: cut and measure with care.`;
}

const offBy = (slip: Slip, units: Units): string =>
  `${printExact(length(Math.abs(slip.by)), units)} ${slip.by < 0 ? 'short' : 'over'}`;

const OwnFinish: FC<Pick<Answered, 'recipe' | 'query' | 'entry' | 'units'>> = ({
  recipe,
  query,
  entry,
  units,
}) => (
  <details open={Boolean(query.cShape || query.dShape)}>
    <summary>Cut the flaps my own way</summary>
    <form action="/envelopes" method="get">
      <Carried query={query} changes={{ ...measuresOf(recipe, units), ...NO_FINISH }} />
      {recipe.flaps
        .filter(({ letter }) => letter === 'D' || (letter === 'C' && recipe.fold === 'diagonal'))
        .map((flap) => (
          <FinishFields flap={flap} entry={entry} />
        ))}
      <button type="submit" class="plain small">
        See it
      </button>
    </form>
  </details>
);

const NO_FINISH: Query = { cShape: '', cDepth: '', cMore: '', dShape: '', dDepth: '', dMore: '' };

const FinishFields: FC<{ flap: Flap; entry: Answered['entry'] }> = ({ flap, entry }) => {
  const prefix = flap.letter.toLowerCase();
  return (
    <fieldset class="fields">
      <legend>
        Flap {flap.letter}, {flap.side}
      </legend>
      <Choice
        name={`${prefix}Shape`}
        label="Shape"
        entry={entry}
        value="as proposed"
        choices={FINISH_SHAPES.map((shape) => ({ value: shape, label: shape }))}
      />
      <Field
        name={`${prefix}Depth`}
        label="Cut at"
        kind="length"
        entry={entry}
        hint="from its score; straight or tapered"
      />
      <Field
        name={`${prefix}More`}
        label="Taper or radius"
        kind="length"
        entry={entry}
        hint="tapered: in from each end; rounded: radius"
      />
    </fieldset>
  );
};

export const OtherEnvelopes: FC<Pick<Answered, 'others' | 'query' | 'units'>> = ({
  others,
  query,
  units,
}) => (
  <section id="others">
    <h2>Other envelopes for this card</h2>
    <ul class="list">
      {others.map((other) => (
        <li>
          <a href={asking(query, { ...UNCHOSEN, ...measuresOf(other, units), show: '' })}>
            {sayEnvelope(other, units)}
          </a>{' '}
          · {SAY_FIT[other.fit]} ({sayClearance(other.clearance.width, units)} across,{' '}
          {sayClearance(other.clearance.height, units)} up and down)
        </li>
      ))}
    </ul>
  </section>
);

const Chart: FC<Pick<Answered, 'recipe' | 'tried' | 'query' | 'entry' | 'units'>> = ({
  recipe,
  tried,
  query,
  entry,
  units,
}) => (
  <details open={tried || entry.problems.some(({ field }) => field === 'square' || field === 'start')}>
    <summary>Try measures from a chart, before paper is cut</summary>
    <form action="/envelopes" method="get" class="fields">
      <Carried query={query} changes={{ ...UNCHOSEN, chart: 'yes' }} />
      <Field name="square" label="Square" kind="length" entry={entry} />
      <Field name="start" label="Start" kind="length" entry={entry} />
      <div class="field">
        <span class="label">&nbsp;</span>
        <button type="submit" class="plain">
          What would it give?
        </button>
      </div>
    </form>
    {tried && <SideBySide recipe={recipe} query={query} units={units} />}
  </details>
);

/** The measures tried beside the nearest better start on the same square. */
const SideBySide: FC<{ recipe: Recipe; query: Query; units: Units }> = ({ recipe, query, units }) => {
  const { better } = recipe;
  return (
    <div class="columns">
      <Result
        title={`Start ${printExact(recipe.starts[0], units)}, as tried`}
        recipe={recipe}
        units={units}
      />
      {better ? (
        <div>
          <Result
            title={`Start ${printExact(better.starts[0], units)} instead`}
            recipe={better}
            units={units}
          />
          <a href={asking(query, { ...UNCHOSEN, ...measuresOf(better, units) })}>Use this start</a>
        </div>
      ) : (
        <p>No other start on this square fits better.</p>
      )}
    </div>
  );
};

const Result: FC<{ title: string; recipe: Recipe; units: Units }> = ({ title, recipe, units }) => (
  <div>
    <h3>{title}</h3>
    <p>
      Pocket {printPocket(recipe.pocket, units)}. The card {SAY_FIT[recipe.fit]}: across {recipe.fits.width} (
      {sayClearance(recipe.clearance.width, units)}), up and down {recipe.fits.height} (
      {sayClearance(recipe.clearance.height, units)}).
    </p>
  </div>
);

/** The question so far, less what the form asks anew. */
const Carried: FC<{ query: Query; changes: Query }> = ({ query, changes }) => (
  <>
    {Object.entries({ ...query, ...changes })
      .filter(([, value]) => value !== '')
      .map(([name, value]) => (
        <input type="hidden" name={name} value={value} />
      ))}
  </>
);
