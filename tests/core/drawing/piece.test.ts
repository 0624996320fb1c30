/** Checks that pieces are in proportion to each other, say in words what they show, and keep their labels apart. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelTroubles } from '#core/drawing/boxes.ts';
import { cardDrawing, cardScale } from '#core/drawing/card.ts';
import { type DrawnPiece, pieceDrawing, pieceScale } from '#core/drawing/piece.ts';
import { inches, millimetres, type Units } from '#shared/length.ts';

const UNITS: readonly Units[] = [{ unit: 'in', step: 32 }, { unit: 'mm' }];

const eighths = (from: number, to: number) =>
  fc.integer({ min: from * 8, max: to * 8 }).map((n) => inches(n / 8));

/** A piece cut into a row of strips, each a part or a leftover. */
const strips: fc.Arbitrary<DrawnPiece> = fc
  .record({
    widths: fc.array(eighths(0.125, 5), { minLength: 1, maxLength: 8 }),
    height: eighths(0.5, 12),
    upright: fc.boolean(),
    border: fc.boolean(),
  })
  .map(({ widths, height, upright, border }) => {
    const places = widths.map((width, index) => ({
      x: inches(widths.slice(0, index).reduce((sum, one) => sum + one, 0) / inches(1)),
      y: inches(0),
      width,
      height,
    }));
    return {
      code: 'K12',
      width: inches(widths.reduce((sum, one) => sum + one, 0) / inches(1)),
      height,
      parts: places
        .filter((_, n) => n % 3 > 0)
        .map((place) => ({ ...place, name: 'Front panel', sign: 'A' })),
      leftovers: places.filter((_, n) => n % 3 === 0),
      upright,
      ...(border ? { border: inches(0.25) } : {}),
    };
  });

describe('pieces', () => {
  it('keep their labels apart and inside, whatever is cut', () => {
    fc.assert(
      fc.property(strips, fc.constantFrom(...UNITS), (piece, units) => {
        expect(labelTroubles(pieceDrawing(piece, units, pieceScale([piece], 358, 400)))).toEqual([]);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('say exactly what is cut, whatever the reader sees elsewhere', () => {
    const sheet = { width: millimetres(209.5), height: millimetres(297) };
    const part = {
      ...sheet,
      height: inches(4 + 3 / 64),
      x: inches(0),
      y: inches(0),
      name: 'Base',
      sign: 'A',
    };
    const leftover = { ...sheet, height: inches(1 + 1 / 64), x: inches(0), y: inches(5) };
    const piece: DrawnPiece = {
      ...sheet,
      code: 'Fern',
      parts: [part],
      leftovers: [leftover],
      upright: false,
    };
    const { words } = pieceDrawing(piece, { unit: 'in', step: 8 }, pieceScale([piece], 600, 600));
    expect(words).toContain('Fern, 209.5 × 297 mm.');
    expect(words).toContain('Base 209.5 mm × 4³⁄₆₄″');
    expect(words).toContain('209.5 mm × 1¹⁄₆₄″');
  });

  it('are drawn on one scale', () => {
    const small: DrawnPiece = {
      code: 'a',
      width: inches(3),
      height: inches(6),
      parts: [],
      leftovers: [],
      upright: false,
    };
    const large: DrawnPiece = { ...small, width: inches(12), height: inches(12) };
    const scale = pieceScale([small, large], 358, 400);
    const heights = [small, large].map((piece) => pieceDrawing(piece, UNITS[0]!, scale).height);
    expect(heights[1]! - heights[0]!).toBeCloseTo(inches(6) * scale);
    expect(pieceDrawing(large, UNITS[0]!, scale).width).toBeLessThanOrEqual(358.001);
  });

  it('say in words what comes from them', () => {
    const part = { name: 'Tag', sign: 'A', x: inches(0), y: inches(0), width: inches(2), height: inches(4) };
    const leftover = { x: inches(4), y: inches(0), width: inches(2), height: inches(4) };
    const second = { ...part, x: inches(2) };
    const piece = {
      code: 'K3',
      width: inches(6),
      height: inches(4),
      parts: [part, second],
      leftovers: [leftover],
      upright: true,
    };
    expect(pieceDrawing(piece, UNITS[0]!, 1e-5).words).toBe(
      'K3, 6 × 4″. From it come 2 of Tag 2 × 4″. Left over: 2 × 4″. The print runs up.',
    );
  });
});

describe('cards', () => {
  it('keep their size label inside, down to a slip of a card', () => {
    fc.assert(
      fc.property(eighths(0.25, 12), eighths(0.25, 12), fc.constantFrom(...UNITS), (width, height, units) => {
        const card = { name: 'Card', width, height };
        expect(labelTroubles(cardDrawing(card, units, cardScale([card], 110)))).toEqual([]);
      }),
      { seed: 7, numRuns: 100 },
    );
  });
});
