/** Pads, designs, offcuts and their comings and goings through the stores' verbs. */
import { describe, expect, it } from 'vitest';
import { inches } from '#shared/length.ts';
import { addDesign, editDesign, listDesigns, readDesign } from '#stores/designs.ts';
import {
  binOffcut,
  binSheets,
  buySheets,
  countOffcut,
  countSheets,
  listMovements,
  putBack,
  undoMovement,
} from '#stores/movements.ts';
import { addOffcut, editOffcut, findByCode, listOffcuts, readOffcut } from '#stores/offcuts.ts';
import { editPad, listPads, readPad } from '#stores/pads.ts';
import { FERN, FIRST, fillShelf, HEM, later, PLAIN, scrap } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

describe('pads and designs', () => {
  it('are read as they were written, with sheets summed over designs', async () => {
    const db = await emptyDatabase();
    const { hem, white } = await fillShelf(db);
    const pads = await listPads(db, { limit: 20 });
    expect(pads.map(({ pad, sheets }) => [pad.name, sheets])).toEqual([
      ['White card', 20],
      ['Meadow walk', 10],
    ]);
    expect(white.pad).toMatchObject(PLAIN);
    expect(await readDesign(db, hem.id)).toMatchObject({ ...HEM, sheets: 2 });
    expect((await listDesigns(db, { pad: white.pad.id })).map(({ id }) => id)).toEqual([white.id]);
  });

  it('are on the shelf as long as a sheet or an offcut of them is', async () => {
    const db = await emptyDatabase();
    const { fern, hare, hem, white } = await fillShelf(db);
    for (const one of [fern, hare, hem]) await countSheets(db, one.id, { sheets: 0, at: later(1) });
    const onShelf = (await listDesigns(db, { onShelf: true })).map(({ id }) => id);
    expect(onShelf).toEqual([fern.id, hare.id, white.id]);
  });

  it('are edited without a count changing', async () => {
    const db = await emptyDatabase();
    const { fern } = await fillShelf(db);
    const renamed = await editDesign(db, fern.id, { ...FERN, name: 'Bracken', doubleSided: true });
    expect(renamed).toMatchObject({ name: 'Bracken', doubleSided: true, sheets: 5 });
    const pad = await editPad(db, fern.pad.id, { ...PLAIN, grammage: null, note: '🌿 <b>' });
    expect(pad).toMatchObject({ grammage: null, note: '🌿 <b>' });
  });

  it('are undefined where there is no such row', async () => {
    const db = await emptyDatabase();
    expect(await readPad(db, 9)).toBeUndefined();
    expect(await readDesign(db, 9)).toBeUndefined();
    expect(await editPad(db, 9, PLAIN)).toBeUndefined();
    expect(await editDesign(db, 9, FERN)).toBeUndefined();
    expect(await addDesign(db, { pad: 9, design: FERN, sheets: 1, at: FIRST })).toBeUndefined();
    expect(await buySheets(db, 9, { sheets: 1, at: FIRST })).toBeUndefined();
    expect(await binOffcut(db, 9, { at: FIRST })).toBeUndefined();
  });
});

describe('offcuts', () => {
  it('get a code of their own that finds them however it is typed', async () => {
    const db = await emptyDatabase();
    const { corner, strips } = await fillShelf(db);
    expect(corner.code).not.toBe(strips.code);
    const typed = ` ${corner.code[0]!.toLowerCase()} ${corner.code.slice(1)}`;
    expect((await findByCode(db, typed))?.id).toBe(corner.id);
    expect(await findByCode(db, 'nothing')).toBeUndefined();
  });

  it('are listed while they are on the shelf, newest first, by place and design', async () => {
    const db = await emptyDatabase();
    const { corner, strips, lying, fern } = await fillShelf(db);
    await binOffcut(db, corner.id, { at: later(1) });
    expect((await listOffcuts(db)).map(({ id }) => id)).toEqual([lying.id, strips.id]);
    expect((await listOffcuts(db, { place: 'tray 2' })).map(({ id }) => id)).toEqual([lying.id]);
    expect((await listOffcuts(db, { designs: [fern.id], onShelf: false })).map(({ id }) => id)).toEqual([
      strips.id,
      corner.id,
    ]);
  });

  it('have their size put right, not their count', async () => {
    const db = await emptyDatabase();
    const { strips } = await fillShelf(db);
    const edited = await editOffcut(db, strips.id, scrap(11.5, 3, { note: 'bent' }));
    expect(edited).toMatchObject({ width: inches(11.5), note: 'bent', count: 3, code: strips.code });
  });

  it('need a design', async () => {
    const db = await emptyDatabase();
    expect(await addOffcut(db, { design: 9, offcut: scrap(3, 3), count: 1, at: FIRST })).toBeUndefined();
  });
});

describe('coming and going', () => {
  it('buys, counts and bins sheets, each with a line of the ledger', async () => {
    const db = await emptyDatabase();
    const { fern } = await fillShelf(db);
    await buySheets(db, fern.id, { sheets: 4, at: later(1) });
    await countSheets(db, fern.id, { sheets: 7, at: later(2) });
    await binSheets(db, fern.id, { sheets: 1, at: later(3), spoiled: true, note: 'coffee' });
    const lines = await listMovements(db, { piece: { design: fern.id, offcut: null } });
    expect(lines.map(({ kind, delta }) => [kind, delta])).toEqual([
      ['spoiled', -1],
      ['counted', -2],
      ['bought', 4],
      ['bought', 5],
    ]);
    expect((await readDesign(db, fern.id))?.sheets).toBe(6);
  });

  it('writes a count down even when nothing had changed', async () => {
    const db = await emptyDatabase();
    const { strips } = await fillShelf(db);
    await countOffcut(db, strips.id, { count: 3, at: later(1) });
    const [line] = await listMovements(db, { limit: 1 });
    expect(line).toMatchObject({ kind: 'counted', delta: 0 });
  });

  it('bins all that are alike, or some, and never more than there are', async () => {
    const db = await emptyDatabase();
    const { strips } = await fillShelf(db);
    await binOffcut(db, strips.id, { at: later(1), count: 1 });
    expect(await binOffcut(db, strips.id, { at: later(2), count: 3 })).toEqual({ refused: 'gone', left: 2 });
    await binOffcut(db, strips.id, { at: later(3) });
    expect((await readOffcut(db, strips.id))?.count).toBe(0);
    expect(await binOffcut(db, strips.id, { at: later(4) })).toEqual({ refused: 'gone', left: 0 });
  });

  it('puts back what went last, once each', async () => {
    const db = await emptyDatabase();
    const { strips } = await fillShelf(db);
    await binOffcut(db, strips.id, { at: later(1), count: 1 });
    await binOffcut(db, strips.id, { at: later(2), count: 2 });
    await putBack(db, strips.id, later(3));
    expect((await readOffcut(db, strips.id))?.count).toBe(2);
    await putBack(db, strips.id, later(4));
    expect((await readOffcut(db, strips.id))?.count).toBe(3);
    expect(await putBack(db, strips.id, later(5))).toBeUndefined();
  });

  it('does not put back what was counted since', async () => {
    const db = await emptyDatabase();
    const { strips } = await fillShelf(db);
    await binOffcut(db, strips.id, { at: later(1), count: 1 });
    await countOffcut(db, strips.id, { count: 2, at: later(2) });
    expect(await putBack(db, strips.id, later(3))).toMatchObject({ refused: 'counted since', at: later(2) });
  });

  it('withdraws what was entered by mistake, as long as it is still there', async () => {
    const db = await emptyDatabase();
    const { fern } = await fillShelf(db);
    const bought = (await buySheets(db, fern.id, { sheets: 4, at: later(1) }))!;
    await binSheets(db, fern.id, { sheets: 6, at: later(2) });
    expect(await undoMovement(db, bought, later(3))).toMatchObject({ refused: 'gone since', kind: 'binned' });
    await buySheets(db, fern.id, { sheets: 6, at: later(4) });
    expect(await undoMovement(db, bought, later(5))).toHaveProperty('movement');
    expect((await readDesign(db, fern.id))?.sheets).toBe(5);
    expect(await undoMovement(db, bought, later(6))).toMatchObject({ refused: 'undone already' });
  });

  it('says how few are left where only an earlier use is in the way', async () => {
    const db = await emptyDatabase();
    const { hem } = await fillShelf(db);
    const [first] = await listMovements(db, { piece: { design: hem.id, offcut: null } });
    await binSheets(db, hem.id, { sheets: 2, at: later(1) });
    const second = (await buySheets(db, hem.id, { sheets: 5, at: later(2) }))!;
    await undoMovement(db, first!.id, later(3));
    expect(await undoMovement(db, second, later(4))).toMatchObject({ refused: 'too few left', left: 3 });
  });

  it('pages through the ledger backwards', async () => {
    const db = await emptyDatabase();
    await fillShelf(db);
    const newest = await listMovements(db, { limit: 3 });
    const before = await listMovements(db, { limit: 3, before: newest[2]!.id });
    expect([...newest, ...before].map(({ id }) => id)).toEqual([7, 6, 5, 4, 3, 2]);
  });
});
