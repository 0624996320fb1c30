/** Drawings of parts: labels keep clear of each other at every size, and the words say what is drawn. */
import { expect, test } from 'vitest';
import { labelTroubles } from '#core/drawing/boxes.ts';
import { WIDEST } from '#core/drawing/drawing.ts';
import { type DrawnPart, partDrawing, partScale } from '#core/drawing/part.ts';
import { type Wrapped, wrapPathDrawing } from '#core/drawing/wrap-path.ts';
import { boxStrips } from '#core/sets/box.ts';
import { MAKE_PART } from '#core/sets/kinds.ts';
import { inches, type Units } from '#shared/length.ts';
import { FOLDED_AT, PART_KINDS, PATHS, type PartKind, partForms, RUNS } from '#shared/schemas/parts.ts';
import { RECIPE } from '#tests/support/cast.ts';

const UNITS: Units[] = [{ unit: 'in', step: 32 }, { unit: 'in', step: 8 }, { unit: 'mm' }];
const CARDS = [
  { width: '5 in', height: '7 in' },
  { width: '5 7/8 in', height: '3 in' },
  { width: '2 in', height: '3 in' },
  { width: '11 in', height: '3 in', foldAt: 'sides' },
  { width: '4 in', height: '9 in', foldAt: 'top and bottom' },
];

/** The part as its form would make it with nothing typed but the card. */
function made(kind: PartKind, units: Units, card: Record<string, string>): DrawnPart[] {
  const asked = partForms(units)[kind].safeParse(card);
  const parts = MAKE_PART[kind](asked.data as never, RECIPE);
  return parts.ok ? [...parts.value] : [];
}

test.each(PART_KINDS)('no label of a %s touches another or leaves the page', (kind) => {
  let drawn = 0;
  for (const units of UNITS) {
    for (const card of CARDS) {
      for (const part of made(kind, units, card)) {
        const drawing = partDrawing(part, units, partScale(part, 260));
        expect(labelTroubles(drawing)).toEqual([]);
        expect(drawing.width).toBeLessThanOrEqual(WIDEST + 1e-6);
        expect(drawing.height).toBeLessThanOrEqual(260 + 1e-6);
        drawn += 1;
      }
    }
  }
  expect(drawn).toBeGreaterThan(5);
});

test('the words name size, scores and grain', () => {
  const [base] = made('base', UNITS[0]!, CARDS[0]!);
  expect(partDrawing(base!, UNITS[0]!, 1e-5).words).toBe(
    'Card base, 10 × 7″. Scores: 1 at 5″ from the left. The grain runs along its height.',
  );
});

test('a strip of a box is measured from one end', () => {
  const strips = boxStrips({
    box: { width: inches(4), height: inches(2), depth: inches(3) },
    lid: inches(0.5),
    free: inches(0.25),
    margin: inches(0),
    copies: 1,
  });
  const [, lid] = strips.ok ? strips.value : [];
  const { words } = partDrawing(lid!, UNITS[0]!, 1e-5);
  expect(words).toContain('Scores: 1 at 2¾″ from the left, 2 at 6¾″ from the left.');
});

test('the way of a strip is drawn for every fold, path and run', () => {
  const folds: Wrapped['fold'][] = [...FOLDED_AT, 'none'];
  for (const fold of folds) {
    for (const path of PATHS) {
      for (const run of RUNS) {
        const drawing = wrapPathDrawing({ fold, path, run });
        expect(labelTroubles(drawing)).toEqual([]);
        expect(drawing.words).toContain(path);
      }
    }
  }
});
