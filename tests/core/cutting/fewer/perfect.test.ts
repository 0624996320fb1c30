/** Fills without waste: sheets that were cut up whole are put together again, and every fill is whole. Knows no plans. */
import { describe, expect, it } from 'vitest';
import { perfectFills } from '#core/cutting/fewer/perfect.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { prepare } from '#core/cutting/search/job.ts';
import { AS_IS, TURNED, walk } from '#core/cutting/search/nodes.ts';
import { chance } from '#core/cutting/search/random.ts';

const sizes = [
  [100, 60],
  [45, 40],
  [55, 40],
  [70, 30],
  [70, 70],
  [30, 100],
] as const;
const pieces = [{ id: 'pad', width: 100, height: 100, kind: 'sheet', copies: 4 }] as const;

const orderOf = (upright: boolean) => ({
  parts: sizes.map(([width, height], part) => ({ id: `${part}`, width, height, copies: 1, upright })),
});

const fillsOf = (upright: boolean, longestCut?: number) => {
  const job = prepare({ ...orderOf(upright), ...(longestCut && { longestCut }) }, pieces);
  const given = { available: job.copies, random: chance(1), shouldStop: () => false };
  return { job, fills: perfectFills(job, [0], given) };
};

const partSets = (upright: boolean): string[] =>
  fillsOf(upright)
    .fills.map(({ parts }) => [...parts].sort().join())
    .sort();

describe('perfectFills', () => {
  it('finds the two sheets again that the parts were cut from', () => {
    expect(partSets(true)).toEqual(['0,1,2', '3,4,5']);
    expect(partSets(false)).toEqual(expect.arrayContaining(['0,1,2', '3,4,5']));
  });

  it.each([true, false])(
    'lays every part of a fill in its own size and leaves nothing, upright: %s',
    (upright) => {
      const { job, fills } = fillsOf(upright);
      for (const { parts, pattern } of fills) {
        const { nodes, area, left } = pattern();
        const found: number[] = [];
        walk(nodes, 0, 100 / job.grid, 100 / job.grid, (from, _, width, height) => {
          const part = nodes[from + 1]!;
          if (nodes[from] === AS_IS) expect([width, height]).toEqual([job.width[part], job.height[part]]);
          if (nodes[from] === TURNED) expect([height, width]).toEqual([job.width[part], job.height[part]]);
          if (nodes[from] === AS_IS || nodes[from] === TURNED) found.push(part);
        });
        expect(found.sort()).toEqual([...parts].sort());
        expect([area, left]).toEqual([(100 / job.grid) ** 2, 0]);
      }
    },
  );

  it('has none for a trimmer that is too short', () => {
    expect(fillsOf(false, 99).fills).toEqual([]);
  });

  it('lets a plan reach the sheets that an order was cut from', () => {
    expect(planCuts(orderOf(true), pieces, { work: 500 })).toMatchObject({ newSheets: 2, unplaced: [] });
  });
});
