/**
 * How a print lies on a diagonal fold: each look's transforms checked against paper folded by reflection, and the
 * border's triangle against the closed formula of plane geometry.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Corner, Look, Placement } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import { placementWords } from '#core/envelope/placement.ts';
import type { Recipe, Side } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { distance, dot, minus, type Point, point, reflect } from '#core/geometry/point.ts';
import { area, overlap, rectangle } from '#core/geometry/polygon.ts';
import { apply, applyToAll, type Transform } from '#core/geometry/transform.ts';
import { inches, length } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import { anyMeasures, SEED, thin, tool } from './cast.ts';

const UPRIGHT: Print = { direction: 'upright' };
const ANY_WAY: Print = { direction: 'any way' };
const bordered = (depth: number): Print => ({ direction: 'one edge', border: inches(depth) });

const anyRecipe = anyMeasures.map((measures) => tryMeasures({ card: thin(3, 2), ...measures }));
const recipe = tryMeasures({
  card: thin(5.875, 3),
  notcher: tool(),
  square: inches(7.5),
  start: inches(2.75),
});

const looksOf = (one: Recipe, print: Print, doubleSided = false): readonly Look[] =>
  foldOf(one).looks(one, { print, doubleSided });

const isFaithful = ({ a, b, c, d }: Transform): boolean => Math.abs(a * d - b * c - 1) < 1e-6;

/** Turns the paper over left to right, then clockwise by quarters until its top points to `side`: blank from face. */
function layDown(at: Point, square: number, side: Side): Point {
  const quarters = ['top', 'right', 'bottom', 'left'].indexOf(side);
  let place = point(square - at.x, at.y);
  for (let turn = 0; turn < quarters; turn++) place = point(square - place.y, place.x);
  return place;
}

/** The side that the top of the paper points to on the tool. */
function topOf({ towards }: Placement): Side {
  const opposite: Record<Side, Side> = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' };
  return towards!.what === 'top' ? towards!.side : opposite[towards!.side];
}

describe('how many looks there are', () => {
  it('any way: one for each side; else four, the print leaning to each corner once', () => {
    expect(looksOf(recipe, ANY_WAY)).toHaveLength(1);
    expect(looksOf(recipe, ANY_WAY, true).map(({ placement }) => placement.faceDown)).toEqual([
      'print',
      'back',
    ]);
    for (const print of [UPRIGHT, bordered(1)]) {
      const looks = looksOf(recipe, print);
      expect(new Set(looks.map(({ leans }) => leans)).size).toBe(4);
      expect(looksOf(recipe, print, true)).toHaveLength(8);
      expect(new Set(looksOf(recipe, print, true).map(({ id }) => id)).size).toBe(8);
    }
  });

  it('each upright look is got by laying the top of the print to another side', () => {
    const sides = looksOf(recipe, UPRIGHT).map(({ placement }) => placement.towards!.side);
    expect([...sides].sort()).toEqual(['bottom', 'left', 'right', 'top']);
  });
});

describe('the print on the front and on the flaps', () => {
  const anyPrint = fc.constantFrom(UPRIGHT, bordered(0.25), bordered(1));

  it('lies at 45°, is never mirrored, and covers the front and every flap', () => {
    fc.assert(
      fc.property(anyRecipe, anyPrint, (one, print) => {
        const { width, height, back } = foldOf(one).folded(one);
        const paper = rectangle(0, 0, one.blank.width, one.blank.width);
        for (const look of looksOf(one, print, true)) {
          const moves = [look.front, ...look.flaps.map(({ transform }) => transform)];
          for (const move of moves) {
            expect(isFaithful(move)).toBe(true);
            expect(Math.abs(move.a)).toBeCloseTo(Math.SQRT1_2, 6);
          }
          const front = rectangle(0, 0, width, height);
          expect(area(overlap(front, applyToAll(look.front, paper))) / area(front)).toBeCloseTo(1, 6);
          for (const { letter, shape } of back.flaps) {
            const { transform } = look.flaps.find((flap) => flap.letter === letter)!;
            const covered = area(overlap(shape, applyToAll(transform, paper)));
            expect(covered / area(shape)).toBeCloseTo(1, 6);
          }
        }
      }),
      { ...SEED, numRuns: 60 },
    );
  });

  it('is where the paper goes when it is laid down as told, notched and folded', () => {
    fc.assert(
      fc.property(
        anyRecipe,
        anyPrint,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (one, print, x, y) => {
          const layout = foldOf(one).flat(one)[0]!;
          const [p1, p2, , p4] = layout.pocket as [Point, Point, Point, Point];
          const fromBack = (at: Point) =>
            point(
              dot(minus(at, p1), minus(p2, p1)) / distance(p1, p2),
              dot(minus(at, p1), minus(p4, p1)) / distance(p1, p4),
            );
          const at = point(x * one.blank.width, y * one.blank.width);
          for (const look of looksOf(one, print)) {
            const onTool = layDown(at, one.blank.width, topOf(look.placement));
            const back = fromBack(onTool);
            const front = point(distance(p1, p2) - back.x, back.y);
            expect(distance(apply(look.front, at), front)).toBeLessThan(1);
            for (const { letter, transform } of look.flaps) {
              const score = layout.scores.find(({ flap }) => flap === letter)!;
              expect(distance(apply(transform, at), fromBack(reflect(onTool, score)))).toBeLessThan(1);
            }
          }
        },
      ),
      { ...SEED, numRuns: 60 },
    );
  });
});

describe('a border along one edge', () => {
  it('reaches the front in one corner with legs √2(b − m), or not at all up to the inset', () => {
    fc.assert(
      fc.property(anyRecipe, fc.integer({ min: 1, max: inches(1.25) }), (one, depth) => {
        const { width, height } = foldOf(one).folded(one);
        const S = one.blank.width;
        const expected = Math.max(0, depth - one.notcher.inset) * Math.SQRT2;
        fc.pre(expected < Math.min(width, height));
        const strip = rectangle(0, S - depth, S, depth);
        for (const look of looksOf(one, { direction: 'one edge', border: length(depth) })) {
          expect(Math.abs(look.border!.legs - expected)).toBeLessThan(1);
          const onFront = overlap(rectangle(0, 0, width, height), applyToAll(look.front, strip));
          expect(Math.abs(Math.sqrt(2 * area(onFront)) - expected)).toBeLessThan(60);
          if (expected < 2000) continue;
          const corner = cornerAt(look.border!.corner, width, height);
          expect(Math.min(...onFront.map((at) => distance(at, corner)))).toBeLessThan(2);
        }
      }),
      { ...SEED, numRuns: 100 },
    );
  });

  const cornerAt = (corner: Corner, width: number, height: number): Point =>
    point(corner.endsWith('right') ? width : 0, corner.startsWith('bottom') ? height : 0);

  it('says so in words, and how to lay the paper down', () => {
    const [first] = looksOf(recipe, bordered(1));
    expect(first!.words).toBe('Print out, border in the front’s bottom right corner');
    expect(placementWords(first!.placement)).toMatch(/^print down, border (to the|towards|away)/);
    const [narrow] = looksOf(recipe, bordered(0.25));
    expect(narrow!.words).toBe('Print out, border on the back only, by the front’s bottom right corner');
    const sides: Side[] = ['top', 'right', 'bottom', 'left'];
    const told = sides.map((side) =>
      placementWords({ faceDown: 'print', towards: { what: 'border', side } }),
    );
    expect(told).toEqual([
      'print down, border away from you',
      'print down, border to the right',
      'print down, border towards you',
      'print down, border to the left',
    ]);
    expect(placementWords({ faceDown: 'back' })).toBe('print up');
  });
});
