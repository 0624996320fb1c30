/**
 * The one shape of a part of a set: what to cut, where to score, and what to mind. Knows no part in particular, no
 * shelf and no plan.
 */
import type { Part } from '#core/cutting/order.ts';
import { type Line, type Polygon, point } from '#core/geometry/point.ts';
import { rectangle } from '#core/geometry/polygon.ts';
import type { Checked, Problem } from '#shared/checked.ts';
import { inches, type Length, millimetres } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';

/** Seen from its good side as it is cut: x to the right and y down from its top left corner. */
export interface SetPart extends Size {
  readonly name: string;
  readonly copies: number;
  readonly material: Material;
  /** Its height has to run along an upright print. */
  readonly upright: boolean;
  /** The side that the grain had best run along. */
  readonly grain?: 'width' | 'height';
  /** In the order they are made. */
  readonly scores: readonly Score[];
  /** In plain numbers, where it isn't the whole rectangle. */
  readonly outline?: Polygon;
  readonly notes: readonly string[];
}

export type Material = 'cardstock' | 'paper' | 'ribbon';

/** A line straight across the part, parallel to the edge that it is measured from. */
export interface Score {
  readonly from: 'left' | 'top';
  readonly at: Length;
}

export interface Wanted {
  readonly copies: number;
  /** The paper has a print that may not lie sideways. */
  readonly upright?: boolean;
}

/** What a part is published on: 64ths of an inch, or ½ mm for a tool whose ruler has millimetres. */
export const gridOf = ({ graduation }: { readonly graduation: Length }): Length =>
  graduation % SIXTY_FOURTH === 0 ? SIXTY_FOURTH : millimetres(0.5);

export const SIXTY_FOURTH = inches(1 / 64);

/** Parts as a plan takes them; what is no paper is left out. Parts of one name are numbered. */
export function toOrder(parts: readonly SetPart[]): Part[] {
  const paper = parts.filter((part) => part.material !== 'ribbon');
  return paper.map((part, index) => ({
    id: uniqueName(part.name, paper.slice(0, index)),
    width: part.width,
    height: part.height,
    copies: part.copies,
    ...(part.upright ? { upright: true } : {}),
  }));
}

/** What is cut out: the part's own outline or its whole rectangle. */
export const outlineOf = (part: SetPart): Polygon => part.outline ?? rectangle(0, 0, part.width, part.height);

/** Its scores as lines from edge to edge, in their order. */
export const scoreLines = ({ scores, width, height }: SetPart): Line[] =>
  scores.map(({ from, at }) =>
    from === 'left'
      ? { from: point(at, 0), to: point(at, height) }
      : { from: point(0, at), to: point(width, at) },
  );

/** The value, unless something is wrong with what it is made from; then every problem at once. */
export function ifSound<T>(problems: readonly Problem[], make: () => T): Checked<T> {
  return problems.length === 0 ? { ok: true, value: make() } : { ok: false, problems };
}

/** Problems of a size whose sides have to be more than nothing. */
export const sizeProblems = (size: Size, field = ''): Problem[] =>
  (['width', 'height'] as const)
    .filter((side) => !(size[side] > 0))
    .map((side) => ({ field: field + side, message: 'This has to be more than zero.' }));

/** The problem with a measure that may be nothing but not less, as a list to spread. */
export const negativeProblem = (value: Length, field: string, what: string): Problem[] =>
  value < 0 ? [{ field, message: `${what} can’t be negative.` }] : [];

const MOST_COPIES = 10_000;

export const copiesProblem = ({ copies }: Wanted): Problem[] =>
  Number.isInteger(copies) && copies >= 1 && copies <= MOST_COPIES
    ? []
    : [{ field: 'copies', message: `Type a whole number from 1 to ${MOST_COPIES}.` }];

function uniqueName(name: string, before: readonly SetPart[]): string {
  const earlier = before.filter((part) => part.name === name).length;
  return earlier === 0 ? name : `${name} ${earlier + 1}`;
}
