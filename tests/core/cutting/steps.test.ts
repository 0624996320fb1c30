/**
 * The steps at the trimmer, walked on paper that is off its size: what is wanted comes out true, each block is laid only
 * when it is there, and the fence moves seldom. The walk is written from what a trimmer does and shares nothing with steps.ts.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan, Rectangle } from '#core/cutting/cuts.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { settingsOfSteps } from '#core/cutting/steps.ts';
import { fewestSettings } from '#core/cutting/trimmer/settings.ts';
import { walkPlan } from '#tests/support/trimmer.ts';

/** In sixty-fourths of an inch. */
const inch = (amount: number): number => amount * 64;
const OFF = 2;

const pad: Piece = { id: 'pad', width: inch(12), height: inch(12), kind: 'sheet', copies: 20 };
const letter: Piece = { id: 'letter', width: inch(8.5), height: inch(11), kind: 'sheet', copies: 20 };
const scrap: Piece = { id: 'scrap', width: inch(7), height: inch(5.25), kind: 'offcut', copies: 2 };

const part = (id: string, width: number, height: number, copies: number) => ({
  id,
  ...{ width: inch(width), height: inch(height), copies },
});

const bases: Order = { keepAtLeast: inch(1), parts: [part('base', 5.5, 8.375, 8)] };
const batch: Order = {
  keepAtLeast: inch(1),
  longestCut: inch(12),
  parts: [
    part('base', 5.375, 8.25, 6),
    part('front', 5.1875, 3.9375, 6),
    part('mat', 5.3125, 4.0625, 6),
    part('liner', 6.3125, 5.4375, 4),
    part('tag', 1.875, 3.125, 7),
  ],
};

const plans: [string, Order, Piece[]][] = [
  ['eight card bases', bases, [pad]],
  ['a batch of five kinds', batch, [pad, letter, scrap]],
  ['a batch on Letter only', batch, [letter]],
];

const sizeOf = ({ width, height }: Rectangle): [number, number] => [width, height];

describe.each(plans)('%s', (_, order, pieces) => {
  const plan = planCuts(order, pieces, { work: 800 });

  it('passes the judge', () => {
    expect(checkPlan(order, pieces, plan)).toEqual([]);
    expect(plan.unplaced).toEqual([]);
  });

  it.each([0, OFF, -OFF])('comes out true from sheets that are off by %s/64 in', (off) => {
    const made = walkPlan(pieces, plan, off);
    expect(made.faults).toEqual([]);
    expect(made.parts).toHaveLength(plan.placed);
    for (const one of made.parts)
      expect([one.part, ...sizeOf(one.real)]).toEqual([one.part, ...sizeOf(one.nominal)]);
    const lost = made.leftovers.some(
      ({ real, nominal }) => real.width !== nominal.width || real.height !== nominal.height,
    );
    expect(lost).toBe(off !== 0);
  });

  it('sets only measures of what is wanted, and nothing under half an inch', () => {
    const sides = order.parts.flatMap(({ width, height }) => [width, height]);
    const sums = new Set(sides);
    for (let more = 0; more < 5; more += 1)
      for (const sum of [...sums]) for (const side of sides) if (sum + side <= inch(12)) sums.add(sum + side);
    for (const { set, keeps } of plan.steps) {
      expect(keeps).not.toBe('leftover');
      expect(sums).toContain(set);
      expect(set).toBeGreaterThanOrEqual(inch(0.5));
      if (keeps === 'part') expect(sides).toContain(set);
    }
  });

  it('names each piece in one pattern, its parts, and the steps it goes through', () => {
    expect(plan.patterns.flatMap((one) => one.pieces).toSorted()).toEqual(
      plan.used.map(({ piece }) => piece).toSorted(),
    );
    for (const [index, pattern] of plan.patterns.entries()) {
      for (const place of pattern.used) expect(plan.used[place]!.rectangles).toEqual(pattern.rectangles);
      const steps = plan.steps.filter(({ patterns }) => patterns.includes(index));
      expect(pattern.steps).toEqual(steps.map(({ number }) => number));
    }
    expect(plan.steps.map(({ number }) => number)).toEqual(plan.steps.map((_step, index) => index + 1));
  });

  it('comes back to no setting more than once', () => {
    const settings = settingsOfSteps(plan.steps).map(([step]) => step!.set);
    for (const set of settings) expect(settings.filter((one) => one === set).length).toBeLessThanOrEqual(2);
  });
});

describe('card bases from one pad', () => {
  it('are one pattern, cut alike ×4, with two settings', () => {
    // 12 × 12 in gives two of 5½ × 8⅜: four sheets.
    const plan = planCuts(bases, [pad], { work: 400 });
    expect(plan.patterns.map(({ pieces }) => pieces.length)).toEqual([4]);
    expect(settingsOfSteps(plan.steps)).toHaveLength(2);
    expect(plan.steps.map(({ set }) => set / 64).toSorted()).toEqual([5.5, 8.375]);
  });
});

describe('parts that fill the sheet from edge to edge', () => {
  const halves: Order = { keepAtLeast: inch(1), parts: [part('half', 6, 5, 4)] };
  const plan = planCuts(halves, [pad], { work: 200 });
  const sizes = (off: number) => walkPlan([pad], plan, off).parts.map(({ real }) => sizeOf(real));

  it('come out true where the last goes to the fence as well and something is over', () => {
    expect(sizes(OFF)).toEqual(Array.from({ length: 4 }, () => [inch(6), inch(5)]));
  });

  it('lack in the last what the sheet lacks, and nowhere else', () => {
    const short = sizes(-OFF).filter(([width]) => width !== inch(6));
    expect(short).toEqual([
      [inch(6) - OFF, inch(5)],
      [inch(6) - OFF, inch(5)],
    ]);
  });
});

describe('a spot on the sheet', () => {
  const spot: Order = {
    keepAtLeast: inch(1),
    parts: [
      { ...part('window', 4, 3, 1), pin: { x: inch(1.5), y: inch(2.25) } },
      part('tag', 1.875, 3.125, 4),
    ],
  };
  it.each([OFF, -OFF])('is measured from the left and the top of a sheet that is off by %s/64 in', (off) => {
    const plan = planCuts(spot, [pad], { work: 200 });
    expect(checkPlan(spot, [pad], plan)).toEqual([]);
    const { parts, faults } = walkPlan([pad], plan, off);
    expect(faults).toEqual([]);
    for (const one of parts) expect(sizeOf(one.real)).toEqual(sizeOf(one.nominal));
    const { real } = parts.find((one) => one.part === 'window')!;
    expect([real.x, real.y]).toEqual([inch(1.5), inch(2.25)]);
  });
});

describe('a border', () => {
  const hem: Order = {
    keepAtLeast: inch(1),
    parts: [{ ...part('front', 5, 3.5, 3), pin: { edge: 'bottom' } }, part('tag', 1.875, 3.125, 5)],
  };
  it('stays at its edge, which lies at the fence', () => {
    const plan = planCuts(hem, [pad], { work: 200 });
    expect(checkPlan(hem, [pad], plan)).toEqual([]);
    const { parts, faults } = walkPlan([pad], plan, OFF);
    expect(faults).toEqual([]);
    for (const { part: id, real, nominal } of parts) {
      expect(sizeOf(real)).toEqual(sizeOf(nominal));
      if (id === 'front') expect(real.y + real.height).toBe(pad.height + OFF);
    }
  });
});

describe('any order', () => {
  /** On sixteenths, so that a rest is never less than the paper is off. */
  const size = fc.integer({ min: 16, max: 7 * 16 }).map((sixteenths) => inch(sixteenths / 16));
  const parts = fc.array(fc.record({ width: size, height: size, copies: fc.integer({ min: 1, max: 4 }) }), {
    minLength: 1,
    maxLength: 5,
  });

  it('comes out true where a rest is left, and off by no more than the paper where none is', () => {
    fc.assert(
      fc.property(parts, fc.constantFrom(OFF, -OFF), (list, off) => {
        const order: Order = {
          keepAtLeast: inch(1),
          parts: list.map((one, index) => ({ id: `${index}`, ...one })),
        };
        const plan: CutPlan = planCuts(order, [pad, scrap], { work: 60 });
        expect(checkPlan(order, [pad, scrap], plan)).toEqual([]);
        const made = walkPlan([pad, scrap], plan, off);
        expect(made.faults).toEqual([]);
        expect(made.parts).toHaveLength(plan.placed);
        for (const { real, nominal, full } of made.parts) {
          for (const side of ['width', 'height'] as const)
            expect(real[side] - nominal[side]).toBe(full[side] ? off : 0);
        }
      }),
      { seed: 20261130, numRuns: 25 },
    );
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
