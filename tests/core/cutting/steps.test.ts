/** The cut sheet makes every cut of the plan once, each block after it has come off, and sets a distance seldom. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CutTree, isCut, type Rectangle } from '#core/cutting/cuts.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { fewestSettings } from '#core/cutting/settings.ts';
import { cutSheet } from '#core/cutting/steps.ts';

const pad: Piece = { id: 'pad', width: 96, height: 96, kind: 'sheet', copies: 20 };
const order: Order = {
  keepAtLeast: 8,
  parts: [
    { id: 'base', width: 44, height: 34, copies: 8 },
    { id: 'front', width: 42, height: 32, copies: 8 },
    { id: 'envelope', width: 70, height: 70, copies: 2 },
  ],
};

const cutsIn = (tree: CutTree): number =>
  isCut(tree) ? 1 + cutsIn(tree.parts[0]) + cutsIn(tree.parts[1]) : 0;
/** What each cut of a block divides, in two. */
function sidesOf(tree: CutTree, block: Rectangle): [number, number][] {
  if (!isCut(tree)) return [];
  const [at, side] = tree.along === 'x' ? (['x', 'width'] as const) : (['y', 'height'] as const);
  const near = tree.at - block[at];
  const [first, second] = tree.parts;
  return [
    [near, block[side] - near],
    ...sidesOf(first, { ...block, [side]: near }),
    ...sidesOf(second, { ...block, [at]: tree.at, [side]: block[side] - near }),
  ];
}
const keyOf = (used: number, { x, y, width, height }: Rectangle): string =>
  [used, x, y, width, height].join();

describe('cutSheet', () => {
  const plan = planCuts(order, [pad], { work: 800 });
  const settings = cutSheet([pad], plan);
  const steps = settings.flatMap((setting) =>
    setting.steps.map((step) => ({ ...step, distance: setting.distance })),
  );

  it('makes each cut once', () => {
    const cuts = steps.reduce((sum, step) => sum + step.off.length, 0);
    expect(cuts).toBe(plan.used.reduce((sum, used) => sum + cutsIn(used.cuts), 0));
  });

  it('takes up each block only when it has come off', () => {
    const there = new Set(plan.used.map((_, used) => keyOf(used, { x: 0, y: 0, width: 96, height: 96 })));
    for (const { used, block, off, rest } of steps) {
      expect(there).toContain(keyOf(used, block));
      for (const one of [...off, rest]) there.add(keyOf(used, one));
    }
  });

  it('cuts off what the distance says, from the edge that is named', () => {
    for (const { distance, block, fence, off } of steps) {
      const [first] = off;
      expect(fence === 'left' || fence === 'right' ? first!.width : first!.height).toBe(distance);
      if (fence === 'left') expect(first!.x).toBe(block.x);
      if (fence === 'right') expect(first!.x + first!.width).toBe(block.x + block.width);
      if (fence === 'top') expect(first!.y).toBe(block.y);
      if (fence === 'bottom') expect(first!.y + first!.height).toBe(block.y + block.height);
    }
  });

  it('ends with the parts and leftovers of the plan', () => {
    const done = steps.flatMap((step) =>
      [...step.off, step.rest].map((block) => ({ used: step.used, becomes: block.becomes, block })),
    );
    const parts = done.filter(({ becomes }) => becomes.kind === 'part');
    expect(parts).toHaveLength(plan.placed);
    for (const { used, becomes, block } of done) {
      if (becomes.kind !== 'leftover') continue;
      const { x, y, width, height } = block;
      expect(plan.used[used]!.leftovers[becomes.leftover]).toEqual({ x, y, width, height });
    }
  });

  it('joins cuts alike into one line, at few distances that serve every cut', () => {
    const distances = new Set(settings.map((setting) => setting.distance));
    const sides = plan.used.flatMap(({ cuts }) => sidesOf(cuts, { x: 0, y: 0, width: 96, height: 96 }));
    expect(sides.length).toBeGreaterThan(distances.size);
    for (const [near, far] of sides) expect(distances.has(near) || distances.has(far)).toBe(true);
    expect(distances.size).toBe(fewestSettings(sides).length);
    expect(steps.some((step) => step.off.length > 1)).toBe(true);
  });
});

describe('fewestSettings', () => {
  it('names one side of every cut', () => {
    const pairs = fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 })), {
      maxLength: 20,
    });
    fc.assert(
      fc.property(pairs, (list) => {
        const chosen = new Set(fewestSettings(list));
        expect(list.every(([one, other]) => chosen.has(one) || chosen.has(other))).toBe(true);
      }),
      { seed: 20261125 },
    );
  });

  it('takes the commonest first', () => {
    expect(
      fewestSettings([
        [3, 9],
        [3, 6],
        [6, 3],
        [5, 4],
      ]),
    ).toEqual([3, 4]);
  });
});
