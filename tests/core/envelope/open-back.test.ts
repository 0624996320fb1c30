/**
 * Where flaps cut short leave the back open, counted here from what folding is: a spot of the pocket is covered when
 * its mirror image across a score is paper that was not cut off. Knows no layout and no polygon of the code.
 */
import fc from 'fast-check';
import clipping, { type Ring } from 'polygon-clipping';
import { describe, expect, it } from 'vitest';
import { finishFlaps } from '#core/envelope/finish.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Finishes, Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope, tryMeasures } from '#core/envelope/recipes.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import type { Polygon } from '#core/geometry/point.ts';
import type { Finish } from '#shared/fold.ts';
import { inches, length, PER_INCH, type Units } from '#shared/length.ts';
import { anyCard, anyMeasures, SEED, thin, tool } from './cast.ts';

const SIXTEENTHS: Units = { unit: 'in', step: 16 };
const SQUARE_INCH = PER_INCH ** 2;

const straight = (depth: number): Finish => ({ shape: 'straight', depth: inches(depth) });
const openIn = ({ warnings }: Recipe): number => warnings.find(({ kind }) => kind === 'back open')?.area ?? 0;
const saidOf = (recipe: Recipe): string[] =>
  recipe.warnings
    .filter(({ kind }) => kind === 'back open')
    .map((warning) => describeWarning(warning, SIXTEENTHS));

interface Sheet {
  readonly square: number;
  readonly start: number;
  readonly inset: number;
}

/** Each side of the pocket as it lies on the sheet, clockwise, with how deep its flap is cut; all in inches. */
function scoresOf({ square, start, inset }: Sheet, depths: readonly number[]) {
  const corners = [
    [start, inset],
    [square - inset, square - start],
    [square - start, square - inset],
    [inset, start],
  ] as const;
  return corners.map(([x, y], side) => {
    const [toX, toY] = corners[(side + 1) % 4]!;
    const run = Math.hypot(toX - x, toY - y);
    return { x, y, alongX: (toX - x) / run, alongY: (toY - y) / run, run, depth: depths[side]! };
  });
}

/** By a grid of small cells over the pocket, in square inches. */
function countOpen(sheet: Sheet, depths: readonly number[], cells = 400): number {
  const scores = scoresOf(sheet, depths);
  const [top, right] = [scores[0]!, scores[1]!];
  let open = 0;
  for (let row = 0; row < cells; row++) {
    for (let column = 0; column < cells; column++) {
      const [u, v] = [((column + 0.5) / cells) * top.run, ((row + 0.5) / cells) * right.run];
      const x = top.x + u * top.alongX + v * right.alongX;
      const y = top.y + u * top.alongY + v * right.alongY;
      if (!scores.some((score) => covers(score, x, y, sheet.square))) open++;
    }
  }
  return (open / cells ** 2) * top.run * right.run;
}

/** Whether the flap beyond a score reaches a spot of the pocket when it is folded over. */
function covers(score: ReturnType<typeof scoresOf>[number], x: number, y: number, square: number): boolean {
  const away = (x - score.x) * -score.alongY + (y - score.y) * score.alongX;
  if (away > score.depth) return false;
  const [overX, overY] = [x + 2 * away * score.alongY, y - 2 * away * score.alongX];
  return Math.min(overX, overY, square - overX, square - overY) >= 0;
}

const WHOLE = Number.POSITIVE_INFINITY;

describe('a flap cut short', () => {
  const recipe = tryMeasures({
    card: thin(7, 5),
    notcher: tool(),
    square: inches(9.75),
    start: inches(4.125),
  });
  const sheet = { square: 9.75, start: 4.125, inset: 7 / 16 };

  it.each([
    [1, '1.96'],
    [1.5, '0.48'],
  ])('D at %f in leaves %s sq in of the back open', (depth, area) => {
    // Both areas were measured by somebody else on this envelope, from a drawing of it.
    const cut = finishFlaps(recipe, { D: straight(depth) });
    expect(saidOf(cut)).toEqual([
      `The flaps leave the back open in the middle along the top. ${area} sq in of it lie bare.`,
    ]);
    expect(openIn(cut)).toBeCloseTo(countOpen(sheet, [depth, WHOLE, WHOLE, WHOLE]), 1);
  });

  it('C leaves it open below, both of them on either side, and what covers it is no cause to warn', () => {
    expect(saidOf(finishFlaps(recipe, { C: straight(1) }))[0]).toMatch(
      /in the middle along the bottom\. 1\.96/,
    );
    const both = finishFlaps(recipe, { C: straight(1), D: straight(1) });
    expect(openIn(both)).toBeCloseTo(countOpen(sheet, [1, WHOLE, 1, WHOLE]), 1);
    expect(openIn(both)).toBeGreaterThan(4);
    expect(saidOf(finishFlaps(recipe, { D: straight(2) }))).toEqual([]);
    expect(saidOf(recipe)).toEqual([]);
  });

  it('says the area in the reader’s own unit', () => {
    const [warning] = finishFlaps(recipe, { D: straight(1) }).warnings;
    // 1.96 sq in · 2.54² = 12.6 cm² (1 in = 2.54 cm exactly).
    expect(describeWarning(warning!, { unit: 'mm' })).toContain('12.6 cm² of it lie bare');
  });

  it('is measured as counting does, whatever square, start, inset and cuts', () => {
    const depth = fc.integer({ min: 1, max: 24 }).map((eighths) => eighths / 8);
    fc.assert(
      fc.property(anyMeasures, depth, depth, ({ notcher, square, start }, c, d) => {
        const tried = tryMeasures({ card: thin(3, 2), notcher, square, start });
        const cut = finishFlaps(tried, { C: straight(c), D: straight(d) });
        const wide = cut.pocket.width >= cut.pocket.height;
        const depths = wide ? [d, WHOLE, c, WHOLE] : [WHOLE, d, WHOLE, c];
        const [S, p] = [square, start + notcher.zeroOffset].map((one) => one / PER_INCH) as [number, number];
        const counted = countOpen({ square: S, start: p, inset: notcher.inset / PER_INCH }, depths, 150);
        expect(Math.abs(openIn(cut) - counted)).toBeLessThan(0.02 + 0.012 * (S + counted));
      }),
      { ...SEED, numRuns: 40 },
    );
  });
});

describe('every fold', () => {
  const ring = (polygon: Polygon): [Ring] => [polygon.map(({ x, y }) => [Math.round(x), Math.round(y)])];
  const areaOf = (points: Ring): number =>
    Math.abs(
      points.reduce((sum, [x, y], index) => {
        const [nextX, nextY] = points[(index + 1) % points.length]!;
        return sum + x * nextY - nextX * y;
      }, 0) / 2,
    );
  /** The pocket less the union of the flaps, by polygon-clipping. */
  const clipped = (recipe: Recipe): number => {
    const { pocket, flaps } = foldOf(recipe).folded(recipe).back;
    const left = clipping.difference(ring(pocket), ...flaps.map(({ shape }) => ring(shape)));
    return left.flat().reduce((sum, points) => sum + areaOf(points), 0) / SQUARE_INCH;
  };
  const recipes = anyCard.chain((card) =>
    fc.constantFrom(...solveEnvelope({ card, notcher: tool() }).slice(0, 20)),
  );

  it('leaves nothing open as it is proposed', () => {
    fc.assert(
      fc.property(recipes, (recipe) => {
        expect(clipped(recipe)).toBeLessThan(0.011);
        expect(openIn(recipe)).toBe(0);
      }),
      { ...SEED, numRuns: 20 },
    );
  });

  it('leaves open what polygon-clipping finds, however its closing flap is finished', () => {
    fc.assert(
      fc.property(recipes, fc.integer({ min: 2, max: 9 }), fc.boolean(), (recipe, share, tapered) => {
        const { depth, score } = recipe.flaps[3]!;
        const cut = length(Math.floor((depth * share) / 10));
        const end = Math.min(score, 2 * (depth - cut));
        const own: Finishes = tapered
          ? { D: { shape: 'tapered', depth: cut, taper: length(Math.floor(end / 4)) } }
          : { D: { shape: 'straight', depth: cut } };
        const finished = finishFlaps(recipe, own);
        const [said, found] = [openIn(finished), clipped(finished)];
        if (said === 0) expect(found).toBeLessThan(0.011);
        else expect(said).toBeCloseTo(found, 3);
      }),
      { ...SEED, numRuns: 30 },
    );
  });

  it('names the corners that a tapered flap of two pieces leaves open', () => {
    const [recipe] = solveEnvelope({ card: thin(7, 5), notcher: tool(), folds: ['two-piece'] });
    const [tall] = [recipe!].filter(({ flaps }) => flaps[3]!.side === 'top');
    const steep = finishFlaps(tall ?? recipe!, {
      D: { shape: 'tapered', depth: recipe!.flaps[3]!.depth, taper: inches(1.5) },
    });
    // Two triangles, as high as the throat, as wide as the taper is there: together throat² · taper / depth.
    const d = recipe!.flaps[3]!;
    const axis = d.side === 'top' ? recipe!.pocket.height : recipe!.pocket.width;
    const throat = (axis - recipe!.flaps[2]!.depth) / PER_INCH;
    expect(openIn(steep)).toBeCloseTo((throat ** 2 * 1.5) / (d.depth / PER_INCH), 3);
    expect(saidOf(steep)[0]).toMatch(/open at the (left|right) along the top and at the right along the/);
  });
});
