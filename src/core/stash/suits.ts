/**
 * Whether paper on the shelf suits what is to be cut, and if it does not, why: every page asks here. A border or a
 * direction says where a part may lie and leaves no paper out. Knows one piece at a time and no words.
 *
 * What does not ask for a border lies beside it and never carries it; what asks for it has it along its bottom edge, so it
 * comes from pieces that still have one. Only a part from a spot of the sheet may carry whatever is printed there.
 */
import { canPart } from '#core/cutting/border.ts';
import { type Length, length } from '#shared/length.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import { holds, longer, type Size, shorter, turned } from '#shared/size.ts';
import { borderOf, type Design, type Piece } from './stash.ts';

/** What is to be cut. `mayTurn`: the print may lie along or across. */
export interface PaperWanted extends Size {
  readonly mayTurn: boolean;
  /** The printed border lies along its bottom edge; it is then never turned. */
  readonly border?: boolean;
  readonly kinds?: readonly PaperKind[];
  readonly designs?: readonly number[];
  /** Lightest paper that will do, in g/m². */
  readonly grammage?: number;
  /** Its top left corner on a whole sheet; it is then never turned. */
  readonly at?: { readonly x: Length; readonly y: Length };
}

/** Why a piece does not do. `beside`: it has a border, and would be large enough with it. */
export type Unsuited =
  | { readonly why: 'other paper' }
  | { readonly why: 'too light' }
  | { readonly why: 'no border' }
  | { readonly why: 'no whole sheet' }
  | { readonly why: 'too small'; readonly beside: boolean }
  | { readonly why: 'border too long' };

/** Undefined where it suits. `longestCut` of the trimmer that is to cut the border off; any will do when absent. */
export function unsuited(
  wanted: PaperWanted,
  piece: Piece,
  tool: { readonly longestCut?: Length } = {},
): Unsuited | undefined {
  const paper = unsuitedDesign(wanted, piece.design);
  if (paper) return paper;
  if (wanted.border && !piece.border) return { why: 'no border' };
  if (wanted.at && piece.offcut) return { why: 'no whole sheet' };
  const room = roomFor(wanted, piece);
  const lies = waysToLie(wanted, piece);
  if (!lies.some((blank) => holds(room, blank)))
    return { why: 'too small', beside: lies.some((blank) => holds(wholeOf(wanted, piece), blank)) };
  const bordered = { width: piece.width, height: piece.height, border: piece.height - room.height };
  return wanted.at || canPart(bordered, tool) ? undefined : { why: 'border too long' };
}

/** The same of a design, whatever pieces of it there are. */
export function unsuitedDesign(
  { kinds, designs, grammage, border }: PaperWanted,
  { id, pad, print }: Design,
): Unsuited | undefined {
  if (designs && !designs.includes(id)) return { why: 'other paper' };
  if (kinds && !kinds.includes(pad.kind)) return { why: 'other paper' };
  if (grammage !== undefined && (pad.grammage ?? 0) < grammage) return { why: 'too light' };
  return border && print.direction !== 'one edge' ? { why: 'no border' } : undefined;
}

/** The part of the piece in which it may lie: right of and under its spot, and above a border that it does not ask for. */
export const roomFor = (wanted: PaperWanted, piece: Piece): Size => {
  const whole = wholeOf(wanted, piece);
  if (wanted.border || wanted.at) return whole;
  return { ...whole, height: length(Math.max(0, whole.height - borderOf(piece))) };
};

const wholeOf = ({ at }: PaperWanted, { width, height }: Size): Size => ({
  width: length(Math.max(0, width - (at?.x ?? 0))),
  height: length(Math.max(0, height - (at?.y ?? 0))),
});

/** As it lies on the upright piece. */
export function waysToLie({ width, height, ...wanted }: PaperWanted, { design }: Piece): Size[] {
  const blank = { width, height };
  const fixed = wanted.border || wanted.at !== undefined;
  const free = !fixed && (wanted.mayTurn || design.print.direction === 'any way');
  return free && width !== height ? [blank, turned(blank)] : [blank];
}

/** What the piece lacks for one of it, lying the way that lacks least on its worse side. */
export function shortfall(piece: Piece, wanted: PaperWanted): Size {
  const room = roomFor(wanted, piece);
  const lacks = waysToLie(wanted, piece).map((blank) => ({
    width: length(Math.max(0, blank.width - room.width)),
    height: length(Math.max(0, blank.height - room.height)),
  }));
  return lacks.reduce((best, lack) => (byShortfall(best, lack) <= 0 ? best : lack));
}

/** What lacks least on its worse side first, then what lacks least on the other. */
export const byShortfall = (one: Size, other: Size): number =>
  longer(one) - longer(other) || shorter(one) - shorter(other);
