/**
 * What would make room for parts that a plan leaves out: turning one, another sheet, a smaller part, other paper. Judges
 * by sizes alone, so a remedy may still meet a crowded piece; knows no plan.
 */
import type { Remedy } from './cuts.ts';
import { mayTurn, type Part, type Piece, suits } from './order.ts';

/** The remedies for `missing` copies of a part, the least trouble first; empty where only luck is lacking. */
export function remediesFor(
  part: Part,
  missing: number,
  pieces: readonly Piece[],
  longestCut = Infinity,
): Remedy[] {
  const suitable = pieces.filter((piece) => suits(part, piece));
  if (suitable.length === 0) return [{ kind: 'paper' }];
  const holding = suitable.filter((piece) => fits(part, piece, mayTurn(part, piece)));
  const cuttable = holding.filter((piece) => Math.min(piece.width, piece.height) <= longestCut);
  if (cuttable.length > 0) return another(part, missing, cuttable);
  const turning = suitable.find((piece) => !part.pin && fits(part, piece, true));
  const smaller = largestThatFits(part, suitable);
  return [
    ...(turning ? [{ kind: 'turned', piece: turning.id } as const] : []),
    ...(smaller ? [smaller] : []),
  ];
}

/** More of the piece that takes fewest copies: sheets before offcuts, which cannot be bought. */
function another(part: Part, missing: number, holding: readonly Piece[]): Remedy[] {
  const sheets = holding.filter((piece) => piece.kind === 'sheet');
  const choices = (sheets.length > 0 ? sheets : holding).map((piece) => ({
    piece: piece.id,
    copies: Math.ceil(missing / Math.max(1, inRows(part, piece))),
  }));
  const fewest = choices.reduce((best, one) => (one.copies < best.copies ? one : best));
  return [{ kind: 'another', ...fewest }];
}

/** How many copies a piece gives in plain rows, lying either way; one where they are pinned. */
function inRows(part: Part, piece: Piece): number {
  if (part.pin) return 1;
  const rows = (width: number, height: number): number =>
    Math.floor(piece.width / width) * Math.floor(piece.height / height);
  const asIs = rows(part.width, part.height);
  return mayTurn(part, piece) ? Math.max(asIs, rows(part.height, part.width)) : asIs;
}

const fits = (part: Part, piece: Piece, turning: boolean): boolean =>
  (part.width <= piece.width && part.height <= piece.height) ||
  (turning && part.height <= piece.width && part.width <= piece.height);

/** The largest size, by area, to which the part could be cut down, side by side, on some piece. */
function largestThatFits(part: Part, pieces: readonly Piece[]): Remedy | undefined {
  let best: { width: number; height: number } | undefined;
  for (const piece of pieces) {
    const sizes = [{ width: Math.min(part.width, piece.width), height: Math.min(part.height, piece.height) }];
    if (mayTurn(part, piece)) {
      sizes.push({ width: Math.min(part.width, piece.height), height: Math.min(part.height, piece.width) });
    }
    for (const size of sizes) if (!best || size.width * size.height > best.width * best.height) best = size;
  }
  return best && { kind: 'smaller', ...best };
}
