/** The covering programme against a general-purpose solver (YALPS) and brute force, while columns and demands change. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solve } from 'yalps';
import { Cover } from '#core/cutting/fewer/cover.ts';
import { chance } from '#core/cutting/search/random.ts';

type Columns = readonly (readonly number[])[];

const codesFor = (rows: number): Float64Array => {
  const random = chance(1);
  return Float64Array.from({ length: rows }, () => Math.floor(random.next() * 2 ** 32));
};

const cover = (demand: readonly number[], columns: Columns): Cover => {
  const made = new Cover(Float64Array.from(demand), codesFor(demand.length), () => false);
  addTo(made, columns);
  return made;
};

function addTo(made: Cover, columns: Columns): void {
  for (const held of columns) made.add(Int32Array.from(held), made.next);
  made.solve();
}

const lowered = (made: Cover, demand: readonly number[], gap = Infinity): Cover =>
  made.lowered(Float64Array.from(demand), gap);

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
  for (const { label, times } of shares) for (const row of all[label]!) covered[row]! += times;
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
  it('is as cheap as can be at first, with more columns, and for less and less demand', () => {
    fc.assert(
      fc.property(programmes, ({ demand, other, columns, more }) => {
        let made = cover(demand, columns);
        expectBest(made, demand, columns);
        addTo(made, more);
        const all = [...columns, ...more];
        expectBest(made, demand, all);
        let left = demand;
        for (const turn of [0, 1, 2]) {
          left = left.map((one, row) => Math.max(0, one - ((other[row]! + turn) % 4)));
          made = lowered(made, left);
          expectBest(made, left, all);
        }
        addTo(made, columns);
        expectBest(made, left, [...all, ...columns]);
      }),
      runs,
    );
  });

  it('hands its answer on and keeps it', () => {
    fc.assert(
      fc.property(programmes, ({ demand, other, columns, more }) => {
        const made = cover(demand, columns);
        const before = [made.cost, made.shares(), [...made.price]];
        lowered(
          made,
          demand.map((one, row) => Math.min(one, other[row]!)),
        );
        expect([made.cost, made.shares(), [...made.price]]).toEqual(before);
        addTo(made, more);
        expectBest(made, demand, [...columns, ...more]);
      }),
      runs,
    );
  });

  it('does without a banned column, and so does what is made from it', () => {
    fc.assert(
      fc.property(programmes, ({ demand, other, columns, pick }) => {
        const kinds = distinct(demand.length, columns);
        fc.pre(kinds.length > 0);
        const wanted = demand.map((one) => Math.max(1, one));
        const made = cover(wanted, kinds);
        const banned = pick % kinds.length;
        const others = kinds.toSpliced(banned, 1);
        made.ban(demand.length + banned);
        made.solve();
        expect(made.cost).toBeCloseTo(reference(wanted, others), 6);
        expect(made.shares().map((share) => share.label)).not.toContain(demand.length + banned);
        const less = wanted.map((one, row) => Math.max(1, Math.min(one, other[row]!)));
        expect(lowered(made, less).cost).toBeCloseTo(reference(less, others), 6);
      }),
      runs,
    );
  });

  it('leaves no column out that a cover by whole columns within the gap needs', () => {
    const tiny = fc.record({
      demand: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 3, maxLength: 3 }),
      columns: fc.array(fc.array(fc.nat({ max: 2 }), { minLength: 1, maxLength: 4 }), { maxLength: 4 }),
      gap: fc.double({ min: 0, max: 1.5, noNaN: true }),
    });
    fc.assert(
      fc.property(tiny, ({ demand, columns, gap }) => {
        const kinds = distinct(3, columns);
        const made = cover(demand, kinds);
        const needed = neededWithin(demand, [...singles(3), ...kinds], made.cost + gap);
        expect(lowered(made, demand, gap + 1e-9).labels).toEqual(expect.arrayContaining([...needed]));
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('leaves out what would cost more than the gap', () => {
    const made = cover(
      [2, 2],
      [
        [0, 0, 1, 1],
        [0, 0, 1],
      ],
    );
    expect(lowered(made, [2, 2], 0.6).labels).toEqual([0, 1, 2, 3]);
    expect(lowered(made, [2, 2], 0.2).labels).toEqual([0, 1, 2]);
  });

  it('stays exact over hundreds of exchanges', () => {
    const random = chance(3);
    const draw = (): number[] => Array.from({ length: 2 + random.below(6) }, () => random.below(30));
    let demand = Array.from({ length: 30 }, () => 10 + random.below(40) / 4);
    const columns = Array.from({ length: 150 }, draw);
    let made = cover(demand, columns);
    for (let turn = 0; turn < 8; turn += 1) {
      const fresh = Array.from({ length: 40 }, draw);
      columns.push(...fresh);
      addTo(made, fresh);
      expectBest(made, demand, columns);
      demand = demand.map((one) => Math.max(0, one - random.below(12) / 4));
      made = lowered(made, demand);
      expectBest(made, demand, columns);
    }
  });

  it('has nothing to do where nothing is demanded', () => {
    const made = lowered(cover([2, 1], [[0, 1]]), [0, 0]);
    expect([made.cost, made.shares()]).toEqual([0, []]);
  });

  it('gives up soon after it is told to stop', () => {
    const random = chance(4);
    const columns = Array.from({ length: 200 }, () => Array.from({ length: 6 }, () => random.below(40)));
    let asked = 0;
    const made = new Cover(new Float64Array(40).fill(5), codesFor(40), () => ++asked > 0);
    addTo(made, columns);
    expect(asked).toBe(1);
    expect(made.cost).toBeGreaterThan(reference(Array<number>(40).fill(5), columns) + 1);
  });
});

/** Each kind of column once, without those that hold one of a row. */
function distinct(rows: number, columns: Columns): Columns {
  const seen = new Set(singles(rows).map(String));
  return columns.filter((held) => {
    const kind = String(held.toSorted((one, other) => one - other));
    return !seen.has(kind) && seen.add(kind);
  });
}

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
