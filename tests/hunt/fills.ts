/**
 * One piece to be filled at random, the same for the same seed, and what is wrong with the fill: judged, held against a
 * search that knows no table and, where it is tiny, against every way of cutting.
 */
import { checkFill } from '#core/cutting/one-piece/check-fill.ts';
import { type FillOptions, fillPiece } from '#core/cutting/one-piece/fill.ts';
import { fillLimited, type LimitedFill } from '#core/cutting/one-piece/limited.ts';
import { openSurround } from '#core/cutting/one-piece/surround.ts';
import { type FillGoal, type FillPart, wantsOf } from '#core/cutting/one-piece/wants.ts';
import type { Piece } from '#core/cutting/order.ts';
import { type Chance, chance } from '#core/cutting/search/random.ts';
import { bestOfAll } from '#tests/core/cutting/one-piece/fill-brute.ts';

export interface RandomFill {
  readonly piece: Piece;
  readonly parts: readonly FillPart[];
  readonly options: FillOptions & { readonly goal: FillGoal };
  readonly tiny: boolean;
}

const WORK = 3000;
const SLACK = 1e-9;

export function randomFill(seed: number): RandomFill {
  const random = chance(seed);
  const tiny = random.next() < 0.3;
  const side = (least: number, most: number): number => least + random.below(most - least + 1);
  const piece: Piece = {
    ...{ id: 'piece', kind: 'sheet', upright: random.next() < 0.7 },
    ...{ width: tiny ? side(1, 7) : side(20, 80), height: tiny ? side(1, 7) : side(20, 80) },
  };
  const least = tiny ? 1 : side(3, 12);
  const parts = Array.from({ length: tiny ? side(1, 3) : side(2, 8) }, (_, index) => ({
    id: `part ${index}`,
    width: side(least, Math.max(least, piece.width)),
    height: side(least, Math.max(least, piece.height)),
    value: side(1, 400),
    ...(random.next() < 0.5 && { upright: true }),
    ...((tiny || random.next() < 0.8) && { copies: side(1, tiny ? 3 : 4) }),
  }));
  const goal = (['area', 'count', 'wish'] as const)[random.below(3)]!;
  return { piece, parts, tiny, options: { goal, work: WORK, ...(!tiny && limitsOf(random, piece)) } };
}

export function fillFaults({ piece, parts, options, tiny }: RandomFill): string[] {
  const { goal, longestCut = Infinity } = options;
  const fill = fillPiece(piece, parts, options);
  const found = checkFill(piece, parts, fill, options).map(({ field, message }) => `${field}: ${message}`);
  if (tiny) {
    const best = bestOfAll(piece, parts, goal);
    return fill.value === best && fill.proved ? found : [...found, `${fill.value} of ${best} possible`];
  }
  if (longestCut < Math.max(piece.width, piece.height)) return found;
  const other = plainSearch(piece, parts, goal);
  if (fill.bound < other.value * (1 - SLACK)) found.push(`the bound ${fill.bound} is under ${other.value}`);
  if (fill.value > other.bound * (1 + SLACK)) found.push(`${fill.value} is over the bound ${other.bound}`);
  return found;
}

const limitsOf = (random: Chance, { width, height }: Piece) => ({
  ...(random.next() < 0.25 && { keepAtLeast: random.below(6) }),
  ...(random.next() < 0.17 && { longestCut: Math.floor(Math.min(width, height) * (1 + random.next())) }),
});

/** In the caller's units. */
function plainSearch(
  piece: Piece,
  parts: readonly FillPart[],
  goal: FillGoal,
): Pick<LimitedFill, 'value' | 'bound'> {
  const wants = wantsOf(piece, parts, goal, Infinity);
  const search = { seed: 1, work: WORK, runs: Infinity, shouldStop: () => false };
  const { value, bound } = fillLimited({ ...wants, surround: openSurround }, search);
  const scale = goal === 'area' ? wants.grid ** 2 : 1;
  return { value: value * scale, bound: bound * scale };
}
