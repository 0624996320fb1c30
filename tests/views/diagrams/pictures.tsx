/** One function per stored picture: what a maker sees of her cards, her paper and her envelopes. */
import { cardDrawing, cardScale } from '#core/drawing/card.ts';
import type { Drawing } from '#core/drawing/drawing.ts';
import { type DrawnPiece, pieceDrawing, pieceScale } from '#core/drawing/piece.ts';
import { inches, type Units } from '#shared/length.ts';
import { MOTIFS, type Swatch } from '#shared/swatch.ts';
import { Picture } from '#views/diagrams/picture.tsx';
import { SwatchChip } from '#views/diagrams/swatch.tsx';

export const INCHES: Units = { unit: 'in', step: 16 };
export const MILLIMETRES: Units = { unit: 'mm' };

const draw = (id: string, drawing: Drawing): string => String(<Picture drawing={drawing} id={id} />);

const FERN: Swatch = { motif: 'sprigs', ground: '#f4efdf', inks: ['#4f6b4a', '#b8644a'] };

const size = (width: number, height: number) => ({ width: inches(width), height: inches(height) });
const laid = (x: number, y: number, width: number, height: number) => ({
  x: inches(x),
  y: inches(y),
  ...size(width, height),
});

export const DRAWN_CARDS = [
  { name: 'Long note', ...size(6.25, 3.25) },
  { name: 'Gift tag', ...size(2.5, 3.5) },
  { name: 'Keepsake', ...size(5, 7) },
];

export const cardLong = (): string => drawnCard(0);
export const cardTag = (): string => drawnCard(1);
export const cardKeepsake = (): string => drawnCard(2);

const drawnCard = (index: number): string =>
  draw('card', cardDrawing(DRAWN_CARDS[index]!, INCHES, cardScale(DRAWN_CARDS, 110)));

export const OFFCUT: DrawnPiece = {
  code: 'F7',
  ...size(9.5, 8.5),
  parts: [{ name: 'Blank', sign: 'B', ...laid(0, 0, 8, 8) }],
  leftovers: [laid(8, 0, 1.5, 8.5)],
  upright: true,
  swatch: FERN,
};

export const SHEET: DrawnPiece = {
  code: 'Fern walk',
  ...size(12, 12),
  parts: [
    ...[0, 1, 2, 3].map((n) => ({
      name: 'Tag blank',
      sign: 'A',
      ...laid((n % 2) * 5.25, n < 2 ? 0 : 5.25, 5.25, 5.25),
    })),
    { name: 'Band', sign: 'C', ...laid(10.5, 0, 0.5, 11) },
    { name: 'Mat', sign: 'D', ...laid(0, 10.5, 4.875, 1.25), lit: true },
  ],
  leftovers: [laid(11, 0, 1, 12), laid(4.875, 10.5, 5.625, 1.5)],
  upright: true,
  border: inches(1.25),
  swatch: FERN,
};

const PIECE_SCALE = pieceScale([OFFCUT, SHEET], 358, 400);

export const pieceOffcut = (): string => draw('piece', pieceDrawing(OFFCUT, INCHES, PIECE_SCALE));
export const pieceSheet = (): string => draw('piece', pieceDrawing(SHEET, INCHES, PIECE_SCALE));
export const pieceSheetMetric = (): string => draw('piece', pieceDrawing(SHEET, MILLIMETRES, PIECE_SCALE));

const chip = (index: number) => (): string => {
  const motif = MOTIFS[index]!;
  const swatch: Swatch = { motif, ground: '#f4efdf', inks: ['#4f6b4a', '#b8644a', '#2f4a63'] };
  return String(<SwatchChip swatch={swatch} id={`chip-${motif}`} name={motif} size={72} />);
};

export const swatchPlain = chip(0);
export const swatchStripes = chip(1);
export const swatchChecks = chip(2);
export const swatchDots = chip(3);
export const swatchSprigs = chip(4);
export const swatchWaves = chip(5);
export const swatchStars = chip(6);
export const swatchScript = chip(7);
export const swatchBorder = chip(8);
