/** Plans are sound, best where that is known, the same each time, and keep to what the maker asked for. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Order, Part, Piece, PlanOptions } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { inches, millimetres } from '#shared/length.ts';
import { bruteForce } from '#tests/support/brute.ts';

/** Plans, and lets no plan by that the judge would refuse. */
function soundPlan(order: Order, pieces: readonly Piece[], options: PlanOptions = { work: 400 }): CutPlan {
  const plan = planCuts(order, pieces, options);
  expect(checkPlan(order, pieces, plan)).toEqual([]);
  return plan;
}

const pad = (copies: number, more: Partial<Piece> = {}): Piece => ({
  id: 'pad',
  width: 12,
  height: 12,
  kind: 'sheet',
  copies,
  ...more,
});
const part = (id: string, width: number, height: number, copies: number, more: Partial<Part> = {}): Part => ({
  id,
  width,
  height,
  copies,
  ...more,
});

describe('planCuts', () => {
  it('spends offcuts before it opens a sheet', () => {
    const offcut: Piece = { id: 'strip', width: 12, height: 4, kind: 'offcut' };
    const plan = soundPlan({ parts: [part('band', 6, 4, 2)] }, [pad(5), offcut]);
    expect(plan).toMatchObject({
      placed: 2,
      newSheets: 0,
      newSheetArea: 0,
      offcutAreaUsed: 48,
      proved: true,
    });
  });

  it('takes the small offcut and leaves one large leftover rather than two thin ones', () => {
    const offcuts: Piece[] = [
      { id: 'large', width: 10, height: 10, kind: 'offcut' },
      { id: 'small', width: 5, height: 6, kind: 'offcut' },
    ];
    expect(soundPlan({ parts: [part('tag', 4, 6, 1)] }, offcuts).used.map((used) => used.piece)).toEqual([
      'small',
    ]);
    const [used] = soundPlan({ parts: [part('card', 4, 6, 1)] }, offcuts.slice(0, 1)).used;
    expect(used!.leftovers.some(({ width, height }) => width * height >= 60)).toBe(true);
  });

  it('names what it cannot place and what would help', () => {
    const order = {
      parts: [
        part('poster', 20, 9, 1),
        part('lining', 11, 11, 3),
        part('stripe', 13, 2, 1, { upright: true }),
      ],
    };
    const plan = soundPlan(order, [
      pad(2),
      { id: 'print', width: 2, height: 13, kind: 'sheet', upright: true },
    ]);
    expect(plan.bounds.unplaced).toBe(3);
    expect(plan.unplaced).toEqual([
      { part: 'poster', copies: 1, remedies: [{ kind: 'smaller', width: 12, height: 9 }] },
      { part: 'lining', copies: 1, remedies: [{ kind: 'another', piece: 'pad', copies: 1, takes: 1 }] },
      {
        part: 'stripe',
        copies: 1,
        remedies: [
          { kind: 'turned', piece: 'print' },
          { kind: 'smaller', width: 12, height: 2 },
        ],
      },
    ]);
    expect(
      soundPlan({ parts: [part('a', 1, 1, 1, { designs: ['moss'] })] }, [pad(1)]).unplaced[0]!.remedies,
    ).toEqual([{ kind: 'paper' }]);
  });

  it('keeps print upright, and turns any part on paper without direction', () => {
    const order = { parts: [part('front', 4, 9, 3, { upright: true })] };
    expect(soundPlan(order, [pad(1, { width: 9, upright: true })]).placed).toBe(2);
    expect(soundPlan(order, [pad(1, { width: 9 })]).placed).toBe(3);
  });

  it('cuts only from designs that will do', () => {
    const pieces = [pad(3, { id: 'rose', design: 'rose' }), pad(3, { id: 'moss', design: 'moss' })];
    const plan = soundPlan({ parts: [part('front', 6, 6, 5, { designs: ['moss'] })] }, pieces);
    expect(new Set(plan.used.map((used) => used.piece))).toEqual(new Set(['moss']));
  });

  it('leaves alone what is to be kept', () => {
    const heirloom: Piece = { id: 'heirloom', width: 6, height: 6, kind: 'offcut', keep: true };
    expect(soundPlan({ parts: [part('tag', 6, 6, 1)] }, [heirloom, pad(1)]).used[0]!.piece).toBe('pad');
  });

  it('matches each set, and where asked all of them, in design', () => {
    const pieces = [pad(2, { id: 'rose', design: 'rose' }), pad(2, { id: 'moss', design: 'moss' })];
    const sets = [part('front', 5, 7, 4, { match: 'set' }), part('envelope', 7, 7, 4, { match: 'set' })];
    expect(soundPlan({ parts: sets }, pieces, { work: 2000 }).placed).toBe(8);
    const one = sets.map((each) => ({ ...each, oneDesign: true }));
    expect(soundPlan({ parts: one }, pieces, { work: 2000 })).toMatchObject({
      placed: 6,
      bounds: { unplaced: 2 },
      proved: true,
    });
  });

  it('opens two small sheets rather than a large and a small one', () => {
    const pieces = [
      pad(2, { id: 'small', width: 7, height: 8 }),
      pad(1, { id: 'large', width: 7, height: 10 }),
    ];
    const parts = [part('card', 5, 6, 2), part('mat', 5, 3, 1), part('tag', 2, 4, 2, { upright: true })];
    expect(soundPlan({ parts }, pieces, { work: 400 })).toMatchObject({ newSheetArea: 112, proved: true });
  });

  it('leaves room beside a part for what matches it', () => {
    const pieces = [
      pad(2, { id: 'moss', width: 6, height: 10, design: 'moss', upright: true }),
      pad(1, { id: 'rose', width: 6, height: 9, design: 'rose', upright: true }),
    ];
    const parts = [
      part('tag', 4, 2, 2, { match: 'set' }),
      part('card', 6, 5, 2, { match: 'set', upright: true }),
    ];
    expect(soundPlan({ parts }, pieces, { work: 400 })).toMatchObject({ newSheetArea: 114, proved: true });
  });

  it('brings in several pieces at once where a set is better cut from another design', () => {
    const pieces: Piece[] = [
      { id: 'rose end', width: 9, height: 5, kind: 'offcut', copies: 2, design: 'rose' },
      pad(1, { id: 'moss', width: 10, height: 9, design: 'moss', upright: true }),
      pad(2, { id: 'rose', width: 7, height: 4, design: 'rose' }),
    ];
    const parts = [
      part('front', 5, 4, 2, { match: 'set', upright: true }),
      part('band', 3, 8, 2, { match: 'set', oneDesign: true }),
      part('tag', 3, 7, 2, { upright: true }),
    ];
    for (let seed = 1; seed <= 8; seed += 1)
      expect(soundPlan({ parts }, pieces, { work: 8000, seed })).toMatchObject({ placed: 6 });
  });

  it('cuts what must be of one design from paper without a name, where that has more room', () => {
    const pieces: Piece[] = [
      pad(1, { id: 'dots', width: 10, height: 10, design: 'dots' }),
      pad(1, { id: 'plain', width: 20, height: 20 }),
    ];
    const set = { match: 'set', oneDesign: true };
    const parts = [part('front', 10, 10, 2, set), part('back', 10, 10, 2, set)];
    expect(soundPlan({ parts }, pieces)).toMatchObject({ placed: 4, bounds: { unplaced: 0 }, proved: true });
  });

  it('looks again at a design that did worse at first but might open fewer sheets', () => {
    const pieces: Piece[] = [
      pad(1, { id: 'rose', width: 7, height: 5, design: 'rose', upright: true }),
      { id: 'rose left', width: 7, height: 9, kind: 'offcut', design: 'rose' },
      pad(1, { id: 'moss', width: 10, height: 9, design: 'moss', upright: true }),
    ];
    const set = { match: 'set', oneDesign: true };
    const parts = [
      part('tag', 2, 4, 2, set),
      part('mat', 3, 4, 1, { ...set, upright: true }),
      part('band', 8, 2, 2, set),
    ];
    for (let seed = 1; seed <= 5; seed += 1)
      expect(soundPlan({ parts }, pieces, { work: 1500, seed }).newSheetArea).toBe(35);
  });

  it('keeps a border on its edge and a panel in its place, and fills round them', () => {
    const parts = [
      part('border', 5, 2, 4, { pin: { edge: 'bottom' } }),
      part('panel', 3, 3, 2, { pin: { x: 4, y: 4 } }),
      part('side', 2, 4, 2, { pin: { edge: 'left' } }),
      part('any', 3, 2, 20),
    ];
    const plan = soundPlan({ parts }, [pad(5), { id: 'off', width: 6, height: 6, kind: 'offcut' }], {
      work: 2000,
    });
    expect(plan).toMatchObject({ placed: 28, newSheets: 2, proved: true });
  });

  it('finds a border only on offcuts that still have that edge', () => {
    const border = { parts: [part('border', 5, 2, 1, { pin: { edge: 'bottom' } })] };
    const offcut: Piece = { id: 'off', width: 6, height: 6, kind: 'offcut' };
    expect(soundPlan(border, [offcut]).placed).toBe(0);
    expect(soundPlan(border, [{ ...offcut, edges: ['bottom'] }]).placed).toBe(1);
  });

  it('makes no cut longer than the trimmer', () => {
    const roll: Piece = { id: 'roll', width: 10, height: 30, kind: 'sheet', copies: 2 };
    const order = { parts: [part('a', 5, 9, 6), part('b', 10, 12, 1)], longestCut: 12 };
    expect(soundPlan(order, [roll]).placed).toBe(7);
    expect(soundPlan(order, [{ ...roll, width: 13 }]).placed).toBe(0);
  });

  it.each([1, 2, 30])('places a part %s wide on a sheet a million wide', (side) => {
    const sheet = pad(5, { width: 1_000_000, height: 1_000_000 });
    expect(soundPlan({ parts: [part('dot', side, side, 5)] }, [sheet])).toMatchObject({ newSheets: 1 });
  });

  it('works the same in any unit, and exactly where inches and millimetres meet', () => {
    const sheets: Piece[] = [
      { id: 'letter', width: inches(8.5), height: inches(11), kind: 'sheet', copies: 4 },
      { id: 'a4', width: millimetres(210), height: millimetres(297), kind: 'sheet', copies: 4 },
    ];
    const parts = [
      part('quarter', inches(4.25), inches(5.5), 8),
      part('a6', millimetres(105), millimetres(148.5), 8),
    ];
    const plan = soundPlan({ parts }, sheets, { work: 1500 });
    expect(plan).toMatchObject({ placed: 16, newSheets: 4 });
    const whole = 2 * inches(8.5) * inches(11) + 2 * millimetres(210) * millimetres(297);
    expect(plan.newSheetArea).toBe(whole);
    expect(plan.worthLost).toBeGreaterThan(0);
  });

  it('places two small parts rather than one of more area', () => {
    const parts = [part('large', 6, 5, 2, { upright: true }), part('small', 2, 5, 2, { upright: true })];
    const sheets = pad(2, { width: 6, height: 9, upright: true });
    // One large part on a sheet leaves 6 × 4: the other sheet holds a second large one, or both small ones.
    expect(soundPlan({ parts }, [sheets]).placed).toBe(3);
  });

  it('ends without a clock, and then gives the same plan for the same seed and time', () => {
    const parts = [part('a', 7, 5, 9), part('b', 4, 3, 14), part('c', 6, 2, 11)];
    const pieces = [pad(12), { ...pad(1), id: 'strip', kind: 'offcut' as const, height: 5 }];
    const [one, other] = [1, 1].map((seed) => soundPlan({ parts }, pieces, { seed, timeMs: 60 }));
    expect(one).toEqual(other);
  });

  it('gives the same plan for the same seed and work', () => {
    const order = { parts: [part('a', 5, 7, 6), part('b', 4, 9, 5), part('c', 3, 3, 9)] };
    const runs = [1, 1].map((seed) => planCuts(order, [pad(9)], { seed, work: 500 }));
    expect(runs[0]).toEqual(runs[1]);
  });

  it('keeps its time limit and stops when told', () => {
    const parts = Array.from({ length: 40 }, (_, index) => part(`${index}`, 31 + index, 97 - index, 25));
    let time = 0;
    const plan = soundPlan({ parts }, [pad(999, { width: 192, height: 192 })], {
      timeMs: 50,
      now: () => (time += 1),
    });
    expect(plan.timeMs).toBeLessThan(80);
    let asked = 0;
    planCuts({ parts }, [pad(999, { width: 192, height: 192 })], { shouldStop: () => ++asked > 3 });
    expect(asked).toBeLessThan(20);
  });

  it('reports better and better plans', () => {
    const seen: number[] = [];
    const order = { parts: [part('a', 5, 7, 9), part('b', 4, 9, 9), part('c', 3, 3, 9)] };
    soundPlan(order, [pad(20)], { work: 500, onProgress: (progress) => seen.push(progress.newSheetArea) });
    expect(seen.length).toBeGreaterThan(0);
    expect(seen).toEqual(seen.toSorted((one, other) => other - one));
  });

  it('tells of no plan that is worse than the last, also where it begins anew for each design', () => {
    const sides = [3, 4, 6, 7, 9];
    const parts = sides.map((side, index) =>
      part(`${index}`, side, 12 - side, 4, { match: 'set', oneDesign: true }),
    );
    const pieces = ['rose', 'moss', 'sky'].map((design, index) =>
      pad(2 + index, { ...{ id: design, design }, width: 14 + index, height: 16 }),
    );
    const unplaced: number[] = [];
    const plan = soundPlan({ parts }, pieces, {
      work: 600,
      onProgress: (progress) => unplaced.push(progress.unplaced),
    });
    expect(unplaced).toEqual(unplaced.toSorted((one, other) => other - one));
    expect(unplaced.at(-1)).toBe(plan.unplaced.reduce((sum, { copies }) => sum + copies, 0));
  });

  it('keeps a bound that it had, where there is no time for a better one', () => {
    const parts = Array.from({ length: 12 }, (_, index) =>
      part(`${index}`, 7 + (index % 3), 7 + (index % 2), 1),
    );
    let asked = 0;
    let time = 0;
    let told: number | undefined;
    const plan = soundPlan({ parts }, [pad(30, { width: 12, height: 12 })], {
      now: () => {
        asked += 1;
        if (asked > 2) time += time === 0 ? 60 : 0.05;
        return time;
      },
      onProgress: ({ bounds }) => {
        told ??= bounds.newSheetArea;
        time = Math.max(time, 300);
      },
    });
    expect(told).toBeGreaterThan(0);
    expect(plan.bounds.newSheetArea).toBeGreaterThanOrEqual(told!);
  });

  it('answers without pieces', () => {
    expect(soundPlan({ parts: [part('a', 1, 1, 2)] }, [])).toMatchObject({
      placed: 0,
      bounds: { unplaced: 2 },
      proved: true,
    });
  });
});

describe('laws', () => {
  const sides = fc.integer({ min: 2, max: 9 });
  const parts = fc.array(
    fc.record({ width: sides, height: sides, copies: fc.integer({ min: 1, max: 2 }), upright: fc.boolean() }),
    { minLength: 1, maxLength: 3 },
  );
  const pieces = fc.array(
    fc.record({
      width: fc.integer({ min: 4, max: 10 }),
      height: fc.integer({ min: 4, max: 10 }),
      kind: fc.constantFrom('sheet', 'offcut'),
      copies: fc.integer({ min: 1, max: 2 }),
      upright: fc.boolean(),
    }),
    { minLength: 1, maxLength: 2 },
  );
  const named = <T extends object>(list: readonly T[], name: string): (T & { id: string })[] =>
    list.map((one, index) => ({ ...one, id: `${name}${index}` }));

  it('finds what trying everything finds', () => {
    fc.assert(
      fc.property(parts, pieces, (someParts, somePieces) => {
        const order = { parts: named(someParts, 'part') };
        const stock = named(somePieces, 'piece') as Piece[];
        const best = bruteForce(order.parts, stock);
        const plan = soundPlan(order, stock, { work: 600 });
        const area = plan.used
          .flatMap((used) => used.rectangles)
          .reduce((sum, one) => sum + one.width * one.height, 0);
        expect({ placed: plan.placed, area, newSheetArea: plan.newSheetArea }).toEqual(best);
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });

  it('plans a turned or enlarged order as well', () => {
    fc.assert(
      fc.property(parts, pieces, (someParts, somePieces) => {
        const order = { parts: named(someParts, 'part') };
        const stock = named(somePieces, 'piece') as Piece[];
        const flip = <T extends { width: number; height: number }>(one: T, scale = 1): T => ({
          ...one,
          width: one.height * scale,
          height: one.width * scale,
        });
        const plain = soundPlan(order, stock, { work: 600 });
        const turned = soundPlan(
          { parts: order.parts.map((one) => flip(one)) },
          stock.map((one) => flip(one)),
          { work: 600 },
        );
        const large = soundPlan(
          { parts: order.parts.map((one) => flip(one, 1016)) },
          stock.map((one) => flip(one, 1016)),
          { work: 600 },
        );
        for (const other of [turned, large]) expect(other.placed).toBe(plain.placed);
        expect(turned.newSheetArea).toBe(plain.newSheetArea);
        expect(large.newSheetArea).toBe(plain.newSheetArea * 1016 ** 2);
      }),
      { seed: 20261125, numRuns: 40 },
    );
  });
});
