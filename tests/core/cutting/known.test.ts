/**
 * The planner against instances with known values in tests/fixtures/cutting: Berkey & Wang 1987 and Martello & Vigo 1998
 * (fewest identical sheets) and this project's own orders.
 */
import { describe, expect, it } from 'vitest';
import { bound } from '#core/cutting/bound/bound.ts';
import { checkPlan } from '#core/cutting/check.ts';
import type { PlanOptions } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { prepare } from '#core/cutting/search/job.ts';
import { type Case, craftOrders, identicalSheets } from '#tests/bench/orders.ts';

describe('known instances', () => {
  it.each([false, true])('proves the fewest sheets of every instance, turns allowed: %s', (turns) => {
    for (const { name, order, pieces, sheets } of identicalSheets(turns)) {
      const [sheet] = pieces;
      const job = prepare(order, pieces);
      const area = bound(job).sheetArea(0) * job.grid ** 2;
      expect([name, area / (sheet!.width * sheet!.height)]).toEqual([name, sheets]);
    }
  });

  it.each([false, true])('opens the fewest sheets for twenty parts, turns allowed: %s', (turns) => {
    for (const { name, order, pieces, sheets } of identicalSheets(turns).filter((one) =>
      /_20_1$/.test(one.name),
    )) {
      const plan = planCuts(order, pieces, { work: 400 });
      expect(checkPlan(order, pieces, plan)).toEqual([]);
      expect([name, plan.newSheets, plan.proved]).toEqual([name, sheets, true]);
    }
  });

  const craft = (name: string): Case => craftOrders().find((one) => one.name === name)!;
  const sparing: PlanOptions = { spare: 'offcutArea', work: 4000, seed: 3 };

  it('places 25 of the 27 tags for which there is too little paper, and proves that no more is possible', () => {
    const { order, pieces } = craft('tags6');
    const plan = planCuts(order, pieces, { work: 800 });
    expect(checkPlan(order, pieces, plan)).toEqual([]);
    expect(plan).toMatchObject({ placed: 25, bounds: { unplaced: 2 }, newSheets: 6, proved: true });
  });

  it.each([
    ['tags9', 8, 12_544],
    ['letterhead', 6, 87_488],
    ['ribbons', 6, 30_208],
  ])('spares offcuts in %s as well as the best plan known', (name, sheets, offcutArea) => {
    const { order, pieces } = craft(name);
    const plan = planCuts(order, pieces, sparing);
    expect(checkPlan(order, pieces, plan)).toEqual([]);
    expect(plan).toMatchObject({ unplaced: [], newSheets: sheets, proved: true });
    expect(plan.offcutAreaUsed).toBeLessThanOrEqual(offcutArea);
  });
});
