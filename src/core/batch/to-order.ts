/**
 * From a batch to what the planner is asked: an order of parts, and the pieces on the shelf that may be cut. Joins
 * projects, shelf and the maker's limits; searches for nothing.
 */
import { foldOf } from '#core/envelope/folds.ts';
import { blankWanted } from '#core/project/fitting.ts';
import type { Project } from '#core/project/journal.ts';
import { type LeftOut, leftOutOf } from '#core/stash/left-out.ts';
import { borderOf, type PieceRef, refOf, type Piece as ShelfPiece } from '#core/stash/stash.ts';
import { type Suitable, suitableFor } from '#core/stash/suitable.ts';
import { type PaperWanted, roomFor, unsuited, unsuitedDesign } from '#core/stash/suits.ts';
import type { PaperAsked } from '#shared/batch.ts';
import type { Problem } from '#shared/checked.ts';
import { type Length, length, printExactSize, type Units } from '#shared/length.ts';
import { areaOf, type Size } from '#shared/size.ts';
import { type Batch, blankName, partNames } from './batch.ts';
import type { BatchOrder, OfferedPiece, OrderedPart } from './identity.ts';

/** What the planner is asked, and the paper that it is not asked about; lengths are whole numbers of 25 nm. */
export interface Cutting extends Suitable<OfferedPiece> {
  readonly order: BatchOrder;
  readonly leftOut: readonly LeftOut[];
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
  const asked = askedFor(batch, projects, shelf);
  const kept = new Set(batch.keep);
  const judged = onShelf(shelf).map((piece) => ({
    piece,
    kept: kept.has(pieceName(refOf(piece))),
    why: asked.map(({ wanted }) => unsuited(wanted, piece, shelf)),
  }));
  const pieces = judged.map((one) => ({ ...toPiece(one.piece), ...(one.kept && { keep: true }) }));
  const whyOf = new Map(judged.map(({ why }, index) => [pieces[index]!, why]));
  const parts = asked.map(({ part }) => part);
  const { longestCut, keepAtLeast } = shelf;
  return {
    order: { parts, longestCut, keepAtLeast },
    ...suitableFor(parts.length, pieces, (part, piece) => whyOf.get(piece)![part] === undefined),
    leftOut: leftOutOf(
      parts.map(({ id }) => id),
      judged,
    ),
  };
}

const onShelf = ({ pieces }: Shelf): ShelfPiece[] => pieces.filter(({ count }) => count > 0);

/**
 * Why parts have no hope whatever the plan: no such paper, or none large enough. Fields are `paper` and `blanks` for the
 * envelopes, `parts.2.paper`, `parts.2.width` and the like for what was typed in.
 */
export function hopeless(batch: Batch, projects: readonly Project[], shelf: Shelf, units: Units): Problem[] {
  const asked = askedFor(batch, projects, shelf);
  if (asked.length === 0) {
    return [{ field: 'blanks', message: 'There is nothing to cut: ask for envelopes, or add a part.' }];
  }
  const copies = asked.reduce((sum, { part }) => sum + part.copies, 0);
  if (copies > MOST_COPIES) {
    return [
      {
        field: 'blanks',
        message: `That is ${copies} parts in all; at most ${MOST_COPIES} are planned at once.`,
      },
    ];
  }
  const kept = new Set(batch.keep);
  const pieces = onShelf(shelf).filter((piece) => !kept.has(pieceName(refOf(piece))));
  if (pieces.length === 0) return [{ field: 'keep', message: 'There is no paper left to cut from.' }];
  const typed = asked.length - batch.parts.length;
  return asked.flatMap(({ wanted }, index) => {
    const of = (field: string): string => `parts.${index - typed}.${field}`;
    const [paper, size] = index < typed ? ['paper', 'blanks'] : [of('paper'), of('width')];
    const why = pieces.map((piece) => unsuited(wanted, piece, shelf)?.why);
    if (why.includes(undefined)) return [];
    const near = pieces.filter((_, at) => why[at] === 'too small');
    if (near.length === 0) return [{ field: paper, message: noPaper(new Set(why)) }];
    const over = overEdge(wanted, near);
    if (over) return [{ field: of(over), message: runsOver(wanted, near, units) }];
    return [{ field: size, message: tooLarge(wanted, near, units) }];
  });
}

/** The name of a piece in an order: sheets of a design, or an offcut. */
export const pieceName = ({ design, offcut }: PieceRef): string =>
  offcut === null ? `sheet-${design}` : `offcut-${offcut}`;

/** As the planner sees it: the printed border lies along its bottom edge, and no other edge counts. */
export const toPiece = (piece: ShelfPiece): OfferedPiece => ({
  id: pieceName(refOf(piece)),
  width: piece.width,
  height: piece.height,
  kind: piece.offcut ? 'offcut' : 'sheet',
  copies: piece.count,
  design: `${piece.design.id}`,
  edges: piece.border ? ['bottom'] : [],
  ...(borderOf(piece) > 0 && { border: borderOf(piece) }),
  ...(piece.design.print.direction !== 'any way' && { upright: true }),
  ref: refOf(piece),
});

const MATCH = 'set';

/** A part of the order, and the same as the shelf is asked for it. */
interface Asked {
  readonly part: OrderedPart;
  readonly wanted: PaperWanted;
}

const askedFor = (batch: Batch, projects: readonly Project[], shelf: Shelf): Asked[] => [
  ...blankParts(batch, projects, shelf),
  ...typedParts(batch, shelf),
];

function blankParts(batch: Batch, projects: readonly Project[], shelf: Shelf): Asked[] {
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
      const shown = blankWanted(recipe, look ?? undefined, blank);
      const wanted = { ...shown, border: shown.border === true && piece === first, ...paperOf(batch.paper) };
      return asPart(wanted, shelf, {
        id: blankName(own, id, piece),
        of: { project: id, piece },
        copies,
        ...(together ? matching(batch, MATCH) : blanks(recipe).length > 1 && { match: `${MATCH} ${id}` }),
      });
    });
  });
}

const sameSize = (one: Size, other: Size): boolean =>
  one.width === other.width && one.height === other.height;

function typedParts(batch: Batch, shelf: Shelf): Asked[] {
  const names = partNames(batch.parts);
  return batch.parts.map(({ width, height, copies, print, paper, grammage, match, at }, index) => {
    const wanted = {
      ...{ width, height, mayTurn: print === 'any way', border: print === 'bordered' },
      ...paperOf(paper),
      ...(grammage !== null && { grammage }),
      ...(at && { at }),
    };
    return asPart(wanted, shelf, {
      id: names[index]!,
      of: { typed: index },
      copies,
      ...(match && matching(batch, MATCH)),
    });
  });
}

function asPart(
  wanted: PaperWanted,
  { pieces }: Shelf,
  { of, ...rest }: Pick<OrderedPart, 'id' | 'of' | 'copies' | 'match' | 'oneDesign'>,
): Asked {
  const { width, height, mayTurn, border, at } = wanted;
  const all = new Map(pieces.map(({ design }) => [design.id, design]));
  const suited = [...all.values()].filter((design) => !unsuitedDesign(wanted, design));
  const part = {
    ...{ ...rest, width, height },
    ...(!mayTurn && !border && { upright: true }),
    ...(suited.length < all.size && { designs: suited.map(({ id }) => `${id}`) }),
    ...(border && { pin: { edge: 'bottom' as const } }),
    ...(at && { pin: at }),
    of,
  };
  return { part, wanted };
}

const paperOf = (paper: PaperAsked): Pick<PaperWanted, 'kinds' | 'designs'> => ({
  ...(paper.of === 'kind' && { kinds: [paper.kind] }),
  ...(paper.of === 'design' && { designs: [paper.design] }),
});

const matching = (batch: Batch, match: string) => ({
  match,
  ...(batch.match === 'all alike' && { oneDesign: true }),
});

/** The reason that comes nearest to what is wanted. */
function noPaper(why: ReadonlySet<string | undefined>): string {
  if (why.has('border too long')) return 'The border of this paper is longer than your trimmer can cut off.';
  if (why.has('no whole sheet'))
    return 'A spot of the sheet needs a whole sheet, and none of this paper is left.';
  if (why.has('no border')) return 'No paper with a border is left that would do.';
  return why.has('too light')
    ? 'None of this paper on the shelf is that heavy.'
    : 'There is none of this paper on the shelf.';
}

/** Which distance is too long, where the part has a spot and would fit at another. */
function overEdge(wanted: PaperWanted, pieces: readonly ShelfPiece[]): 'fromLeft' | 'fromTop' | undefined {
  const { at } = wanted;
  if (!at) return undefined;
  const fitsAt = (x: Length, y: Length): boolean =>
    pieces.some((piece) => !unsuited({ ...wanted, at: { x, y } }, piece));
  if (!fitsAt(length(0), length(0))) return undefined;
  return fitsAt(at.x, length(0)) ? 'fromTop' : 'fromLeft';
}

const largest = (pieces: readonly ShelfPiece[], room: (piece: ShelfPiece) => Size): ShelfPiece =>
  pieces.reduce((best, one) => (areaOf(room(one)) > areaOf(room(best)) ? one : best));

const runsOver = (wanted: PaperWanted, pieces: readonly ShelfPiece[], units: Units): string =>
  `${printExactSize(wanted, units)} from there runs over the edge of the sheet, which is ${printExactSize(
    largest(pieces, (piece) => piece),
    units,
  )}.`;

function tooLarge(wanted: PaperWanted, pieces: readonly ShelfPiece[], units: Units): string {
  const room = (piece: ShelfPiece): Size => (wanted.at ? piece : roomFor(wanted, piece));
  const best = largest(pieces, room);
  const beside = room(best).height < best.height ? ' beside its border' : '';
  const says = `${printExactSize(wanted, units)} is larger than any of this paper; the largest piece is ${printExactSize(room(best), units)}${beside}.`;
  const bare = { ...wanted, mayTurn: true };
  const turning = !wanted.border && !wanted.at && pieces.some((piece) => !unsuited(bare, piece));
  if (turning) return `${says} Lying any way it would fit.`;
  const carrying = pieces.some((piece) => !wanted.at && !unsuited({ ...wanted, border: true }, piece));
  return carrying && !wanted.border ? `${says} With the border along its bottom it would fit.` : says;
}
