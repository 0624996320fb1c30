/** The maker's own trims and what they do to seam and closing; and the warnings a recipe carries, in words. */
import { describe, expect, it } from 'vitest';
import { checkFinishes, finishFlaps } from '#core/envelope/finish.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Finishes, Flap, FlapLetter, Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope, tryMeasures } from '#core/envelope/recipes.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import { distance } from '#core/geometry/point.ts';
import type { Finish } from '#shared/fold.ts';
import { add, inches, length, subtract, toInches, type Units } from '#shared/length.ts';
import { thin, tool } from './cast.ts';

const SIXTEENTHS: Units = { unit: 'in', step: 16 };
const recipe = tryMeasures({
  card: thin(5.875, 3),
  notcher: tool(1 / 8),
  square: inches(7.5),
  start: inches(2.75),
});
const flapOf = ({ flaps }: Recipe, letter: FlapLetter): Flap => flaps.find((flap) => flap.letter === letter)!;
const kinds = ({ warnings }: Recipe): string[] => warnings.map(({ kind }) => kind);
const straight = (depth: number): Finish => ({ shape: 'straight', depth: length(depth) });

describe('cutting flap C back', () => {
  // Plane geometry: no seam is lost down to h/2 + m√2 from its score.
  const floor = flapOf(recipe, 'C').keepsSeamTo!;

  it('loses no seam down to h/2 + m√2, and some below', () => {
    expect(toInches(floor)).toBeCloseTo(toInches(recipe.pocket.height) / 2 + (7 / 16) * Math.SQRT2, 4);
    const cut = (depth: number) => finishFlaps(recipe, { C: straight(depth) });
    expect(cut(floor).seam.area).toBeCloseTo(recipe.seam.areaUncut, 6);
    expect(kinds(cut(floor))).not.toContain('seam cut away');
    const short = cut(floor - inches(1 / 4));
    expect(short.seam.area).toBeLessThan(recipe.seam.areaUncut - 0.01);
    expect(short.warnings).toContainEqual({
      kind: 'seam cut away',
      message: 'Part of the seam is cut away with flap C.',
      amount: floor,
    });
  });

  it('far enough leaves no room for glue, and the back open', () => {
    const stub = finishFlaps(recipe, { C: straight(inches(1 / 4)), D: straight(inches(1)) });
    expect(kinds(stub)).toEqual(
      expect.arrayContaining(['flaps do not meet', 'seam too thin', 'seam cut away']),
    );
    const gap = stub.warnings.find(({ kind }) => kind === 'flaps do not meet')!;
    expect(gap.amount).toBe(subtract(recipe.pocket.height, inches(1.25)));
  });

  it('has its glue only where a flap lies under it', () => {
    const wide = tryMeasures({
      card: thin(5, 3.5),
      notcher: tool(),
      square: inches(7),
      start: inches(3.0625),
    });
    const glued = (own: Finishes) => {
      const cut = finishFlaps(wide, own);
      const { flaps, glue } = foldOf(cut).folded(cut).back;
      const a = flaps.find(({ letter }) => letter === 'A')!.shape;
      const steps = foldOf(cut)
        .steps(cut, 'clockwise')
        .filter(({ kind }) => kind === 'glue');
      return { cut, glue, reach: Math.max(...a.map(({ x }) => x)), steps };
    };
    expect(glued({}).steps).toMatchObject([{ flap: 'C', onto: ['A', 'B'] }]);
    // A hair deep: less than the margin that glue keeps from the edges below it.
    const hairDeep = straight(inches(1 / 8));
    const one = glued({ A: hairDeep });
    expect(one.steps).toMatchObject([{ flap: 'C', onto: ['B'] }]);
    for (const { x } of one.glue.flat()) expect(x).toBeGreaterThan(one.cut.pocket.width / 2);
    const none = glued({ A: hairDeep, B: hairDeep });
    expect(none.glue).toEqual([]);
    expect(none.cut.seam).toMatchObject({ glueArea: 0, glueWidth: 0 });
    expect(none.steps).toEqual([]);
  });

  it('tapering its sides costs seam as well', () => {
    const tapered = finishFlaps(recipe, {
      C: { shape: 'tapered', depth: inches(3.25), taper: inches(1 / 4) },
    });
    expect(tapered.seam.area).toBeLessThan(recipe.seam.area);
    expect(kinds(tapered)).toContain('seam cut away');
  });
});

describe('every other finish', () => {
  it('is told from the score: how far the flap reaches after it', () => {
    const depth = flapOf(recipe, 'D').depth;
    const reach = (finish: Finish) => toInches(flapOf(finishFlaps(recipe, { D: finish }), 'D').reach);
    expect(reach({ shape: 'pointed' })).toBeCloseTo(toInches(depth), 6);
    expect(reach(straight(inches(2)))).toBe(2);
    expect(reach({ shape: 'tapered', depth: inches(2), taper: inches(1 / 8) })).toBe(2);
    // Plane geometry: a corner of 90° rounded with radius r recedes by r(√2 − 1).
    expect(reach({ shape: 'rounded', radius: inches(1 / 2) })).toBeCloseTo(
      toInches(depth) - (Math.SQRT2 - 1) / 2,
      5,
    );
    expect(reach(straight(add(depth, inches(1))))).toBeCloseTo(toInches(depth), 6);
  });

  it('a pointed flap that passes the fold says by how much', () => {
    const pointed = finishFlaps(recipe, { C: { shape: 'pointed' }, D: { shape: 'pointed' } });
    const passing = pointed.warnings.filter(({ kind }) => kind === 'flap passes the fold');
    expect(passing.map(({ amount }) => amount)).toEqual(
      (['C', 'D'] as const).map((letter) => subtract(flapOf(recipe, letter).depth, recipe.pocket.height)),
    );
    expect(describeWarning(passing[0]!, SIXTEENTHS)).toBe(
      'Flap C passes the opposite fold. It sticks out by ≈⅜″.',
    );
  });

  it('leaves all other measures alone, keeps what was wished, and takes back nothing she did not name', () => {
    const [wished] = solveEnvelope({ card: thin(5, 7), notcher: tool(), want: { front: 'along' } }).filter(
      ({ fold }) => fold === 'diagonal',
    );
    const {
      flaps: _flaps,
      seam: _seam,
      warnings,
      ...rest
    } = finishFlaps(wished!, { D: { shape: 'pointed' } });
    expect(wished).toMatchObject(rest);
    expect(warnings.map(({ kind }) => kind)).toContain('print lies otherwise');
    expect(finishFlaps(recipe, {})).toEqual(recipe);
  });

  it('a rounded tip is an arc that touches both edges', () => {
    const own = finishFlaps(recipe, { A: { shape: 'rounded', radius: inches(1 / 2) } });
    const { shape, trims } = foldOf(own).flat(own)[0]!.flaps[0]!;
    expect(trims).toHaveLength(1);
    const tip = { x: 0, y: 0 };
    // The touching points lie one radius from the sheet's corner, which is flap A's tip.
    const nearest = shape.map((at) => distance(at, tip)).toSorted((one, other) => one - other);
    expect(nearest[0]! / inches(1 / 2)).toBeCloseTo(Math.SQRT2 - 1, 3);
    expect(shape.filter((at) => Math.abs(distance(at, tip) - inches(1 / 2)) < 2)).toHaveLength(2);
  });
});

describe('impossible finishes', () => {
  const bad: [string, Finishes, RegExp, string?][] = [
    ['no depth', { C: straight(0) }, /^The cut has to lie within ≈3⅝″ of the score/],
    ['deeper than the flap', { C: straight(inches(5)) }, /^The cut has to lie within/],
    [
      'a negative taper',
      { C: { shape: 'tapered', depth: inches(3), taper: length(-1) } },
      /^The taper/,
      'cMore',
    ],
    [
      'a taper wider than the cut',
      { C: { shape: 'tapered', depth: inches(3), taper: inches(3) } },
      /^The taper/,
      'cMore',
    ],
    ['no radius', { C: { shape: 'rounded', radius: length(0) } }, /^The radius/, 'cMore'],
    ['a radius larger than the flap', { C: { shape: 'rounded', radius: inches(6) } }, /^The radius/, 'cMore'],
  ];

  it.each(bad)('%s: a message beside the measure', (_what, own, message, field = 'cDepth') => {
    const found = checkFinishes(recipe, own, SIXTEENTHS);
    expect(found.ok).toBe(false);
    expect(found.ok ? [] : found.problems).toEqual([{ field, message: expect.stringMatching(message) }]);
  });

  it('all of them at once, and the same ones throw', () => {
    const own: Finishes = {
      A: straight(0),
      B: { shape: 'rounded', radius: length(-5) },
      D: straight(inches(1)),
    };
    const found = checkFinishes(recipe, own, SIXTEENTHS);
    expect(found.ok ? [] : found.problems.map(({ field }) => field)).toEqual(['aDepth', 'bMore']);
    expect(() => finishFlaps(recipe, { C: straight(0) })).toThrow('invalid flap depth: 0');
    expect(() => finishFlaps(recipe, { D: { shape: 'rounded', radius: length(0) } })).toThrow(
      'invalid radius: 0',
    );
    expect(() =>
      finishFlaps(recipe, { D: { shape: 'tapered', depth: inches(3), taper: inches(3) } }),
    ).toThrow('invalid taper');
    const fine: Finishes = {
      C: straight(inches(3)),
      D: { shape: 'tapered', depth: inches(3), taper: inches(1 / 8) },
    };
    expect(checkFinishes(recipe, fine, SIXTEENTHS)).toEqual({ ok: true, value: fine });
  });
});

describe('warnings', () => {
  it('a tool with a small inset leaves too thin a seam', () => {
    const thinSeam = tryMeasures({
      card: thin(5.875, 3),
      notcher: tool(1 / 8, { inset: inches(1 / 8) }),
      square: inches(6.875),
      start: inches(2.375),
    });
    const warning = thinSeam.warnings.find(({ kind }) => kind === 'seam too thin')!;
    expect(describeWarning(warning, SIXTEENTHS)).toBe(
      'The seam is too thin to glue well. There is room for ¹⁄₁₆″ of glue.',
    );
    expect(toInches(warning.amount!)).toBeCloseTo(1 / 16, 4);
  });

  it('corners that only just meet leave the back open', () => {
    const meeting = tryMeasures({
      card: thin(3.5, 3.5),
      notcher: tool(1 / 8, { inset: inches(0) }),
      square: inches(5.5),
      start: inches(2.75),
    });
    expect(kinds(meeting)).toEqual(expect.arrayContaining(['flaps do not meet', 'seam too thin']));
  });

  it('without an amount the message stands alone', () => {
    expect(describeWarning({ kind: 'turn the card', message: 'Turn it.' }, SIXTEENTHS)).toBe('Turn it.');
  });
});
