/**
 * Notches that hold a ribbon on two opposite edges of a panel and of the base under it, in line with each other. Knows
 * no ribbon's length; that is a wrap.
 */
import { type Point, point } from '#core/geometry/point.ts';
import type { Checked, Problem } from '#shared/checked.ts';
import { add, inches, type Length, length, subtract } from '#shared/length.ts';
import { type Size, turned } from '#shared/size.ts';
import { copiesProblem, ifSound, negativeProblem, type SetPart, sizeProblems, type Wanted } from './part.ts';

export interface NotchWish extends Wanted {
  readonly panel: Size;
  /** The piece that the panel sits on, centred; the same size when there is none. */
  readonly base: Size;
  /** Top and bottom: `at` is told from the left edge. Left and right: from the top edge. */
  readonly edges: 'top and bottom' | 'left and right';
  /** To the middle of the panel's notch. */
  readonly at: Length;
  readonly ribbon: Length;
  /** How far a notch is cut in. */
  readonly depth?: Length;
}

export interface Notched extends SetPart {
  /** To the middle of either notch, both from the same edge. */
  readonly notchAt: Length;
}

export interface NotchedPair {
  readonly panel: Notched;
  readonly base: Notched;
}

/**
 * Panel and base with two notches each. The base's are the panel's plus the margin that shows between their edges,
 * rounded down by at most 25 nm when the two sizes differ by an odd number.
 */
export function notchedPair(wish: NotchWish): Checked<NotchedPair> {
  const problems = [
    ...sizeProblems(wish.panel, 'panel.'),
    ...sizeProblems(wish.base, 'base.'),
    ...copiesProblem(wish),
    ...notchProblems(wish),
  ];
  return ifSound(problems, () => ({
    panel: notched('Front panel', wish.panel, wish.at, wish),
    base: notched('Base', wish.base, add(wish.at, marginOf(wish)), wish),
  }));
}

const NOTCH_DEPTH = inches(1 / 16);

const FLIP: Readonly<Record<NotchWish['edges'], string>> = {
  'top and bottom':
    'Notch the top edge, flip the piece top over bottom, and notch the other edge at the same measure.',
  'left and right':
    'Notch the left edge, flip the piece like a page, and notch the other edge at the same measure.',
};

const WHY = 'Don’t turn it round: the second notch would lie at the wrong end.';

const along = (size: Size, { edges }: Pick<NotchWish, 'edges'>): Length =>
  edges === 'top and bottom' ? size.width : size.height;

const across = (size: Size, { edges }: Pick<NotchWish, 'edges'>): Length =>
  edges === 'top and bottom' ? size.height : size.width;

const marginOf = (wish: NotchWish): Length =>
  length(Math.floor((along(wish.base, wish) - along(wish.panel, wish)) / 2));

const depthOf = ({ depth }: NotchWish): Length => depth ?? NOTCH_DEPTH;

function notched(name: string, size: Size, at: Length, wish: NotchWish): Notched {
  return {
    ...size,
    name,
    copies: wish.copies,
    material: name === 'Base' ? 'cardstock' : 'paper',
    upright: wish.upright ?? false,
    scores: [],
    outline: outlineOf(size, at, wish),
    notchAt: at,
    notes: [FLIP[wish.edges], WHY],
  };
}

/** The rectangle with a notch as wide as the ribbon in each of the two edges. */
function outlineOf(size: Size, at: Length, wish: NotchWish): Point[] {
  const lying = wish.edges === 'top and bottom' ? size : turned(size);
  const [from, to, depth] = [at - wish.ribbon / 2, at + wish.ribbon / 2, depthOf(wish)];
  const corners = [
    point(0, 0),
    point(from, 0),
    point(from, depth),
    point(to, depth),
    point(to, 0),
    point(lying.width, 0),
    point(lying.width, lying.height),
    point(to, lying.height),
    point(to, lying.height - depth),
    point(from, lying.height - depth),
    point(from, lying.height),
    point(0, lying.height),
  ];
  return wish.edges === 'top and bottom' ? corners : corners.map(({ x, y }) => point(y, x)).reverse();
}

function notchProblems(wish: NotchWish): Problem[] {
  const [panel, base] = [along(wish.panel, wish), along(wish.base, wish)];
  const room = subtract(panel, wish.at);
  const outside = 2 * wish.at < wish.ribbon || 2 * room < wish.ribbon;
  const tooDeep = 2 * depthOf(wish) >= across(wish.panel, wish);
  return [
    ...(panel > base || across(wish.panel, wish) > across(wish.base, wish)
      ? [{ field: 'base.width', message: 'The panel is larger than its base: the margin would be negative.' }]
      : []),
    ...(wish.ribbon > 0 ? [] : [{ field: 'ribbon', message: 'This has to be more than zero.' }]),
    ...(outside ? [{ field: 'at', message: 'Here the notch would leave the panel.' }] : []),
    ...negativeProblem(depthOf(wish), 'depth', 'A depth'),
    ...(tooDeep ? [{ field: 'depth', message: 'Two notches this deep would meet.' }] : []),
  ];
}
