/** A project's measurements, large: what to set the tool to and what comes out, each with how it was really made. */
import type { FC } from 'hono/jsx';
import { foldOf } from '#core/envelope/folds.ts';
import type { Flap, Recipe } from '#core/envelope/recipe.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import { alike, asMade, leftOpen } from '#core/project/as-made.ts';
import { startMoves } from '#core/project/in-use.ts';
import type { Envelope, Project, ProjectInFull } from '#core/project/journal.ts';
import type { Finish } from '#shared/fold.ts';
import { printExact, printExactSize, type Units } from '#shared/length.ts';
import { printPocket } from '#shared/pocket.ts';
import type { Size } from '#shared/size.ts';
import { capital } from '#views/common/words.ts';
import { finely } from '../common/finely.ts';
import { sayFinish } from '../common/finish.ts';
import { SAY_FIT } from '../common/fit.ts';
import type { ProjectView } from './view.ts';
import { nameOf } from './words.ts';

export const Measures: FC<Pick<ProjectView, 'full' | 'units'> & { recipe: Recipe }> = ({
  full,
  recipe,
  units,
}) => {
  const really = reallyMade(full, recipe, units);
  const bulk = recipe.card.bulk > 0 ? [`${finely(recipe.card.bulk, units)} thick`] : [];
  return (
    <dl class="measures">
      {foldOf(recipe)
        .blanks(recipe)
        .map((blank) => (
          <Measure
            name={isSquare(blank) ? 'Square' : 'Blank'}
            value={isSquare(blank) ? printExact(blank.width, units) : printExactSize(blank, units)}
            notes={really('square')}
          />
        ))}
      {startMoves(recipe) ? (
        <>
          <Measure
            name="Start"
            value={printExact(recipe.starts[0], units)}
            notes={[...changed(full.project, recipe, units), ...really('start')]}
          />
          <Measure name="Twin, from the other corner" value={printExact(recipe.starts[1], units)} />
        </>
      ) : null}
      {recipe.flaps.map((flap) => (
        <Trim flap={flap} notes={really(flap.letter)} units={units} />
      ))}
      <Measure name="Card" value={printExactSize(recipe.card, units)} notes={bulk} />
      <Measure
        wide
        name="Pocket"
        value={printPocket(recipe.pocket, units)}
        notes={[`worked out: card ${SAY_FIT[recipe.fit]}`, ...really('pocket')]}
      />
    </dl>
  );
};

interface MeasureProps {
  readonly name: string;
  readonly value: string;
  readonly notes?: readonly string[];
  /** Two figures that may need the whole row. */
  readonly wide?: boolean;
}

const Measure: FC<MeasureProps> = ({ name, value, notes = [], wide = false }) => (
  <div class={wide ? 'wide' : undefined}>
    <dt>{name}</dt>
    <dd>
      {value}
      {notes.map((note) => (
        <small>{note}</small>
      ))}
    </dd>
  </div>
);

/** A flap left pointed is not worth a line, unless it was really finished. */
const Trim: FC<{ flap: Flap; notes: readonly string[]; units: Units }> = ({ flap, notes, units }) => {
  const { letter, side, finish } = flap;
  if (finish.shape === 'pointed' && notes.length === 0) return null;
  const name = `Flap ${letter}, ${side}`;
  return (
    <Measure
      name={name}
      value={mainMeasure(finish, units)}
      notes={[...howFinished(finish, units), ...notes]}
    />
  );
};

const mainMeasure = (finish: Finish, units: Units): string =>
  'depth' in finish ? printExact(finish.depth, units) : finish.shape === 'pointed' ? 'pointed' : 'rounded';

function howFinished(finish: Finish, units: Units): string[] {
  if (finish.shape === 'straight') return ['from its score, cut straight'];
  if (finish.shape === 'tapered') return [`from its score, tapered ${printExact(finish.taper, units)} in`];
  return finish.shape === 'rounded' ? [`radius ${printExact(finish.radius, units)}`] : [];
}

const isSquare = ({ width, height }: Size): boolean => width === height;

function changed({ recipe: planned, start }: Project, { starts }: Recipe, units: Units): string[] {
  if (!planned || start !== starts[0] || start === planned.starts[0]) return [];
  return [`changed after the trial, from ${printExact(planned.starts[0], units)}`];
}

/** For each measure what was noted otherwise, and of which envelopes. */
function reallyMade({ project, envelopes }: ProjectInFull, recipe: Recipe, units: Units) {
  const notes = alike(envelopes).flatMap((group) => notesOf(project, group, { recipe, units }));
  return (measure: string): string[] => notes.filter(([of]) => of === measure).map(([, note]) => note);
}

function notesOf(
  project: Project,
  group: readonly Envelope[],
  { recipe, units }: { readonly recipe: Recipe; readonly units: Units },
): (readonly [string, string])[] {
  const { square, start, twin, finishes = {} } = asMade(project, group[0]!, recipe) ?? { twin: false };
  const open = leftOpen(project, group[0]!);
  const pocket = group[0]!.outcome?.pocket;
  const where = `in ${nameOf(group).toLowerCase()}`;
  const from = twin ? ' from the other corner' : '';
  return [
    ...(square === undefined ? [] : [['square', `really ${printExact(square, units)} ${where}`] as const]),
    ...(start === undefined
      ? []
      : [['start', `really ${printExact(start, units)}${from} ${where}`] as const]),
    ...(pocket ? [['pocket', `measured ${printExactSize(pocket, units)} ${where}`] as const] : []),
    ...(open ? [['pocket', `${capital(where)}: ${describeWarning(open, units)}`] as const] : []),
    ...Object.entries(finishes).map(
      ([letter, finish]) => [letter, `${sayFinish(finish, units)} ${where}`] as const,
    ),
  ];
}
