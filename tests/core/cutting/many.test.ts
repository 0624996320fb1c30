/** Orders with more kinds of part and piece than anyone has: the time limit holds, and most of it still gets planned. */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Order, Part, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { type Chance, chance } from '#core/cutting/search/random.ts';

const KINDS = 2000;
const TIME_MS = 1500;

/** Of this process, so that other work on the machine is not mistaken for a missed time limit. */
const processorTime = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

type Wish = (random: Chance) => Partial<Part>;

function many(seed: number, unit: number, wish: Wish): { parts: Part[]; pieces: Piece[] } {
  const random = chance(seed);
  const side = (least: number, most: number): number =>
    (least + random.below(most - least)) * unit + random.below(unit);
  const each = <T>(one: (index: number) => T): T[] => Array.from({ length: KINDS }, (_, index) => one(index));
  return {
    parts: each((index) => ({
      ...{ id: `part ${index}`, width: side(10, 110), height: side(10, 110), copies: 1 + random.below(3) },
      ...wish(random),
    })),
    pieces: each((index) => ({
      ...{ id: `piece ${index}`, width: side(16, 200), height: side(16, 200), copies: 1 + random.below(3) },
      kind: random.next() < 0.3 ? 'sheet' : 'offcut',
      design: `design ${random.below(20)}`,
      upright: random.next() < 0.5,
      edges: random.next() < 0.5 ? ['bottom'] : [],
    })),
  };
}

/** Plans, and expects the time limit to hold but for what any plan takes at most: preparing, a first bound, and writing. */
function planInTime(order: Order, pieces: readonly Piece[], timeMs: number): CutPlan {
  const took = (limit: number): [number, CutPlan] => {
    const started = processorTime();
    const plan = planCuts(order, pieces, { timeMs: limit, now: processorTime });
    return [processorTime() - started, plan];
  };
  const [once] = took(1);
  const [all, plan] = took(timeMs);
  expect(all).toBeLessThan(timeMs * 1.1 + once);
  return plan;
}

describe('thousands of kinds', () => {
  it.each<[string, number, Wish, Omit<Order, 'parts'>]>([
    ['of any paper', 1, () => ({}), {}],
    ['in fine lengths', 1016, () => ({}), {}],
    ['under a short trimmer', 1, () => ({}), { longestCut: 40, keepAtLeast: 8 }],
    ['upright or not', 1, (random) => ({ upright: random.next() < 0.4 }), { longestCut: 120 }],
    [
      'pinned to an edge or a place',
      1,
      (random) =>
        random.next() < 0.3
          ? { pin: random.next() < 0.5 ? { edge: 'bottom' } : { x: random.below(40), y: random.below(40) } }
          : {},
      {},
    ],
    ['that match', 1, (random) => (random.next() < 0.5 ? { match: `set ${random.below(6)}` } : {}), {}],
    [
      'of one design to a set',
      1016,
      (random) => (random.next() < 0.5 ? { match: `set ${random.below(3)}`, oneDesign: true } : {}),
      {},
    ],
  ])('%s keep to the time limit, writing included', (_, unit, wish, limits) => {
    const { parts, pieces } = many(7, unit, wish);
    const order = { parts, ...limits };
    const plan = planInTime(order, pieces, TIME_MS);
    expect(checkPlan(order, pieces, plan)).toEqual([]);
    expect(plan.placed).toBeGreaterThan(0);
  });

  it('keep to it where all of them find room, and offcuts are looked through to spare', () => {
    const { parts, pieces } = many(9, 1, () => ({}));
    const order = { parts: parts.map((part) => ({ ...part, copies: 1 })) };
    const plan = planInTime(order, pieces, 2 * TIME_MS);
    expect(plan.placed).toBe(KINDS);
  });

  it('are planned in good part in that time, not stock by stock until it is up', () => {
    const { parts, pieces } = many(8, 1, () => ({}));
    const plan = planCuts({ parts }, pieces, { timeMs: 2 * TIME_MS, now: processorTime });
    const copies = parts.reduce((sum, part) => sum + part.copies, 0);
    expect(plan.placed).toBeGreaterThan(copies / 4);
  });
});
