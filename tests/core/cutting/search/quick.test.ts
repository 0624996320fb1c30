/** The first plan where there is no time for any other: it is there, sound, and places what it easily can. */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import type { Order, Part, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { chance } from '#core/cutting/search/random.ts';

const KINDS = 60;

const random = chance(5);
const side = (least: number, most: number): number => least + random.below(most - least);
const parts: Part[] = Array.from({ length: KINDS }, (_, index) => ({
  ...{ id: `part ${index}`, width: side(10, 60), height: side(10, 60), copies: 1 },
  ...(index % 3 === 0 && { upright: true }),
  ...(index % 5 === 0 && { designs: ['fern'] }),
}));
const pieces: Piece[] = Array.from({ length: KINDS }, (_, index) => ({
  ...{ id: `piece ${index}`, width: side(60, 200), height: side(60, 200), upright: index % 2 === 0 },
  ...{ kind: index % 4 === 0 ? 'sheet' : 'offcut', design: index % 2 === 0 ? 'fern' : 'moss' },
}));

/** Planned with a clock on which all the time is over at the second look. */
const planned = (order: Order) => {
  let looks = 0;
  const plan = planCuts(order, pieces, { timeMs: 1000, seed: 1, now: () => 1000 * looks++ });
  expect(checkPlan(order, pieces, plan)).toEqual([]);
  return plan.placed;
};

describe('sixty kinds of part and as many of piece, and no time', () => {
  it('are all placed where there is room for all', () => {
    expect(planned({ parts })).toBe(KINDS);
  });

  it('are placed by cuts that a short trimmer can make, where there are such', () => {
    const placed = planned({ parts, longestCut: 90 });
    expect(placed).toBeGreaterThan(KINDS / 2);
  });

  it('keep to one design where they match', () => {
    const matching = parts.map((part, index) => (index % 4 === 0 ? { ...part, match: 'set' } : part));
    expect(planned({ parts: matching })).toBeGreaterThan(KINDS / 2);
  });
});
