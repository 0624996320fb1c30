/** How fast the envelope solver is, over a seeded set of cards. Gives a markdown table; judges nothing. */
import { THIN_BULK } from '#core/envelope/fit.ts';
import type { Card, Notcher, Want } from '#core/envelope/recipe.ts';
import { solveEnvelope, tryMeasures } from '#core/envelope/recipes.ts';
import { inches, length } from '#shared/length.ts';

const SEED = 20261125;
const CARDS = 300;

const NOTCHER: Notcher = {
  inset: inches(7 / 16),
  zeroOffset: inches(0),
  graduation: inches(1 / 16),
  largestSheet: inches(12),
};

/** Recipes and answers per second for each kind of question, as a markdown table. */
export function solverTable(): string {
  const cards = seededCards(CARDS);
  const rows = [
    row('any fit, graduation 1/16 in', cards, {}),
    row('snug wanted', cards, { fit: 'snug' }),
    row('a limit on the outer size', cards, { largestOuter: { width: inches(7), height: inches(7) } }),
    triedRow(cards),
  ];
  return [
    `| solver, ${CARDS} seeded cards | recipes | answers/s | recipes/s |`,
    '| --- | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}

function row(name: string, cards: readonly Card[], want: Want): string {
  return measured(name, cards, (card) => solveEnvelope({ card, notcher: NOTCHER, want }).length);
}

const triedRow = (cards: readonly Card[]): string =>
  measured('a chart’s square and start tried', cards, (card) => {
    tryMeasures({ card, notcher: NOTCHER, square: inches(8), start: inches(3) });
    return 1;
  });

function measured(name: string, cards: readonly Card[], answer: (card: Card) => number): string {
  for (const card of cards.slice(0, 20)) answer(card);
  const from = performance.now();
  const recipes = cards.reduce((sum, card) => sum + answer(card), 0);
  const seconds = (performance.now() - from) / 1000;
  const perSecond = (count: number) => Math.round(count / seconds);
  return `| ${name} | ${recipes} | ${perSecond(cards.length)} | ${perSecond(recipes)} |`;
}

function seededCards(count: number): Card[] {
  const random = lehmer(SEED);
  const side = () => length(Math.round((2 + 5 * random()) * 16) * inches(1 / 16));
  return Array.from({ length: count }, () => ({ width: side(), height: side(), bulk: THIN_BULK }));
}

/** Lehmer's generator with Park and Miller's multiplier: the same cards on every machine. */
function lehmer(seed: number): () => number {
  let state = seed % 2_147_483_647;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
