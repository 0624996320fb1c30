/**
 * Lays a blank on the page: turned by quarters, scaled, with room left round it for dimensions. Knows the blank's
 * corners and edges, not what is notched or scored there.
 */
import type { Side } from '#core/envelope/recipe.ts';
import { type Point, type Polygon, point } from '#core/geometry/point.ts';
import { apply, applyToAll, inOrder, shift, type Transform, turn } from '#core/geometry/transform.ts';
import type { Size } from '#shared/size.ts';

export interface Room {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

export interface Stage {
  /** The page's width and height, room included. */
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  /** From the blank to the page. */
  readonly move: Transform;
  at(point: Point): Point;
  all(polygon: Polygon): Point[];
  /** An edge's two ends on the page, in the order that goes clockwise round the blank. */
  edge(side: Side): [Point, Point];
}

/** The blank after `turns` clockwise quarter turns, as large as fits `width` and at most `tallest` high. */
export function stage(
  blank: Size,
  turns: number,
  { room, width, tallest }: { readonly room: Room; readonly width: number; readonly tallest: number },
): Stage {
  const [across, down] = turns % 2 === 0 ? [blank.width, blank.height] : [blank.height, blank.width];
  const free = { width: width - room.left - room.right, height: tallest - room.top - room.bottom };
  const scale = Math.min(free.width / across, free.height / down);
  const height = room.top + down * scale + room.bottom;
  const move = inOrder(
    shift(-blank.width / 2, -blank.height / 2),
    turn(2 * turns),
    scaled(scale),
    shift(room.left + free.width / 2, room.top + (down * scale) / 2),
  );
  return {
    width,
    height,
    scale,
    move,
    at: (one) => apply(move, one),
    all: (polygon) => [...applyToAll(move, polygon)],
    edge: (side) => edgeEnds(blank, side).map((end) => apply(move, end)) as [Point, Point],
  };
}

export const scaled = (by: number): Transform => ({ a: by, b: 0, c: 0, d: by, e: 0, f: 0 });

/** Room for dimensions: what each side of the blank as laid down needs, put on the sides of the page. */
export function roomAfter(turns: number, room: Room): Room {
  const order = [room.top, room.right, room.bottom, room.left];
  const from = (side: number): number => order[(((side - turns) % 4) + 4) % 4]!;
  return { top: from(0), right: from(1), bottom: from(2), left: from(3) };
}

export const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left'];

export const opposite = (side: Side): Side => SIDES[(SIDES.indexOf(side) + 2) % 4]!;

function edgeEnds(blank: Size, side: Side): [Point, Point] {
  const corners = [
    point(0, 0),
    point(blank.width, 0),
    point(blank.width, blank.height),
    point(0, blank.height),
  ];
  const index = SIDES.indexOf(side);
  return [corners[index]!, corners[(index + 1) % 4]!];
}
