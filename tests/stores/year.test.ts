/** A year's paper summed up, held against the ledger's lines added one by one. */
import { expect, it } from 'vitest';
import { sumYear } from '#core/stash/year.ts';
import { seedDemo } from '#seed/demo.ts';
import { wholeSheet } from '#shared/sheet.ts';
import { areaOf } from '#shared/size.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { listMovements } from '#stores/movements.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { yearOf, yearsKnown } from '#stores/year.ts';
import { emptyDatabase } from '#tests/support/database.ts';

const SQUARE_FOOT = 12_192_000 ** 2;

async function byHand(db: Database, year: string) {
  const designs = new Map((await listDesigns(db, { away: true })).map((one) => [one.id, one]));
  const offcuts = new Map((await listOffcuts(db, { onShelf: false })).map((one) => [one.id, one]));
  const lines = (await listMovements(db)).filter(
    ({ at, reverses, reversedBy }) => at.startsWith(year) && reverses === null && reversedBy === null,
  );
  const sum = (...kinds: string[]): number =>
    lines
      .filter(({ kind }) => kinds.includes(kind))
      .reduce((all, { piece, delta }) => {
        const size =
          piece.offcut === null ? wholeSheet(designs.get(piece.design)!.pad) : offcuts.get(piece.offcut)!;
        return all + delta * areaOf(size);
      }, 0);
  return { bought: sum('bought') / SQUARE_FOOT, used: -sum('cut', 'left over') / SQUARE_FOOT };
}

it('sums up the demo’s year as its ledger does, line by line', async () => {
  const db = await emptyDatabase();
  await seedDemo(db, new Date('2026-11-30T12:00:00.000Z'));
  expect(await yearsKnown(db)).toEqual([2026, 2025]);
  for (const year of [2025, 2026]) {
    const { whole, months, kinds } = sumYear(year, await yearOf(db, year));
    const hand = await byHand(db, `${year}`);
    expect(whole.bought / SQUARE_FOOT).toBeCloseTo(hand.bought, 6);
    expect(whole.used / SQUARE_FOOT).toBeCloseTo(hand.used, 6);
    for (const parts of [months, kinds]) {
      expect(parts.reduce((sum, { used }) => sum + used, 0)).toBeCloseTo(whole.used, -3);
    }
    expect(whole.fromOffcuts).toBeLessThanOrEqual(whole.used);
  }
  const { whole, months } = sumYear(2026, await yearOf(db, 2026));
  expect(months.filter(({ bought }) => bought > 0).length).toBeGreaterThanOrEqual(6);
  expect(whole.fromOffcuts).toBeGreaterThan(0);
  expect(whole.spoiled).toBeGreaterThan(0);
});
