/** The answer first: how the card sits and which paper to take, or that it can't be; then what to watch for. */
import type { FC } from 'hono/jsx';
import type { Recipe } from '#core/envelope/recipe.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import { opensSheet, type Way } from '#core/stash/ways.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { SAY_FIT, sayClearance } from '../common/fit.ts';
import { capital } from '../common/words.ts';
import type { Answered } from './answer.tsx';
import { SAY_WAY } from './fold-words.ts';
import { Impossible } from './impossible.tsx';
import { asking, measuresOf, type Query, UNCHOSEN } from './query.ts';
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

/** The other folds in one row, each with what the shelf has for it. */
export const OtherWays: FC<{ ways: readonly Way[]; recipe: Recipe; units: Units; query: Query }> = ({
  ways,
  recipe: { fold },
  units,
  query,
}) => (
  <p class="ways no-print">
    {ways
      .filter(({ recipe }) => recipe.fold !== fold)
      .map(({ recipe, pieces }) => (
        <span>
          Or <a href={asking(query, { ...UNCHOSEN, ...measuresOf(recipe, units) })}>{SAY_WAY[recipe.fold]}</a>
          {sayShelf(pieces)}
        </span>
      ))}
  </p>
);

function sayShelf(pieces: Way['pieces']): string {
  if (pieces.length === 0) return ', but nothing on the shelf will do.';
  const [{ design }] = pieces as [Way['pieces'][number]];
  return opensSheet(pieces)
    ? `, from a new sheet of ${design.name}.`
    : `, from ${design.name}: nothing opened.`;
}
