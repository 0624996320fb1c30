/** What can be used of a sheet, with the strip along each edge. */
import { describe, expect, test } from 'vitest';
import { inches, millimetres } from '#shared/length.ts';
import { SHEET_EDGES, usablePrint, usableSheet, wholeSheet } from '#shared/sheet.ts';

const A4 = { width: millimetres(210), height: millimetres(297) };
const AS_SOLD = { sheet: A4, measured: {}, strip: null };

describe('a sheet', () => {
  test('is what it is sold by where nothing else is said', () => {
    expect(usableSheet(AS_SOLD)).toEqual(A4);
  });

  test('is as measured, side by side', () => {
    expect(wholeSheet({ sheet: A4, measured: { width: millimetres(209.5) } })).toEqual({
      width: millimetres(209.5),
      height: millimetres(297),
    });
  });

  test.each(SHEET_EDGES)('loses a strip along its %s edge from one side only', (edge) => {
    const strip = { edge, depth: millimetres(12) };
    const across = edge === 'left' || edge === 'right';
    expect(usableSheet({ sheet: A4, measured: { height: millimetres(296) }, strip })).toEqual({
      width: millimetres(across ? 198 : 210),
      height: millimetres(across ? 296 : 284),
    });
  });
});

describe('a print', () => {
  const hem = { direction: 'one edge', border: inches(1.5) } as const;

  test('keeps its direction whatever is cut off', () => {
    for (const edge of SHEET_EDGES) {
      expect(usablePrint({ direction: 'upright' }, { edge, depth: inches(1) })).toEqual({
        direction: 'upright',
      });
      expect(usablePrint({ direction: 'any way' }, { edge, depth: inches(1) })).toEqual({
        direction: 'any way',
      });
    }
  });

  test('keeps its border unless the strip lies along it', () => {
    for (const edge of ['top', 'left', 'right'] as const)
      expect(usablePrint(hem, { edge, depth: inches(1) })).toEqual(hem);
  });

  test('has as much of its border as the strip leaves, and stands upright without any', () => {
    const bottom = (depth: number) => usablePrint(hem, { edge: 'bottom', depth: inches(depth) });
    expect(bottom(1)).toEqual({ direction: 'one edge', border: inches(0.5) });
    expect(bottom(1.5)).toEqual({ direction: 'upright' });
    expect(bottom(2)).toEqual({ direction: 'upright' });
  });
});
