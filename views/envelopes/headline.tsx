/** The answer first: how the card sits and which paper to take, or that it can't be; then what to watch for. */
import type { FC } from 'hono/jsx';
import type { Recipe } from '#core/envelope/recipe.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { SAY_FIT, sayClearance } from '../common/fit.ts';
import { capital } from '../common/words.ts';
import type { Answered } from './answer.tsx';
import { HEADLINES, Impossible } from './impossible.tsx';
import { sayPaper } from './say-paper.ts';

export const Headline: FC<Answered> = (answered) => {
  const { recipe, units, obstacle } = answered;
  if (obstacle) return <Impossible {...answered} obstacle={obstacle} />;
  return (
    <>
      <h1 class="answer">
        {capital(SAY_FIT[recipe.fit])}. <strong>{sayPaper(answered, units)}</strong>
      </h1>
      <p class="lead">{sayRoom(answered)}</p>
      <Warnings recipe={recipe} units={units} />
    </>
  );
};

/** The same in plain words, for whoever hears the page. */
export const sayAnswer = (answered: Answered): string =>
  answered.obstacle
    ? HEADLINES[answered.obstacle]
    : `${capital(SAY_FIT[answered.recipe.fit])}. ${sayPaper(answered, answered.units)}`;

function sayRoom({ recipe: { card, clearance }, tried, units }: Answered): string {
  const [across, up] = [sayClearance(clearance.width, units), sayClearance(clearance.height, units)];
  return `${tried ? 'With your measures the' : 'Your'} ${printExactSize(card, units)} card has ${across} across, ${up} up and down.`;
}

const Warnings: FC<{ recipe: Recipe; units: Units }> = ({ recipe, units }) =>
  recipe.warnings.length === 0 ? null : (
    <ul class="warnings">
      {recipe.warnings.map((warning) => (
        <li>{describeWarning(warning, units)}</li>
      ))}
    </ul>
  );
