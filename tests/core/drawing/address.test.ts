/** The address drawing: its labels keep clear of each other on every front, and its words name what is drawn. */
import { expect, test } from 'vitest';
import { addressDrawing } from '#core/drawing/address.ts';
import { labelTroubles } from '#core/drawing/boxes.ts';
import { addressPlaces } from '#core/post/address.ts';
import { inches, millimetres, type Units } from '#shared/length.ts';

const UNITS: Units[] = [{ unit: 'in', step: 32 }, { unit: 'in', step: 8 }, { unit: 'mm' }];
const FRONTS = [
  { width: inches(5.75), height: inches(4.375) },
  { width: inches(7.25), height: inches(5.25) },
  { width: inches(9.5), height: inches(4.125) },
  { width: inches(3.625), height: inches(5.125) },
  { width: inches(12), height: inches(12) },
  { width: millimetres(162), height: millimetres(114) },
];

test.each(FRONTS)('no label touches another on $width × $height', (size) => {
  for (const units of UNITS) {
    for (const address of ['along', 'up'] as const) {
      const places = addressPlaces(size, address);
      if (places) expect(labelTroubles(addressDrawing(places, units))).toEqual([]);
    }
  }
});

// USPS DMM 202.2.1 has the area for the address, DMM 202.5 the bar code's clear zone.
test('says where the address goes', () => {
  const { words } = addressDrawing(addressPlaces(FRONTS[1]!, 'along')!, UNITS[0]!);
  expect(words).toContain('½″ in from left and right');
  expect(words).toContain('from ⅝″ to 2¾″ up from the bottom');
  expect(words).toContain('Keep 4¾ × ⅝″ clear');
});
