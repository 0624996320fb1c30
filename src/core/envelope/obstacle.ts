/**
 * What keeps an envelope from being made at all, against what only wants care; and the largest card of the same shape
 * that finds one. Knows no shelf and no words.
 */
import { roundToStep, times } from '#shared/length.ts';
import { longer, type Size, shorter } from '#shared/size.ts';
import type { Card, FitLimits, Notcher, Recipe } from './recipe.ts';
import { solveEnvelope } from './recipes.ts';

const OBSTACLES = ["won't go", 'larger than the tool'] as const;

export type Obstacle = (typeof OBSTACLES)[number];

/** Undefined where the envelope can be folded on this tool and takes the card. */
export const obstacleOf = ({ warnings }: Pick<Recipe, 'warnings'>): Obstacle | undefined =>
  OBSTACLES.find((obstacle) => warnings.some(({ kind }) => kind === obstacle));

/**
 * The largest card of about the same proportions and bulk, both sides on the tool's graduation, that an envelope
 * without any warning can be made for; undefined where there is none. Found by halving, since what goes stays possible
 * when it gets smaller.
 */
export function largestAlike(card: Card, notcher: Notcher, limits: FitLimits): Size | undefined {
  const { graduation } = notcher;
  const sized = (marks: number): Card => {
    const long = times(graduation, marks);
    const short = roundToStep((long * shorter(card)) / longer(card), graduation, 'down') || graduation;
    const [width, height] = card.width >= card.height ? [long, short] : [short, long];
    return { width, height, bulk: card.bulk };
  };
  const goes = (marks: number): boolean =>
    solveEnvelope({ card: sized(marks), notcher, limits }).some(({ warnings }) => warnings.length === 0);
  let [possible, impossible] = [0, Math.ceil(longer(card) / graduation) + 1];
  while (impossible - possible > 1) {
    const middle = Math.floor((possible + impossible) / 2);
    if (goes(middle)) possible = middle;
    else impossible = middle;
  }
  return possible === 0 ? undefined : sized(possible);
}
