/** Where no envelope can be made as asked: that first, then why, and what she can do instead. Works nothing out. */
import type { Child, FC } from 'hono/jsx';
import { type Obstacle, obstacleOf } from '#core/envelope/obstacle.ts';
import { printExact, printExactSize } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { sayClearance } from '../common/fit.ts';
import type { Answered } from './answer.tsx';
import { SAY_WAY, sayEnvelope } from './fold-words.ts';
import { asking, cardFields, measuresOf, UNCHOSEN } from './query.ts';
import { sayNeeded } from './say-paper.ts';

export const Impossible: FC<Answered & { obstacle: Obstacle }> = (answered) => {
  const possible = waysOut(answered);
  return (
    <>
      <h1 class="answer">{HEADLINES[answered.obstacle]}</h1>
      <p class="lead">{sayWhy(answered)}</p>
      {possible.length > 0 && (
        <ul class="list ways-out no-print">
          {possible.map((one) => (
            <li>{one}</li>
          ))}
        </ul>
      )}
    </>
  );
};

export const HEADLINES: Record<Obstacle, string> = {
  'larger than the tool': 'This envelope is too large for your tool.',
  "won't go": 'The card won’t go in.',
};

function sayWhy({ obstacle, recipe, tried, units }: Answered): string {
  const { card, clearance, notcher } = recipe;
  if (obstacle === "won't go") {
    const [across, up] = [sayClearance(clearance.width, units), sayClearance(clearance.height, units)];
    return `${tried ? 'With your measures the' : 'Your'} ${printExactSize(card, units)} card has ${across} across, ${up} up and down.`;
  }
  return `A card of ${printExactSize(card, units)} takes ${sayNeeded(recipe, units)}; your tool takes up to ${printExact(notcher.largestSheet, units)}.`;
}

/** What would go: another fold, another start, a smaller card, another tool. */
function waysOut(answered: Answered): Child[] {
  const { obstacle, recipe, ways, others, alike, query, units } = answered;
  const to = (other: Answered['recipe']): string =>
    asking(query, { ...UNCHOSEN, ...measuresOf(other, units) });
  const folds = ways.filter((way) => way.recipe.fold !== recipe.fold && !obstacleOf(way.recipe));
  const fitting = others.find((other) => other.fold === recipe.fold && !obstacleOf(other));
  return [
    ...(recipe.better && !obstacleOf(recipe.better)
      ? [<a href={to(recipe.better)}>Use start {printExact(recipe.better.starts[0], units)} instead</a>]
      : []),
    ...(fitting
      ? [<a href={to(fitting)}>Take an envelope that it goes into: {sayEnvelope(fitting, units)}</a>]
      : []),
    ...folds.map((way) => <a href={to(way.recipe)}>Make it {SAY_WAY[way.recipe.fold]}</a>),
    ...(alike ? [<Smaller {...answered} alike={alike} />] : []),
    ...(obstacle === 'larger than the tool' ? [<ByHand />] : []),
  ];
}

const Smaller: FC<Pick<Answered, 'query' | 'units'> & { alike: Size }> = ({ alike, query, units }) => (
  <>
    Make the card smaller: in this shape{' '}
    <a href={asking(query, { ...UNCHOSEN, ...cardFields(alike, units) })}>{printExactSize(alike, units)}</a>{' '}
    is the largest that goes.
  </>
);

const ByHand: FC = () => (
  <>
    Score it by hand: <a href="/tools/notchers/new">add a ruler and a scoring tool</a>, with the largest sheet
    you can lay down.
  </>
);
