/**
 * The liner of an envelope: a piece that lines the back wall and the open flap, kept clear of the sides and of the
 * glue. Knows the flap's shape, not how the envelope was folded.
 */

import { cross, distance, type Line, minus, type Polygon, point } from '#core/geometry/point.ts';
import { edges, keepRight } from '#core/geometry/polygon.ts';
import { accept, type Checked, type Problem } from '#shared/checked.ts';
import { add, inches, type Length, roundToStep, subtract, times } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import {
  copiesProblem,
  negativeProblem,
  type SetPart,
  SIXTY_FOURTH,
  sizeProblems,
  type Wanted,
} from './part.ts';

export interface LinerWish extends Wanted {
  readonly pocket: Size;
  /**
   * The closing flap laid open above the pocket, whose top left corner is at 0, 0 (so y is negative); its corners
   * clockwise as seen, from the left end of its score to the right end. Convex.
   */
  readonly flap: Polygon;
  /** How far in from the flap's edge the glue reaches. */
  readonly glue: Length;
  /** What stays clear below the glue. */
  readonly clear?: Length;
  /** What stays clear at either side; ⅛ in when absent, so ¼ in in all. */
  readonly side?: Length;
  /** What its measures are multiples of; 64ths of an inch when absent. */
  readonly grid?: Length;
}

/**
 * The liner as cut, its foot at the bottom fold. Its width, its part below the score and its part above are each rounded
 * down to the grid, so that it never keeps less clear than was asked. Edges of the flap that stand almost upright are sides and keep clear
 * as the pocket's do; the others carry glue. Throws on a flap that isn't convex over the whole pocket.
 */
export function liner(wish: LinerWish): Checked<SetPart> {
  const problems = [...sizeProblems(wish.pocket), ...copiesProblem(wish), ...linerProblems(wish)];
  if (problems.length > 0) return { ok: false, problems };
  const grid = wish.grid ?? SIXTY_FOURTH;
  const foot = roundToStep(wish.pocket.height, grid, 'down');
  const width = roundToStep(subtract(wish.pocket.width, times(wish.side ?? SIDE, 2)), grid, 'down');
  const side = (wish.pocket.width - width) / 2;
  const shape = shapeOf(wish, side);
  const rise = Math.max(0, ...shape.map(({ y }) => 0 - y));
  const score = roundToStep(rise, grid, 'down');
  if (score === 0) return { ok: false, problems: [NOTHING_LEFT] };
  const lowered = (y: number): number => Math.min(y + rise, add(score, foot));
  return accept({
    name: 'Liner',
    copies: wish.copies,
    material: 'paper',
    upright: wish.upright ?? false,
    width,
    height: add(score, foot),
    scores: [{ from: 'top', at: score }],
    outline: shape.map(({ x, y }) => point(x - side, lowered(y))),
    notes: [
      'Slide it to the bottom fold, fold the flap over it once, then glue the liner to the flap alone.',
      'Line the envelope before its flap gets its glue.',
    ],
  });
}

const SIDE = inches(1 / 8);
const CLEAR = inches(1 / 16);

/** Steeper than this against the score, in height over width, an edge of the flap is a side. */
const UPRIGHT = Math.tan((70 / 180) * Math.PI);

/** The whole open envelope, each edge moved in by what has to stay clear there; the bottom fold stays. */
function shapeOf(wish: LinerWish, side: number): Polygon {
  const { width, height } = wish.pocket;
  const open = [point(0, height), ...wish.flap, point(width, height)];
  assertConvex(open);
  return edges(open).reduce(
    (rest: Polygon, edge) => keepRight(rest, movedIn(edge, clearOf(edge, wish, side))),
    open,
  );
}

function clearOf({ from, to }: Line, wish: LinerWish, side: number): number {
  const [across, up] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  if (from.y > 0 && to.y > 0) return 0;
  return up > across * UPRIGHT ? side : add(wish.glue, wish.clear ?? CLEAR);
}

function movedIn({ from, to }: Line, by: number): Line {
  const run = distance(from, to);
  const aside = point((-(to.y - from.y) / run) * by, ((to.x - from.x) / run) * by);
  const shift = (at: Line['from']): Line['from'] => point(at.x + aside.x, at.y + aside.y);
  return { from: shift(from), to: shift(to) };
}

function assertConvex(polygon: Polygon): void {
  const turns = edges(polygon).map((edge, index, all) => {
    const next = all[(index + 1) % all.length]!;
    return cross(minus(edge.to, edge.from), minus(next.to, next.from));
  });
  if (turns.some((turn) => turn < -1)) throw new Error('invalid flap: not convex, or not clockwise');
}

const NOTHING_LEFT: Problem = {
  field: 'glue',
  message: 'With this much glue nothing of the flap is left to line.',
};

function linerProblems(wish: LinerWish): Problem[] {
  const side = wish.side ?? SIDE;
  return [
    ...negativeProblem(wish.glue, 'glue', 'A glue line'),
    ...negativeProblem(wish.clear ?? CLEAR, 'clear', 'What stays clear'),
    ...negativeProblem(side, 'side', 'A margin'),
    ...(times(side, 2) < wish.pocket.width
      ? []
      : [{ field: 'side', message: 'The margins are wider than the envelope.' }]),
  ];
}
