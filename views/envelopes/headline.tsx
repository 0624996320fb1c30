/** The answer in one sentence, how the card sits, what to watch for, and other ways that the shelf offers. */
import type { FC } from 'hono/jsx';
import type { Recipe } from '#core/envelope/recipe.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import { opensSheet, type Way } from '#core/project/ways.ts';
import { printLength, printSize, type Units } from '#shared/length.ts';
import { SAY_FIT, sayClearance } from '../parts/fit.ts';
import type { Answered } from './answer.tsx';
import { sayBlanks, sayEnvelope } from './fold-words.ts';
import { asking, measuresOf, type Query, UNCHOSEN } from './query.ts';

export const Headline: FC<Answered> = ({ recipe, units, tried, ways, query }) => (
  <>
    <h1 class="answer">
      <Measures recipe={recipe} units={units} />
    </h1>
    <p class="lead">
      {tried ? 'With these measures your' : 'Your'} {printSize(recipe.card, units)} card{' '}
      <span class="fit">{SAY_FIT[recipe.fit]}</span>: {sayClearance(recipe.clearance.width, units)} across,{' '}
      {sayClearance(recipe.clearance.height, units)} up and down.
    </p>
    <Warnings recipe={recipe} units={units} />
    <OtherWays ways={ways.filter((way) => way.recipe.fold !== recipe.fold)} units={units} query={query} />
  </>
);

const Measures: FC<{ recipe: Recipe; units: Units }> = ({ recipe, units }) => {
  if (recipe.fold === 'diagonal') {
    return (
      <>
        Square <strong>{printLength(recipe.blank.width, units)}</strong>, first notch at{' '}
        <strong>{printLength(recipe.starts[0], units)}</strong>.
      </>
    );
  }
  return (
    <>
      {recipe.fold === 'side-seam' ? 'One strip, ' : 'Two pieces, '}
      <strong>{sayBlanks(recipe, units)}</strong>
      {recipe.fold === 'side-seam' ? ', folded with side seams.' : ', joined.'}
    </>
  );
};

const Warnings: FC<{ recipe: Recipe; units: Units }> = ({ recipe, units }) =>
  recipe.warnings.length === 0 ? null : (
    <ul class="warnings">
      {recipe.warnings.map((warning) => (
        <li>{describeWarning(warning, units)}</li>
      ))}
    </ul>
  );

const OtherWays: FC<{ ways: readonly Way[]; units: Units; query: Query }> = ({ ways, units, query }) =>
  ways.length === 0 ? null : (
    <p class="ways no-print">
      {ways.map(({ recipe, pieces }) => (
        <span>
          Or{' '}
          <a href={asking(query, { ...UNCHOSEN, ...measuresOf(recipe, units) })}>
            {sayEnvelope(recipe, units)}
          </a>
          {sayPaper(pieces)}
        </span>
      ))}
    </p>
  );

function sayPaper(pieces: Way['pieces']): string {
  if (pieces.length === 0) return ', but nothing on the shelf will do.';
  const [{ design }] = pieces as [Way['pieces'][number]];
  return opensSheet(pieces)
    ? `, from a new sheet of ${design.name}.`
    : `, from ${design.name}: nothing opened.`;
}
