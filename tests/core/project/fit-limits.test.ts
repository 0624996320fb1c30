/** Fit limits learned from simulated makers, from slips and nonsense, and against a general maximum-likelihood fit. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#core/envelope/fit.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import {
  type FeltFit,
  HALF_LIFE,
  LIMIT_NAMES,
  learnLimits,
  MOST_PER_OUTCOME,
} from '#core/project/fit-limits.ts';
import { inches, length, toInches } from '#shared/length.ts';
import { FITS, type Fit } from '#shared/outcome.ts';
import { chance, gradedRight, journalOf, limitsAt, MAKERS, type Maker } from '#tests/support/makers.ts';

const felt = (word: Fit, width: number, height = width): FeltFit => ({
  felt: word,
  clearance: { width: inches(width), height: inches(height) },
});

const times = (count: number, ...outcomes: FeltFit[]): FeltFit[] =>
  Array.from({ length: count }, () => outcomes).flat();

const learned = (outcomes: readonly FeltFit[]) => learnLimits(outcomes, DEFAULT_LIMITS).limits;

const maker = (name: string): Maker => MAKERS.find((one) => one.name === name)!;

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];
const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

describe('limits', () => {
  it('are the defaults without outcomes, and as long as outcomes agree with them', () => {
    expect(learnLimits([], DEFAULT_LIMITS)).toEqual({
      limits: DEFAULT_LIMITS,
      evidence: { snug: NOTHING, easy: NOTHING, loose: NOTHING },
    });
    const agreeing = [felt('tight', 0.02), felt('easy', 0.15), felt('loose', 0.6)];
    expect(learned(times(15, ...agreeing))).toEqual(DEFAULT_LIMITS);
  });

  it('stay where they are when only one grade is ever felt, where the defaults put it', () => {
    expect(learned(times(60, felt('easy', 0.2, 0.23)))).toEqual(DEFAULT_LIMITS);
    expect(learned(times(60, felt("won't go", -0.1)))).toEqual(DEFAULT_LIMITS);
  });

  it('move between what was felt tight and what was felt easy', () => {
    const { snug, easy } = learned(times(10, felt('tight', 0.12), felt('snug', 0.16), felt('easy', 0.22)));
    expect(toInches(snug)).toBeGreaterThan(0.12);
    expect(toInches(snug)).toBeLessThan(0.16);
    expect(toInches(easy)).toBeGreaterThan(0.16);
    expect(toInches(easy)).toBeLessThan(0.22);
  });

  it('are not moved by one word alone that is far off, however often good ones follow', () => {
    const [slip, good] = [felt('tight', 0.24), felt('easy', 0.2)];
    expect(learned([slip])).toEqual(DEFAULT_LIMITS);
    expect(learned([slip, ...times(30, good)])).toEqual(DEFAULT_LIMITS);
    expect(learned([...times(10, good), felt('easy', 2.2), ...times(10, good)])).toEqual(DEFAULT_LIMITS);
  });

  it('are what the solver takes', () => {
    const limits = learned(journalOf(maker('likes room'), 40, 1));
    const card = { width: inches(5.5), height: inches(4.25), bulk: inches(1 / 32) };
    const notcher = {
      ...{ inset: inches(7 / 16), zeroOffset: inches(0) },
      ...{ graduation: inches(1 / 8), largestSheet: inches(12) },
    };
    expect(solveEnvelope({ card, notcher, limits })[0]).toMatchObject({ limits, fit: 'easy' });
  });

  it('refuse what is no outcome', () => {
    expect(() => learned([{ ...felt('easy', 0.2), felt: 'roomy' as Fit }])).toThrow('invalid fit: roomy');
    expect(() =>
      learned([{ ...felt('easy', 0.2), clearance: { width: NaN, height: NaN } as never }]),
    ).toThrow('invalid clearance: NaN');
    expect(() => learnLimits([], limitsAt(0.2, 0.1, 0.3))).toThrow('invalid limit of easy');
  });
});

const NOTHING = { near: 0, agree: 0 };

describe('the evidence', () => {
  it('counts for each limit the outcomes near it that tell of it, and those that agree', () => {
    const { evidence } = learnLimits(
      [
        felt('tight', 0.03),
        felt('snug', 0.08),
        felt('easy', 0.2, 0.3),
        felt('loose', 0.2, 0.5),
        felt('tight', 0.1),
      ],
      DEFAULT_LIMITS,
    );
    expect(evidence).toEqual({
      snug: { near: 3, agree: 2 },
      easy: { near: 3, agree: 2 },
      loose: { near: 2, agree: 2 },
    });
  });
});

const anyFelt = fc.record({
  felt: fc.constantFrom(...FITS),
  clearance: fc.record({
    width: fc.integer({ min: -inches(0.5), max: inches(5) }).map(length),
    height: fc.integer({ min: -inches(0.5), max: inches(5) }).map(length),
  }),
});
const nearby = fc.record({
  felt: fc.constantFrom(...FITS),
  clearance: fc.record({
    width: fc.integer({ min: 0, max: inches(0.25) }).map(length),
    height: fc.integer({ min: 0, max: inches(0.5) }).map(length),
  }),
});
const anyJournal = fc.array(fc.oneof(anyFelt, nearby), { maxLength: 60 });
const anyLimits = fc
  .tuple(fc.nat(inches(0.25)), fc.nat(inches(0.25)), fc.nat(inches(0.5)))
  .map(([snug, more, most]) => ({
    snug: length(snug),
    easy: length(snug + more),
    loose: length(snug + more + most),
  }));

describe('properties', () => {
  it('no outcome moves a limit by more than 1/64 in, whatever came before', () => {
    fc.assert(
      fc.property(anyJournal, fc.oneof(anyFelt, nearby), anyLimits, (before, one, defaults) => {
        const [old, now] = [before, [...before, one]].map((all) => learnLimits(all, defaults).limits);
        for (const name of LIMIT_NAMES)
          expect(Math.abs(now![name] - old![name])).toBeLessThanOrEqual(MOST_PER_OUTCOME);
      }),
      { seed: 12, numRuns: 150 },
    );
  });

  it('limits are whole lengths in order, not below 0, and the same each time', () => {
    fc.assert(
      fc.property(anyJournal, anyLimits, (journal, defaults) => {
        const { limits } = learnLimits(journal, defaults);
        expect(Object.values(limits).every(Number.isSafeInteger)).toBe(true);
        expect(limits.snug).toBeGreaterThanOrEqual(0);
        expect(limits.easy).toBeGreaterThanOrEqual(limits.snug);
        expect(limits.loose).toBeGreaterThanOrEqual(limits.easy);
        expect(learnLimits(journal, defaults).limits).toEqual(limits);
      }),
      { seed: 12, numRuns: 60 },
    );
  });
});

describe('against a general maximum-likelihood fit', () => {
  /**
   * The ordered logistic model itself, its three thresholds fitted at once by Newton's method with differences for
   * derivatives, each step solved by ml-matrix. It knows no default, no slips and no fading, and sees the last 60.
   */
  it('comes to the same limits, but for the pull of the defaults', () => {
    const truth = [0.13, 0.2, 0.45];
    const off = SEEDS.map((seed) => {
      const journal = logisticJournal(truth, 160, seed);
      const { snug, easy, loose } = learned(journal);
      const fitted = maximumLikelihood(journal.slice(-3 * HALF_LIFE), [0.1, 0.2, 0.4]);
      return [snug, easy, loose].map((one, index) => toInches(one) - fitted[index]!);
    });
    const [snug, easy, loose] = truth.map((_, index) => mean(off.map((one) => Math.abs(one[index]!))));
    expect(snug).toBeLessThan(0.01);
    expect(easy).toBeLessThan(0.01);
    expect(loose).toBeLessThan(0.02);
  });
});

const BLUR = 0.015;
const GRADES: readonly Fit[] = ['tight', 'snug', 'easy', 'loose'];

/** Clearances within 1/20 in of a limit, felt with logistic noise. */
function logisticJournal(truth: readonly number[], count: number, seed: number): FeltFit[] {
  const random = chance(seed);
  return Array.from({ length: count }, () => {
    const near = truth[Math.floor(random() * truth.length)]!;
    const clearance = Math.round((near + (random() - 0.5) / 10) * 1000) / 1000;
    const share = random();
    const sensed = clearance + BLUR * Math.log(share / (1 - share));
    return felt(GRADES[truth.filter((limit) => sensed >= limit).length]!, clearance);
  });
}

function logLikelihood(journal: readonly FeltFit[], limits: readonly number[]): number {
  const under = (limit: number, at: number) => 1 / (1 + Math.exp((at - limit) / BLUR));
  return journal.reduce((sum, { clearance, felt: word }) => {
    const at = toInches(clearance.width);
    const edges = [0, ...limits.map((limit) => under(limit, at)), 1];
    const grade = GRADES.indexOf(word);
    return sum + Math.log(Math.max(1e-12, edges[grade + 1]! - edges[grade]!));
  }, 0);
}

function maximumLikelihood(journal: readonly FeltFit[], from: readonly number[]): number[] {
  const h = 1e-4;
  const at = (limits: readonly number[], ...moves: readonly (readonly [number, number])[]) =>
    logLikelihood(
      journal,
      limits.map((one, index) => moves.reduce((sum, [of, by]) => (of === index ? sum + by : sum), one)),
    );
  let limits = [...from];
  for (let round = 0; round < 30; round += 1) {
    const slope = limits.map((_, one) => (at(limits, [one, h]) - at(limits, [one, -h])) / (2 * h));
    const bend = limits.map((_, one) =>
      limits.map(
        (_, other) =>
          (at(limits, [one, h], [other, h]) -
            at(limits, [one, h], [other, -h]) -
            at(limits, [one, -h], [other, h]) +
            at(limits, [one, -h], [other, -h])) /
          (4 * h * h),
      ),
    );
    const step = solve(new Matrix(bend), Matrix.columnVector(slope)).to1DArray();
    const longest = Math.max(...step.map(Math.abs));
    limits = limits.map((one, index) => one - step[index]! * Math.min(1, 0.01 / longest));
  }
  return limits;
}

/** Points of 100 envelopes graded as she feels them: with what was learned, less with the defaults. */
const gains = (who: Maker, count: number): number[] =>
  SEEDS.map((seed) => {
    const limits = learned(journalOf(who, count, seed));
    const nth = count - 1;
    return gradedRight(limits, who, nth, seed) - gradedRight(DEFAULT_LIMITS, who, nth, seed);
  });

describe('simulated makers, eight seeds each', () => {
  it.each(['likes room', 'likes it close', 'likes room, with a loud hand', 'likes room, and slips'])(
    'one who %s is graded better the more she writes down',
    (name) => {
      const [few, some, many] = [8, 25, 80].map((count) => mean(gains(maker(name), count)));
      expect(few).toBeGreaterThanOrEqual(0);
      expect(some!).toBeGreaterThan(few! + 2);
      expect(many!).toBeGreaterThan(some!);
      expect(many!).toBeGreaterThan(10);
    },
  );

  it('one whose taste changes is known again after twice the half-life', () => {
    const who = maker('changes her mind at the 40th');
    expect(mean(gains(who, 40 + 2 * HALF_LIFE))).toBeGreaterThan(5);
    const back = maker('comes back to the defaults at the 40th');
    expect(Math.min(...gains(back, 40 + 2 * HALF_LIFE))).toBeGreaterThan(-5);
  });

  it.each(MAKERS.filter(({ name }) => !name.includes('the 40th')))(
    'one who $name is never graded worse than by the defaults by more than 8 in 100, nor 1 on average',
    (who) => {
      for (const count of [1, 3, 8, 15, 30, 60]) {
        const all = gains(who, count);
        expect(Math.min(...all)).toBeGreaterThanOrEqual(-8);
        expect(mean(all)).toBeGreaterThanOrEqual(-1);
      }
    },
  );
});
