/**
 * From a batch to what the planner is asked: an order of parts, and the pieces on the shelf that may be cut. Joins
 * projects, shelf and the maker's limits; searches for nothing.
 */
import { type Order, type Part, type Piece, suits } from '#core/cutting/order.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Problem } from '#shared/checked.ts';
import { type Length, printSize, type Units } from '#shared/length.ts';
import { areaOf, type Size } from '#shared/size.ts';
import { type Batch, blankName, type PaperAsked, type PartAsked, partNames } from './batch.ts';
import { blankWanted } from './fitting.ts';
import type { Project } from './journal.ts';
import { sizeOf } from './measured.ts';
import { type PieceRef, refOf, type Piece as ShelfPiece } from './stash.ts';
import { canHold, type Suitable, suitableFor } from './suitable.ts';

/** What the planner is asked; lengths are whole numbers of 25 nm. */
export interface Cutting extends Suitable {
  readonly order: Order;
}

export interface Shelf {
  readonly pieces: readonly ShelfPiece[];
  /** The maker's trimmer and what she still keeps. */
  readonly longestCut: Length;
  readonly keepAtLeast: Length;
}

/** What is planned within the time limit, and more than a table can hold. */
const MOST_COPIES = 2000;

/**
 * Projects without a recipe add nothing. Only pieces that some part may come from are handed on, so that a long shelf
 * costs nothing, and not too many of them; what is to be kept stays among them, marked.
 */
export function cuttingOf(batch: Batch, projects: readonly Project[], shelf: Shelf): Cutting {
  const parts = [...blankParts(batch, projects, shelf), ...typedParts(batch, shelf)];
  const kept = new Set(batch.keep);
  const pieces = shelf.pieces
    .filter((piece) => piece.count > 0)
    .map((piece) => ({ ...toPiece(piece), ...(kept.has(pieceName(refOf(piece))) && { keep: true }) }));
  const { longestCut, keepAtLeast } = shelf;
  return { order: { parts, longestCut, keepAtLeast }, ...suitableFor(parts, pieces) };
}

/**
 * Why parts have no hope whatever the plan: no such paper, or none large enough. Fields are `paper` and `blanks` for the
 * envelopes, `parts.2.paper`, `parts.2.width` and the like for what was typed in.
 */
export function hopeless(batch: Batch, { order }: Cutting, shelf: Shelf, units: Units): Problem[] {
  if (order.parts.length === 0) {
    return [{ field: 'blanks', message: 'There is nothing to cut: ask for envelopes, or add a part.' }];
  }
  const copies = order.parts.reduce((sum, part) => sum + part.copies, 0);
  if (copies > MOST_COPIES) {
    return [
      {
        field: 'blanks',
        message: `That is ${copies} parts in all; at most ${MOST_COPIES} are planned at once.`,
      },
    ];
  }
  const kept = new Set(batch.keep);
  const pieces = shelf.pieces
    .filter((piece) => piece.count > 0 && !kept.has(pieceName(refOf(piece))))
    .map(toPiece);
  if (pieces.length === 0) return [{ field: 'keep', message: 'There is no paper left to cut from.' }];
  const typed = order.parts.length - batch.parts.length;
  return order.parts.flatMap((part, index) => {
    const of = (field: string): string => `parts.${index - typed}.${field}`;
    const [paper, size] = index < typed ? ['paper', 'blanks'] : [of('paper'), of('width')];
    const suitable = pieces.filter((piece) => suits(part, piece));
    if (suitable.length === 0) return [{ field: paper, message: noPaper(part) }];
    if (suitable.some((piece) => canHold(part, piece))) return [];
    const over = overEdge(part, suitable);
    if (over) return [{ field: of(over), message: runsOver(part, suitable, units) }];
    return [{ field: size, message: tooLarge(part, suitable, units) }];
  });
}

/** The name of a piece in an order: sheets of a design, or an offcut. */
export const pieceName = ({ design, offcut }: PieceRef): string =>
  offcut === null ? `sheet-${design}` : `offcut-${offcut}`;

/** The piece on the shelf that a piece of an order stands for. */
export const refOfPiece = ({ id, design }: Piece): PieceRef => ({
  design: Number(design),
  offcut: id.startsWith('offcut-') ? Number(id.slice('offcut-'.length)) : null,
});

/** As the planner sees it: the printed border is its bottom edge, and no other edge counts. */
export const toPiece = (piece: ShelfPiece): Piece => ({
  id: pieceName(refOf(piece)),
  width: piece.width,
  height: piece.height,
  kind: piece.offcut ? 'offcut' : 'sheet',
  copies: piece.count,
  design: `${piece.design.id}`,
  edges: piece.border ? ['bottom'] : [],
  ...(piece.design.print.direction !== 'any way' && { upright: true }),
});

const MATCH = 'set';

function blankParts(batch: Batch, projects: readonly Project[], shelf: Shelf): Part[] {
  const matched = batch.match === 'all alike' || batch.parts.some((part) => part.match);
  return batch.blanks.flatMap(({ project: id, copies }, index) => {
    const project = projects.find((one) => one.id === id);
    if (!project?.recipe || copies === 0) return [];
    const { recipe, look } = project;
    const own = index === 0;
    const together = matched && (own || batch.match === 'all alike');
    const { blanks } = foldOf(recipe);
    const first = blanks(recipe).findIndex((blank) => sameSize(blank, recipe.blank));
    return blanks(recipe).map((blank, piece) => {
      const wanted = blankWanted(recipe, look ?? undefined, blank);
      const border = wanted.border === true && piece === first;
      return {
        id: blankName(own, id, piece),
        width: blank.width,
        height: blank.height,
        copies,
        ...(!wanted.mayTurn && { upright: true }),
        ...designsFor({ paper: batch.paper, border, grammage: null }, shelf),
        ...(border && { pin: { edge: 'bottom' as const } }),
        ...(together ? matching(batch, MATCH) : blanks(recipe).length > 1 && { match: `${MATCH} ${id}` }),
      };
    });
  });
}

const sameSize = (one: Size, other: Size): boolean =>
  one.width === other.width && one.height === other.height;

function typedParts(batch: Batch, shelf: Shelf): Part[] {
  const names = partNames(batch.parts);
  return batch.parts.map((part, index) => ({
    id: names[index]!,
    width: part.width,
    height: part.height,
    copies: part.copies,
    ...(part.print === 'upright' && { upright: true }),
    ...designsFor({ paper: part.paper, border: part.print === 'bordered', grammage: part.grammage }, shelf),
    ...(part.print === 'bordered' && { pin: { edge: 'bottom' as const } }),
    ...(part.at && { pin: part.at }),
    ...(part.match && matching(batch, MATCH)),
  }));
}

const matching = (batch: Batch, match: string) => ({
  match,
  ...(batch.match === 'all alike' && { oneDesign: true }),
});

interface PaperWish {
  readonly paper: PaperAsked;
  readonly border: boolean;
  readonly grammage: PartAsked['grammage'];
}

/** The designs that will do; bordered ones only where the border or the design itself is asked for. */
function designsFor({ paper, border, grammage }: PaperWish, shelf: Shelf): { designs?: string[] } {
  const all = new Map(shelf.pieces.map(({ design }) => [design.id, design]));
  const designs = [...all.values()].filter(({ id, pad, print }) => {
    if (paper.of === 'design' && id !== paper.design) return false;
    if (paper.of === 'kind' && pad.kind !== paper.kind) return false;
    if (grammage !== null && (pad.grammage ?? 0) < grammage) return false;
    return border ? print.direction === 'one edge' : paper.of === 'design' || print.direction !== 'one edge';
  });
  return designs.length === all.size ? {} : { designs: designs.map(({ id }) => `${id}`) };
}

function noPaper({ pin }: Part): string {
  if (!pin) return 'There is none of this paper on the shelf.';
  return 'edge' in pin
    ? 'No paper with a border is left that would do.'
    : 'A spot of the sheet needs a whole sheet, and none of this paper is left.';
}

const largestOf = (pieces: readonly Piece[]): Piece =>
  pieces.reduce((best, one) => (areaOf(one) > areaOf(best) ? one : best));

/** Which distance is too long, where the part has a spot and would fit at another. */
function overEdge(part: Part, suitable: readonly Piece[]): 'fromLeft' | 'fromTop' | undefined {
  if (!part.pin || !('x' in part.pin)) return undefined;
  const fitsAt = (x: number, y: number): boolean =>
    suitable.some((piece) => canHold({ ...part, pin: { x, y } }, piece));
  if (!fitsAt(0, 0)) return undefined;
  return fitsAt(part.pin.x, 0) ? 'fromTop' : 'fromLeft';
}

const runsOver = (part: Part, suitable: readonly Piece[], units: Units): string =>
  `${printSize(sizeOf(part), units)} from there runs over the edge of the sheet, which is ${printSize(sizeOf(largestOf(suitable)), units)}.`;

function tooLarge(part: Part, suitable: readonly Piece[], units: Units): string {
  const largest = largestOf(suitable);
  const says = `${printSize(sizeOf(part), units)} is larger than any of this paper; the largest piece is ${printSize(sizeOf(largest), units)}.`;
  const turning = !part.pin && suitable.some((piece) => canHold({ ...part, upright: false }, piece));
  return turning ? `${says} Lying any way it would fit.` : says;
}
