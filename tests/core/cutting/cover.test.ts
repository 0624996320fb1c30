/** The covering programme against a general-purpose solver (YALPS) and brute force, while columns and demands change. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solve } from 'yalps';
import { Cover } from '#core/cutting/cover.ts';
import { chance } from '#core/cutting/random.ts';

type Columns = readonly (readonly number[])[];

const cover = (demand: readonly number[], columns: Columns): Cover => {
  const made = new Cover(Float64Array.from(demand), () => false);
  addTo(made, columns);
  return made;
};

function addTo(made: Cover, columns: Columns): void {
  for (const held of columns) made.add(Int32Array.from(held));
  made.solve();
}

const singles = (rows: number): Columns => Array.from({ length: rows }, (_, row) => [row]);

/** The least sum of shares, from the outside. */
function reference(demand: readonly number[], columns: Columns): number {
  const variables = [...singles(demand.length), ...columns].map((held, column) => {
    const entries = new Map<string, number>([['cost', 1]]);
    for (const row of held) entries.set(`${row}`, (entries.get(`${row}`) ?? 0) + 1);
    return [`column ${column}`, entries] as const;
  });
  const constraints = demand.map((min, row) => [`${row}`, { min }] as const);
  const { status, result } = solve({ direction: 'minimize', objective: 'cost', constraints, variables });
  expect(status).toBe('optimal');
  return result;
}

/** The cost is the least there is, its shares cover the demand, and its prices prove it. */
function expectBest(made: Cover, demand: readonly number[], columns: Columns): void {
  expect(made.cost).toBeCloseTo(reference(demand, columns), 6);
  const all = [...singles(demand.length), ...columns];
  const covered = demand.map(() => 0);
  const shares = made.shares();
  for (const { column, times } of shares) for (const row of all[column]!) covered[row]! += times;
  demand.forEach((least, row) => {
    expect(covered[row]).toBeGreaterThan(least - 1e-6);
    expect(made.price[row]).toBeGreaterThan(-1e-6);
  });
  expect(shares.reduce((sum, { times }) => sum + times, 0)).toBeCloseTo(made.cost, 6);
  expect(demand.reduce((sum, least, row) => sum + least * made.price[row]!, 0)).toBeCloseTo(made.cost, 6);
  for (const held of all) expect(held.reduce((sum, row) => sum + made.price[row]!, 0)).toBeLessThan(1 + 1e-6);
}

const programmes = fc.integer({ min: 1, max: 9 }).chain((rows) => {
  const demand = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: rows, maxLength: rows });
  const held = fc.array(fc.nat({ max: rows - 1 }), { minLength: 1, maxLength: 6 });
  return fc.record({
    demand,
    other: demand,
    columns: fc.array(held, { minLength: 1, maxLength: 14 }),
    more: fc.array(held, { maxLength: 8 }),
    pick: fc.nat(),
  });
});

const runs = { seed: 5, numRuns: 150 };

describe('Cover', () => {
  it('is as cheap as can be at first, with more columns, and with other demands, up and down', () => {
    fc.assert(
      fc.property(programmes, ({ demand, other, columns, more }) => {
        const made = cover(demand, columns);
        expectBest(made, demand, columns);
        addTo(made, more);
        const all = [...columns, ...more];
        expectBest(made, demand, all);
        const up = demand.map((one, row) => one + other[row]!);
        const down = demand.map((one, row) => Math.min(one, other[row]!));
        for (const changed of [up, down, other, demand]) {
          made.demand(Float64Array.from(changed));
          expectBest(made, changed, all);
        }
      }),
      runs,
    );
  });

  it('does without a banned column until it is allowed again', () => {
    fc.assert(
      fc.property(programmes, ({ demand, other, columns, pick }) => {
        const made = cover(demand, columns);
        const mark = made.mark();
        const banned = pick % columns.length;
        const others = columns.toSpliced(banned, 1);
        made.ban(demand.length + banned);
        made.reset(mark);
        expect(made.cost).toBeCloseTo(reference(demand, others), 6);
        expect(made.shares().map((share) => share.column)).not.toContain(demand.length + banned);
        made.demand(Float64Array.from(other));
        expect(made.cost).toBeCloseTo(reference(other, others), 6);
        made.allow(demand.length + banned);
        made.reset(mark);
        expectBest(made, demand, columns);
      }),
      runs,
    );
  });

  it('comes back to a mark, with the columns added since', () => {
    fc.assert(
      fc.property(programmes, ({ demand, other, columns, more }) => {
        const made = cover(demand, columns);
        const [mark, cost] = [made.mark(), made.cost];
        made.leaveOut(0);
        made.demand(Float64Array.from(demand, (one, row) => Math.min(one, other[row]!)));
        made.reset(mark);
        expect(made.cost).toBeCloseTo(cost, 9);
        made.demand(Float64Array.from(other));
        expectBest(made, other, columns);
        addTo(made, more);
        made.reset(mark);
        expectBest(made, demand, [...columns, ...more]);
      }),
      runs,
    );
  });

  it('leaves no column out that a cover by whole columns within the gap needs', () => {
    const tiny = fc.record({
      demand: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 3, maxLength: 3 }),
      columns: fc.array(fc.array(fc.nat({ max: 2 }), { minLength: 1, maxLength: 4 }), { maxLength: 4 }),
      gap: fc.double({ min: 0, max: 1.5, noNaN: true }),
    });
    fc.assert(
      fc.property(tiny, ({ demand, columns, gap }) => {
        const made = cover(demand, columns);
        const needed = neededWithin(demand, [...singles(3), ...columns], made.cost + gap);
        made.leaveOut(gap + 1e-9);
        expect([...made.mark().live]).toEqual(expect.arrayContaining([...needed]));
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('leaves out what would cost more than the gap', () => {
    const made = cover([2, 2], [[0, 0, 1, 1]]);
    const live = [...made.mark().live];
    made.leaveOut(0.2);
    expect([live, [...made.mark().live]]).toEqual([[0, 1, 2], [2]]);
  });

  it('stays exact over hundreds of exchanges', () => {
    const random = chance(3);
    const draw = (): number[] => Array.from({ length: 2 + random.below(6) }, () => random.below(30));
    const demandOf = (): number[] => Array.from({ length: 30 }, () => random.below(40) / 4);
    const columns = Array.from({ length: 150 }, draw);
    const made = cover(demandOf(), columns);
    for (let turn = 0; turn < 6; turn += 1) {
      const [fresh, demand] = [Array.from({ length: 40 }, draw), demandOf()];
      columns.push(...fresh);
      addTo(made, fresh);
      made.demand(Float64Array.from(demand));
      expectBest(made, demand, columns);
    }
  });

  it('gives up soon after it is told to stop', () => {
    const random = chance(4);
    const columns = Array.from({ length: 200 }, () => Array.from({ length: 6 }, () => random.below(40)));
    let asked = 0;
    const made = new Cover(new Float64Array(40).fill(5), () => ++asked > 0);
    addTo(made, columns);
    expect(asked).toBe(1);
    expect(made.cost).toBeGreaterThan(reference(Array<number>(40).fill(5), columns) + 1);
  });
});

/** The columns that any of the covers uses that take at most so many whole columns. */
function neededWithin(demand: readonly number[], columns: Columns, most: number): Set<number> {
  const needed = new Set<number>();
  const take = (from: number, left: readonly number[], used: readonly number[]): void => {
    if (left.every((one) => one <= 0)) for (const column of used) needed.add(column);
    if (used.length + 1 > most + 1e-12) return;
    for (let column = from; column < columns.length; column += 1) {
      const rest = left.map((one, row) => one - columns[column]!.filter((held) => held === row).length);
      take(column, rest, [...used, column]);
    }
  };
  take(0, demand, []);
  return needed;
}
