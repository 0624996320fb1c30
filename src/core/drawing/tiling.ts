/**
 * How a true-size piece goes onto sheets for a printer: whole where it fits, else in equal tiles that overlap, with
 * marks to lay them on each other by. Knows sizes only, not what is drawn.
 */
import { type Point, point } from '#core/geometry/point.ts';
import { inches, type Length, length, millimetres } from '#shared/length.ts';
import { type Size, turned } from '#shared/size.ts';

export const PAPERS = {
  letter: { width: inches(8.5), height: inches(11), name: 'Letter' },
  a4: { width: millimetres(210), height: millimetres(297), name: 'A4' },
  '12x12': { width: inches(12), height: inches(12), name: '12 × 12' },
} as const satisfies Record<string, Size & { name: string }>;

export type PaperName = keyof typeof PAPERS;

/** What no printer is asked to reach. */
export const MARGIN = inches(1 / 4);
/** Along the top of each sheet, for its check bars and words. */
export const HEAD = millimetres(25);
/** What two neighbouring tiles both show. */
export const OVERLAP = inches(1 / 2);

export interface Tiling {
  /** As it lies for printing, upright or turned. */
  readonly page: Size;
  readonly columns: number;
  readonly rows: number;
  /** Row by row. */
  readonly tiles: readonly Tile[];
  readonly marks: readonly Mark[];
}

/** A rectangle of the piece, and where its top left corner lies on the page. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly onPage: Point;
}

/** A place on the piece that both tiles show, each counted from 0. */
export interface Mark {
  readonly at: Point;
  readonly tiles: readonly [number, number];
}

/** On as few sheets as upright or turned paper allows; in plain numbers of 25 nm. Throws on a piece without size. */
export function tilingOf(piece: { width: number; height: number }, paper: Size): Tiling {
  if (!(piece.width > 0 && piece.height > 0)) {
    throw new Error(`invalid piece: ${piece.width} × ${piece.height}`);
  }
  const [upright, lying] = [countsOn(paper, piece), countsOn(turned(paper), piece)];
  const { page, columns, rows } =
    lying.columns * lying.rows < upright.columns * upright.rows ? lying : upright;
  const tiles = grid(columns, rows).map(({ column, row }) =>
    tileAt(column, row, { page, columns, rows, piece }),
  );
  return { page, columns, rows, tiles, marks: tiles.flatMap((tile) => marksOf(tile, columns, rows)) };
}

const roomOn = ({ width, height }: Size): Size => ({
  width: length(width - 2 * MARGIN),
  height: length(height - 2 * MARGIN - HEAD),
});

function countsOn(page: Size, piece: { width: number; height: number }) {
  const room = roomOn(page);
  return { page, columns: count(piece.width, room.width), rows: count(piece.height, room.height) };
}

/** A hair over still fits: clipping rounds. */
const count = (needed: number, room: Length): number =>
  needed <= room + 2 ? 1 : Math.ceil((needed - OVERLAP) / (room - OVERLAP));

const grid = (columns: number, rows: number): { column: number; row: number }[] =>
  Array.from({ length: columns * rows }, (_, index) => ({
    column: index % columns,
    row: Math.floor(index / columns),
  }));

interface Laid extends Pick<Tiling, 'page' | 'columns' | 'rows'> {
  readonly piece: { readonly width: number; readonly height: number };
}

/** All tiles are alike, each in the middle of the room on its page. */
function tileAt(column: number, row: number, { page, columns, rows, piece }: Laid): Tile {
  const room = roomOn(page);
  const width = (piece.width + (columns - 1) * OVERLAP) / columns;
  const height = (piece.height + (rows - 1) * OVERLAP) / rows;
  return {
    column,
    row,
    x: column * (width - OVERLAP),
    y: row * (height - OVERLAP),
    width,
    height,
    onPage: point(MARGIN + (room.width - width) / 2, MARGIN + HEAD + (room.height - height) / 2),
  };
}

/** Two in the overlap with the tile to the right, and two in that with the tile below. */
function marksOf({ column, row, x, y, width, height }: Tile, columns: number, rows: number): Mark[] {
  const index = row * columns + column;
  const shares = [1 / 4, 3 / 4];
  const right = shares.map(
    (share): Mark => ({
      at: point(x + width - OVERLAP / 2, y + height * share),
      tiles: [index, index + 1],
    }),
  );
  const below = shares.map(
    (share): Mark => ({
      at: point(x + width * share, y + height - OVERLAP / 2),
      tiles: [index, index + columns],
    }),
  );
  return [...(column < columns - 1 ? right : []), ...(row < rows - 1 ? below : [])];
}
