/**
 * The shapes of a diagonal fold, over arbitrary measures: the sheet is used up exactly, what lies open folds into place
 * when reflected across its score, and nothing passes a fold or gets glue where it must not.
 */
import fc from 'fast-check';
import clipping from 'polygon-clipping';
import { describe, expect, it } from 'vitest';
import { finishFlaps } from '#core/envelope/finish.ts';
import type { FlatLayout } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { HingedLetter, Recipe, Turning } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import {
  cross,
  distance,
  dot,
  minus,
  type Point,
  type Polygon,
  point,
  reflect,
} from '#core/geometry/point.ts';
import { area, edges, totalArea } from '#core/geometry/polygon.ts';
import { inches, length, PER_INCH, toInches } from '#shared/length.ts';
import { anyMeasures, SEED, thin, tool } from './cast.ts';

const SQUARE_INCH = PER_INCH * PER_INCH;
/** A hundredth of a millimetre: far below what can be cut, far above rounding. */
const HAIR = 400;

const anyRecipe = anyMeasures.map((measures) => tryMeasures({ card: thin(3, 2), ...measures }));
const anyTurning = fc.constantFrom<Turning>('clockwise', 'anticlockwise');

const flatOf = (recipe: Recipe, turning?: Turning): FlatLayout => foldOf(recipe).flat(recipe, turning)[0]!;
const backOf = (recipe: Recipe) => foldOf(recipe).folded(recipe).back;

/** From the sheet to the pocket seen from the back, by projecting on the pocket's own sides. */
function onPocket(layout: FlatLayout, at: Point): Point {
  const [p1, p2, , p4] = layout.pocket as [Point, Point, Point, Point];
  const along = (to: Point) => dot(minus(at, p1), minus(to, p1)) / distance(p1, to);
  return point(along(p2), along(p4));
}

function expectSame(found: Polygon, expected: Polygon): void {
  expect(found).toHaveLength(expected.length);
  for (const at of expected) expect(Math.min(...found.map((other) => distance(at, other)))).toBeLessThan(1);
}

const isInside = (at: Point, convex: Polygon, slack: number): boolean =>
  [1, -1].some((way) =>
    edges(convex).every(
      ({ from, to }) => (way * cross(minus(to, from), minus(at, from))) / distance(from, to) >= -slack,
    ),
  );

const shapeOf = (flaps: readonly { letter: HingedLetter; shape: Polygon }[], letter: HingedLetter): Polygon =>
  flaps.find((flap) => flap.letter === letter)!.shape;

const rings = (polygon: Polygon): [number, number][][] => [
  polygon.map(({ x, y }): [number, number] => [Math.round(x), Math.round(y)]),
];

describe('the flat sheet', () => {
  it('is used up exactly by pocket, flaps, trims and notches', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const layout = flatOf(recipe);
        const parts = [
          layout.pocket,
          ...layout.flaps.flatMap(({ shape, trims }) => [shape, ...trims]),
          ...layout.notches.map(({ cut }) => cut),
        ];
        expect(totalArea(parts) / area(layout.outline)).toBeCloseTo(1, 6);
        for (const corner of parts.flat()) expect(isInside(corner, layout.outline, 1)).toBe(true);
      }),
      SEED,
    );
  });

  it('has its pocket where square, start and inset put it', () => {
    fc.assert(
      fc.property(anyRecipe, ({ blank, starts, notcher, ...recipe }) => {
        const [S, m] = [blank.width, notcher.inset];
        const p = starts[0] + notcher.zeroOffset;
        const expected = [point(p, m), point(S - m, S - p), point(S - p, S - m), point(m, p)];
        expectSame(flatOf({ blank, starts, notcher, ...recipe }).pocket, expected);
      }),
      SEED,
    );
  });

  it('is notched and scored round the sheet in the order of turning, each score from its notch to the next', () => {
    fc.assert(
      fc.property(anyRecipe, anyTurning, (recipe, turning) => {
        const { notches, scores } = flatOf(recipe, turning);
        expect(notches.map(({ order }) => order)).toEqual([1, 2, 3, 4]);
        expect(notches.map(({ measured }) => measured)).toEqual([true, false, false, false]);
        expect(notches.map(({ edge }) => edge)).toEqual(
          turning === 'anticlockwise'
            ? ['top', 'right', 'bottom', 'left']
            : ['top', 'left', 'bottom', 'right'],
        );
        expect(notches.map(({ reading }) => reading)).toEqual(
          [0, 1, 0, 1].map((which) => recipe.starts[which]),
        );
        for (const [index, { from, to }] of scores.entries()) {
          expect(distance(from, notches[index]!.corner)).toBeLessThan(1);
          expect(distance(to, notches[(index + 1) % 4]!.corner)).toBeLessThan(1);
        }
        for (const { mouth, corner } of notches)
          expect(distance(mouth, corner)).toBeCloseTo(recipe.notcher.inset, 0);
      }),
      SEED,
    );
  });

  it('gets its glue on the inside of flap C', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const { flaps, glue, seams } = flatOf(recipe);
        const c = shapeOf(flaps, 'C');
        for (const at of [...glue, ...seams].flat()) expect(isInside(at, c, HAIR)).toBe(true);
      }),
      SEED,
    );
  });
});

describe('folded', () => {
  it('every flap lies where its open shape lands, reflected across its score', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const layout = flatOf(recipe);
        const { flaps } = backOf(recipe);
        expect(flaps.map(({ letter }) => letter)).toEqual(['A', 'B', 'C', 'D']);
        for (const { letter, shape } of layout.flaps) {
          const score = layout.scores.find(({ flap }) => flap === letter)!;
          const landed = shape.map((at) => onPocket(layout, reflect(at, score)));
          expectSame(shapeOf(flaps, letter), landed);
        }
      }),
      SEED,
    );
  });

  it('no paper passes a fold, since overruns are trimmed', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const { pocket, flaps } = backOf(recipe);
        for (const at of flaps.flatMap(({ shape }) => shape)) expect(isInside(at, pocket, 1)).toBe(true);
        expect(recipe.warnings.map(({ kind }) => kind)).not.toContain('flap passes the fold');
      }),
      SEED,
    );
  });

  it('reaches and overruns are what the shapes show', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const layout = flatOf(recipe);
        for (const flap of recipe.flaps) {
          const { from, to } = layout.scores.find(({ flap: letter }) => letter === flap.letter)!;
          const away = (at: Point) => Math.abs(cross(minus(to, from), minus(at, from))) / distance(from, to);
          const { shape, trims } = layout.flaps.find(({ letter }) => letter === flap.letter)!;
          const deepest = Math.max(...[shape, ...trims].flat().map(away));
          const across =
            flap.side === 'left' || flap.side === 'right' ? recipe.pocket.width : recipe.pocket.height;
          expect(Math.abs(Math.max(...shape.map(away)) - flap.reach)).toBeLessThan(3);
          expect(Math.abs(deepest - flap.depth)).toBeLessThan(3);
          expect(Math.abs(Math.max(0, deepest - across) - flap.overrun)).toBeLessThan(3);
          expect(Math.abs(distance(from, to) - flap.score)).toBeLessThan(3);
        }
      }),
      SEED,
    );
  });

  it('the seam is as large as polygon-clipping finds flap C on A and B', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const { flaps, seams } = backOf(recipe);
        const [a, b, c] = (['A', 'B', 'C'] as const).map((letter) => rings(shapeOf(flaps, letter)));
        const found = clipping.intersection(c!, clipping.union(a!, b!)).flat();
        const reference = totalArea(found.map((ring) => ring.slice(0, -1).map(([x, y]) => point(x, y))));
        expect(recipe.seam.area).toBeCloseTo(reference / SQUARE_INCH, 4);
        expect(totalArea(seams) / SQUARE_INCH).toBeCloseTo(recipe.seam.area, 4);
      }),
      SEED,
    );
  });

  it('glue stays on the seam, clear of every edge and of the throat', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const { flaps, glue } = backOf(recipe);
        const [a, b, c] = (['A', 'B', 'C'] as const).map((letter) => shapeOf(flaps, letter));
        for (const at of glue.flat()) {
          expect(isInside(at, c!, 1 - inches(1 / 8))).toBe(true);
          expect([a!, b!].some((below) => isInside(at, below, 1 - inches(1 / 16)))).toBe(true);
        }
        expect(totalArea(glue) / SQUARE_INCH).toBeCloseTo(recipe.seam.glueArea, 4);
        expect(recipe.seam.glueArea).toBeLessThanOrEqual(recipe.seam.area);
      }),
      SEED,
    );
  });

  it('glue is as wide as the band less its margins, nothing without an inset', () => {
    const glueWidth = (inset: number) =>
      toInches(
        tryMeasures({
          card: thin(5.875, 3),
          notcher: tool(1 / 16, { inset: inches(inset) }),
          square: inches(7.5),
          start: inches(2.75),
        }).seam.glueWidth,
      );
    expect(glueWidth(7 / 16)).toBeCloseTo(2 * (7 / 16) - 3 / 16, 4);
    expect(glueWidth(1 / 4)).toBeCloseTo(2 / 4 - 3 / 16, 4);
    expect(glueWidth(0)).toBe(0);
  });

  it('shows the card with both clearances beside it, in mirror image from the back', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const { front, back, width } = foldOf(recipe).folded(recipe);
        for (const { along, from, to, clearance } of front.gaps) {
          const gap = along === 'width' ? to.x - from.x : from.y - to.y;
          expect(Math.abs(gap - clearance)).toBeLessThan(2);
          expect(clearance).toBe(recipe.clearance[along]);
        }
        expectSame(
          back.card,
          front.card.map(({ x, y }) => point(width - x, y)),
        );
        expect(front.flaps).toEqual([]);
      }),
      SEED,
    );
  });
});

describe('the maker’s own finishes', () => {
  const recipe = tryMeasures({
    card: thin(5.875, 3),
    notcher: tool(1 / 8),
    square: inches(7.5),
    start: inches(2.75),
  });

  it('every shape of flap leaves paper where it says, and the sheet still adds up', () => {
    const finish = fc.oneof(
      fc.record({
        shape: fc.constant('straight' as const),
        depth: fc.integer({ min: inches(0.25), max: inches(3.6) }).map(length),
      }),
      fc.record({
        shape: fc.constant('tapered' as const),
        depth: fc.integer({ min: inches(0.25), max: inches(3) }).map(length),
        taper: fc.integer({ min: 0, max: inches(0.5) }).map(length),
      }),
      fc.record({
        shape: fc.constant('rounded' as const),
        radius: fc.integer({ min: 1_000, max: inches(2) }).map(length),
      }),
      fc.constant({ shape: 'pointed' as const }),
    );
    fc.assert(
      fc.property(finish, finish, (c, d) => {
        const own = finishFlaps(recipe, { C: c, D: d });
        const { outline, pocket, flaps, notches } = flatOf(own);
        const parts = [
          pocket,
          ...flaps.flatMap((flap) => [flap.shape, ...flap.trims]),
          ...notches.map(({ cut }) => cut),
        ];
        expect(totalArea(parts) / area(outline)).toBeCloseTo(1, 6);
        expect(own.seam.area).toBeLessThanOrEqual(own.seam.areaUncut + 1e-9);
      }),
      SEED,
    );
  });
});
