/** What a project is known by, largest on its page: its picture, its card, the measures that stand and how they are known. */
import type { FC } from 'hono/jsx';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { startMoves } from '#core/project/in-use.ts';
import type { Project } from '#core/project/journal.ts';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import type { Design } from '#core/stash/stash.ts';
import { type Length, printExact, printExactSize, type Units } from '#shared/length.ts';
import { printPocket } from '#shared/pocket.ts';
import type { Size } from '#shared/size.ts';
import { inOther, sizeInOther } from '../common/both-units.ts';
import { finely } from '../common/finely.ts';
import { SAY_FIT } from '../common/fit.ts';
import { capital } from '../common/words.ts';
import { CopyMeasures } from './copy-measures.tsx';
import { MakeAgain } from './make-again.tsx';
import { SmallFront } from './small-front.tsx';
import { SAY_KNOWN } from './words.ts';

interface Props {
  readonly project: Project;
  readonly working: WorkingMeasures;
  /** What the next envelope is made to, where that is told apart. */
  readonly toMake: Recipe | null;
  readonly design: Design | undefined;
  readonly units: Units;
  readonly token: string;
}

export const Known: FC<Props> = ({ project, working, toMake, design, units, token }) => {
  const { recipe, pocket, known } = working;
  return (
    <section class="known" aria-label="What it is known by">
      <div class="known-picture">
        <SmallFront project={project} recipe={recipe} design={design} />
        <p>
          For a card <strong>{printExactSize(recipe.card, units)}</strong>
          <small>
            {sizeInOther(recipe.card, units)}, {finely(recipe.card.bulk, units)} thick
          </small>
        </p>
      </div>
      <div>
        <dl class="measures">
          {foldOf(recipe)
            .blanks(recipe)
            .map((blank) => (
              <Blank blank={blank} units={units} />
            ))}
          {startMoves(recipe) ? <Start starts={recipe.starts} units={units} /> : null}
          <div>
            <dt>Pocket</dt>
            <dd>
              {known === 'made and measured' ? printExactSize(pocket, units) : printPocket(pocket, units)}
              <small>{sizeInOther(pocket, units)}</small>
            </dd>
          </div>
        </dl>
        <p class={known === "didn't work" ? 'known-how failed' : 'known-how'}>
          The card <strong>{SAY_FIT[working.fit]}</strong>. {sayHow(working)}{' '}
          {sayChanged(project, recipe, units)}
        </p>
        {toMake && project.finishedAt === null && toMake.starts[0] !== recipe.starts[0] ? (
          <p>
            The next one is made with start {printExact(toMake.starts[0], units)}, which you changed it to.
          </p>
        ) : null}
        <div class="row">
          <MakeAgain project={project.id} token={token} />
          <CopyMeasures title={project.title} working={working} units={units} />
        </div>
      </div>
    </section>
  );
};

const Blank: FC<{ blank: Size; units: Units }> = ({ blank, units }) => {
  const square = blank.width === blank.height;
  return (
    <div class={square ? 'main' : 'main wide'}>
      <dt>{square ? 'Square' : 'Blank'}</dt>
      <dd>
        {square ? printExact(blank.width, units) : printExactSize(blank, units)}
        <small>{square ? inOther(blank.width, units) : sizeInOther(blank, units)}</small>
      </dd>
    </div>
  );
};

const Start: FC<{ starts: readonly [Length, Length]; units: Units }> = ({ starts: [start, twin], units }) => (
  <div class="main">
    <dt>Start</dt>
    <dd>
      {printExact(start, units)}
      <small>
        {inOther(start, units)} · twin {printExact(twin, units)}
      </small>
    </dd>
  </div>
);

const sayHow = ({ known, envelope }: WorkingMeasures): string =>
  `${capital(SAY_KNOWN[known])}${envelope ? ` (envelope ${envelope.number})` : ''}.`;

/** Where the start that stands is the one changed after a trial. */
function sayChanged({ recipe: planned, start }: Project, { starts }: Recipe, units: Units): string {
  if (!planned || start === null || start !== starts[0] || start === planned.starts[0]) return '';
  return `The start was changed after the trial, from ${printExact(planned.starts[0], units)}.`;
}
