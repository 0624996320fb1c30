/**
 * What an envelope's recipe tells about its set: the liner that its flap asks for, and the paper that goes to the post
 * with it. Asks every fold through its one interface and knows none of them.
 */
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { cross, minus, type Point, type Polygon, point } from '#core/geometry/point.ts';
import { area, edges } from '#core/geometry/polygon.ts';
import type { Checked } from '#shared/checked.ts';
import { turned } from '#shared/size.ts';
import { type LinerWish, liner } from './liner.ts';
import { gridOf, type SetPart } from './part.ts';
import type { ToPost } from './posted.ts';

/** A liner for the envelope as it is finished; lying so that the closing flap is at its top. */
export function linerOf(recipe: Recipe, wish: Omit<LinerWish, 'pocket' | 'flap'>): Checked<SetPart> {
  const opensAtTop = closing(recipe).side === 'top';
  return liner({
    grid: gridOf(recipe.notcher),
    ...wish,
    pocket: opensAtTop ? recipe.pocket : turned(recipe.pocket),
    flap: openFlap(recipe),
  });
}

/** Its outside, the area of its paper after all cuts, and the most leaves that lie on one another anywhere. */
export function paperOf(recipe: Recipe): Pick<ToPost['envelope'], 'size' | 'area' | 'leaves'> {
  const layouts = foldOf(recipe).flat(recipe);
  const paper = layouts.flatMap((layout) => [layout.pocket, ...layout.flaps.map((flap) => flap.shape)]);
  return {
    size: recipe.pocket,
    area: paper.reduce((sum, shape) => sum + area(shape), 0),
    leaves: 1 + mostLeaves(recipe),
  };
}

const closing = ({ flaps }: Recipe) => flaps.find(({ letter }) => letter === 'D')!;

/** The closing flap opened above a pocket that is turned so that it hinges at the top, clockwise from its left end. */
function openFlap(recipe: Recipe): Polygon {
  const { width, back } = foldOf(recipe).folded(recipe);
  const folded = back.flaps.find(({ letter }) => letter === 'D')!.shape;
  const upright = closing(recipe).side === 'top' ? folded : folded.map(({ x, y }) => point(y, width - x));
  const open = upright.map(({ x, y }) => point(x, 0 - y)).reverse();
  const first = open.reduce((best, at, index) => (leftOfScore(at, open[best]!) ? index : best), 0);
  return [...open.slice(first), ...open.slice(0, first)];
}

/** Nearer to the score, or as near and further left. */
const leftOfScore = (at: Point, than: Point): boolean =>
  at.y - than.y > HAIR || (Math.abs(at.y - than.y) <= HAIR && at.x < than.x);

const HAIR = 1;

/** Counted on a grid fine enough to meet every seam wider than a fiftieth of the envelope. */
function mostLeaves(recipe: Recipe): number {
  const { width, height, back } = foldOf(recipe).folded(recipe);
  const counts = Array.from({ length: STEPS * STEPS }, (_, index) => {
    const at = point(
      ((index % STEPS) + 0.5) * (width / STEPS),
      (Math.floor(index / STEPS) + 0.5) * (height / STEPS),
    );
    return back.flaps.filter(({ shape }) => isInside(shape, at)).length;
  });
  return Math.max(...counts);
}

const STEPS = 50;

const isInside = (shape: Polygon, at: Point): boolean =>
  edges(shape).every(({ from, to }) => cross(minus(to, from), minus(at, from)) >= 0);
