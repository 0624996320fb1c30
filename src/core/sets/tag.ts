/** A tag with its hole and its corners. Knows no ribbon and no card. */
import { type Point, point } from '#core/geometry/point.ts';
import type { Checked, Problem } from '#shared/checked.ts';
import { inches, type Length, length } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { copiesProblem, ifSound, negativeProblem, type SetPart, sizeProblems, type Wanted } from './part.ts';

export interface TagWish extends Wanted {
  readonly size: Size;
  /** What an angled cut takes off both upper corners, along either edge; 0 leaves them square. */
  readonly corner: Length;
  /** The hole's diameter; 0 for none. */
  readonly hole: Length;
}

export interface Tag extends SetPart {
  readonly hole?: { readonly middle: Point; readonly diameter: Length };
}

/**
 * A tag hanging from its upper edge. Its hole sits centred, its own width below that edge, and lower where it would come
 * too near the edge or the cut corners.
 */
export function tag(wish: TagWish): Checked<Tag> {
  const problems = [...sizeProblems(wish.size), ...copiesProblem(wish), ...tagProblems(wish)];
  return ifSound(problems, () => ({
    ...wish.size,
    name: 'Tag',
    copies: wish.copies,
    material: 'cardstock',
    upright: wish.upright ?? false,
    scores: [],
    ...(wish.corner > 0 ? { outline: outlineOf(wish) } : {}),
    ...(wish.hole > 0
      ? { hole: { middle: point(wish.size.width / 2, middleOf(wish)), diameter: wish.hole } }
      : {}),
    notes: wish.hole > 0 ? ['Punch the hole before cutting the corners.'] : [],
  }));
}

/** Paper that has to stay all round a hole so that it doesn't tear: a choice of ours. */
const HOLE_EDGE = inches(1 / 8);

const TOO_BIG =
  'Too little paper is left for this hole: it needs ⅛″ (3 mm) all round, towards the cut corners too.';

/** Below the upper edge; a corner's cut runs where x + y is the corner, so it is (x + y − corner)/√2 away. */
function middleOf({ size, corner, hole }: TagWish): Length {
  const ownWidthDown = Math.max(hole, HOLE_EDGE) + hole / 2;
  const clearOfCorners = (hole / 2 + HOLE_EDGE) * Math.SQRT2 + corner - size.width / 2;
  return length(Math.ceil(Math.max(ownWidthDown, clearOfCorners)));
}

function outlineOf({ size, corner }: TagWish): Point[] {
  const { width, height } = size;
  return [
    point(corner, 0),
    point(width - corner, 0),
    point(width, corner),
    point(width, height),
    point(0, height),
    point(0, corner),
  ].filter((at, index, all) => index === 0 || at.x !== all[index - 1]!.x || at.y !== all[index - 1]!.y);
}

function tagProblems(wish: TagWish): Problem[] {
  const { size, corner, hole } = wish;
  const tooDeep = 2 * corner > size.width || corner > size.height;
  const tooBig = hole + 2 * HOLE_EDGE > size.width || middleOf(wish) + hole / 2 + HOLE_EDGE > size.height;
  return [
    ...negativeProblem(corner, 'corner', 'A corner'),
    ...negativeProblem(hole, 'hole', 'A hole'),
    ...(tooDeep ? [{ field: 'corner', message: 'Corners this large would meet.' }] : []),
    ...(hole > 0 && tooBig ? [{ field: 'hole', message: TOO_BIG }] : []),
  ];
}
