/** What runs low: pads by their mark, designs by their own or by their share of it. */
import { describe, expect, it } from 'vitest';
import { designRunsLow } from '#core/stash/low.ts';
import type { Database } from '#stores/database.ts';
import { addDesign, markDesign, readDesign } from '#stores/designs.ts';
import { listLow } from '#stores/low.ts';
import { countSheets } from '#stores/movements.ts';
import { addPad, editPad } from '#stores/pads.ts';
import { FERN, FIRST, fillShelf, HARE, later, MEADOW, PLAIN } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

const named = async (db: Database, limit = 9, offset = 0) =>
  (await listLow(db, { limit, offset })).low.map(({ pad, design, sheets, mark }) => [
    design?.name ?? pad.name,
    sheets,
    mark,
  ]);

const count = (db: Database, design: number, sheets: number) =>
  countSheets(db, design, { sheets, at: later(1) });

describe('what runs low', () => {
  it('lists pads at their mark or under it, worst first', async () => {
    const db = await emptyDatabase();
    const { fern, hare, white } = await fillShelf(db);
    await markDesign(db, white.id, 0);
    await markDesign(db, (await readDesign(db, fern.id))!.id + 2, 0);
    expect(await named(db)).toEqual([]);
    await count(db, white.id, 9);
    await count(db, fern.id, 0);
    await count(db, hare.id, 1);
    expect(await named(db)).toEqual([
      ['Meadow walk', 3, 6],
      ['White card', 9, 10],
    ]);
  });

  it('asks for no reminder where the mark is 0', async () => {
    const db = await emptyDatabase();
    const { white } = await fillShelf(db);
    await editPad(db, white.pad.id, { ...PLAIN, lowMark: 0 });
    await count(db, white.id, 0);
    expect((await named(db)).map(([name]) => name)).not.toContain('White card');
    expect(designRunsLow((await readDesign(db, white.id))!)).toBe(false);
  });

  it('names a design with none left of thirteen, though the others of its pad are there', async () => {
    const db = await emptyDatabase();
    const { id: pad } = await addPad(db, MEADOW);
    const add = (name: string, sheets: number) =>
      addDesign(db, { pad, design: { ...HARE, name }, sheets, at: FIRST });
    const hare = (await add('Hare', 13))!;
    await add('Fern', 30);
    await add('Thistle', 30);
    expect(await named(db)).toEqual([]);
    await count(db, hare.id, 0);
    expect(await named(db)).toEqual([['Hare', 0, 2]]);
    expect(designRunsLow((await readDesign(db, hare.id))!)).toBe(true);
    await count(db, hare.id, 3);
    expect(await named(db)).toEqual([]);
    await markDesign(db, hare.id, 3);
    expect(await named(db)).toEqual([['Hare', 3, 3]]);
    await markDesign(db, hare.id, 0);
    await count(db, hare.id, 0);
    expect(await named(db)).toEqual([]);
  });

  it('does not miss sheets of which there never were any', async () => {
    const db = await emptyDatabase();
    const { id: pad } = await addPad(db, MEADOW);
    await addDesign(db, { pad, design: HARE, sheets: 40, at: FIRST });
    await addDesign(db, { pad, design: FERN, sheets: 0, at: FIRST });
    expect(await named(db)).toEqual([]);
  });

  it('is read a page at a time, and says how many there are in all', async () => {
    const db = await emptyDatabase();
    const { id: pad } = await addPad(db, { ...MEADOW, lowMark: 20 });
    for (let one = 0; one < 5; one += 1) {
      const design = { ...HARE, name: `Hare ${one}`, lowMark: 3 };
      await addDesign(db, { pad, design, sheets: one === 4 ? 60 : one, at: FIRST });
    }
    expect(await named(db, 2)).toEqual([
      ['Hare 0', 0, 3],
      ['Hare 1', 1, 3],
    ]);
    expect(await named(db, 2, 2)).toEqual([
      ['Hare 2', 2, 3],
      ['Hare 3', 3, 3],
    ]);
    expect(await listLow(db, { limit: 1 })).toMatchObject({ pads: 0, designs: 4 });
  });
});
