/** What lies on the shelf and every line of its ledger, as values. Knows no database and nothing of who uses the paper. */
import type { CutTree } from '#core/cutting/cuts.ts';
import { type Length, length } from '#shared/length.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { Print } from '#shared/print.ts';
import { type SheetAsIs, usableSheet } from '#shared/sheet.ts';
import type { Size } from '#shared/size.ts';
import type { Swatch } from '#shared/swatch.ts';

/** `grammage` in g/m², null when not known. A pad is low when all its sheets together are no more than `lowMark`. */
export interface NewPad extends SheetAsIs {
  readonly name: string;
  readonly kind: PaperKind;
  readonly grammage: number | null;
  readonly lowMark: number;
  /** Where it came from. */
  readonly source: string;
  readonly note: string;
  readonly price?: PadPrice | null;
}

/** In hundredths of her money, for so many sheets. */
export interface PadPrice {
  readonly hundredths: number;
  readonly sheets: number;
}

export interface Pad extends NewPad {
  readonly id: number;
}

export interface NewDesign {
  readonly name: string;
  readonly print: Print;
  readonly doubleSided: boolean;
  readonly swatch: Swatch;
  /** Its own; without one its share of the pad's counts. 0 asks for no reminder. */
  readonly lowMark?: number | null;
}

/** `print` is how it lies on what can be used of the pad's sheets and of all that was cut from them. */
export interface Design extends NewDesign {
  readonly id: number;
  /** How it lies on the whole sheet, where the strip takes some of its border. */
  readonly wholePrint?: Print;
  readonly pad: Pad;
  readonly sheets: number;
  /** It runs low at so many sheets, or fewer; null asks for no reminder. */
  readonly lowAt?: number | null;
}

export interface PadWithDesigns {
  readonly pad: Pad;
  readonly designs: readonly Design[];
  /** Of all its designs together. */
  readonly sheets: number;
}

/** Height along the print; `border`: still has the printed border of a one-edge design along its bottom edge. */
export interface NewOffcut extends Size {
  readonly border: boolean;
  readonly place: string;
  readonly note: string;
}

/** `code` is pencilled on its back; `count` of them are alike, 0 once they are gone. */
export interface Offcut extends NewOffcut {
  readonly id: number;
  readonly code: string;
  readonly design: Design;
  readonly count: number;
}

/** Sheets of a design (`offcut` null) or an offcut. */
export interface PieceRef {
  readonly design: number;
  readonly offcut: number | null;
}

/** A sheet or an offcut that may be cut, `count` of them alike. */
export interface Piece extends Size {
  readonly design: Design;
  readonly offcut: Offcut | null;
  readonly border: boolean;
  readonly count: number;
}

/** What can be used of a sheet; a strip that can't is cut off it first. */
export const pieceOfSheet = (design: Design): Piece => ({
  ...usableSheet(design.pad),
  design,
  offcut: null,
  border: design.print.direction === 'one edge',
  count: design.sheets,
});

export const pieceOfOffcut = (offcut: Offcut): Piece => ({
  width: offcut.width,
  height: offcut.height,
  design: offcut.design,
  offcut,
  border: offcut.border && offcut.design.print.direction === 'one edge',
  count: offcut.count,
});

/** Depth of the printed border along its bottom edge; 0 where it has none. */
export const borderOf = ({ design: { print }, border }: Piece): Length =>
  border && print.direction === 'one edge' ? print.border : length(0);

export const refOf = (piece: Piece): PieceRef => ({
  design: piece.design.id,
  offcut: piece.offcut?.id ?? null,
});

/** As it lies on its piece: `x` right and `y` down from the upright piece's top left corner. */
export interface Rectangle extends Size {
  readonly x: Length;
  readonly y: Length;
}

/** The name, in any cut, of the parts that become envelopes. */
export const ENVELOPE_PART = 'envelope';

/** Width and height as it lies, so swapped when `turned`. `project` is what it is for, where not the cut's own. */
export interface PartCut extends Rectangle {
  readonly part: string;
  readonly turned: boolean;
  readonly project?: number;
}

/** What goes back to the shelf, and where it is put. */
export interface LeftoverCut extends Rectangle {
  readonly border: boolean;
  readonly place: string;
}

/** How one piece is cut up: what comes off it and what is left. The size is the piece's as the cutter knew it. */
export interface PieceCut extends Size {
  readonly piece: PieceRef;
  readonly parts: readonly PartCut[];
  readonly leftovers: readonly LeftoverCut[];
  readonly cuts: CutTree;
}

export type MovementKind =
  | 'bought'
  | 'counted'
  | 'cut'
  | 'left over'
  | 'spoiled'
  | 'binned'
  | 'put back'
  | 'withdrawn';

/** One line of the ledger. `reverses` is the line it undoes; `reversedBy` the one that undoes it. */
export interface Movement {
  readonly id: number;
  readonly at: string;
  readonly kind: MovementKind;
  readonly piece: PieceRef;
  readonly delta: number;
  readonly project: number | null;
  readonly cut: number | null;
  readonly reverses: number | null;
  readonly reversedBy: number | null;
  readonly note: string;
}

/** Paper that went off the shelf by hand. */
export const wentByHand = ({ kind }: Pick<Movement, 'kind'>): boolean =>
  kind === 'binned' || kind === 'spoiled';

/** What may be undone line by line: a count is put right by counting again, a cut is undone at its project. */
export const isByHand = (line: Pick<Movement, 'kind'>): boolean => line.kind === 'bought' || wentByHand(line);

/** Why a movement or a cut cannot be undone. */
export type Overtaken =
  | { readonly refused: 'undone already'; readonly at: string | null }
  | { readonly refused: 'counted since'; readonly piece: PieceRef; readonly at: string }
  | {
      readonly refused: 'gone since';
      readonly piece: PieceRef;
      readonly kind: MovementKind;
      readonly at: string;
    }
  | {
      readonly refused: 'used since';
      readonly piece: PieceRef;
      readonly project: { readonly id: number; readonly title: string };
      readonly at: string;
    }
  | { readonly refused: 'too few left'; readonly piece: PieceRef; readonly left: number }
  | { readonly refused: 'made since'; readonly envelope: number };
