/** Sheets that are not what they are sold by: what the shelf offers, what is planned, and books from before. */
import { Migrator, sql } from 'kysely';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Batch } from '#core/batch/batch.ts';
import { cuttingOf } from '#core/batch/to-order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { type NewPad, pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import { migrations } from '#migrations/all.ts';
import { inches, length, millimetres } from '#shared/length.ts';
import { checkData } from '#stores/checks.ts';
import { takePiece } from '#stores/cuts.ts';
import { type Database, migrate, openDatabase } from '#stores/database.ts';
import { addDesign, listDesigns } from '#stores/designs.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { addPad, editPad, readPad } from '#stores/pads.ts';
import { findPieces } from '#stores/search.ts';
import { FIRST, HEM, later, MEADOW, PLAIN, SQUARE_8, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

const SWATCH = { motif: 'plain', ground: '#ffffff', inks: ['#000000'] } as const;
const CHALK: NewPad = {
  ...PLAIN,
  name: 'Chalk',
  sheet: { width: millimetres(210), height: millimetres(297) },
};
const HALF = { width: millimetres(105), height: millimetres(297) };

async function chalk(asIs: Partial<NewPad>, sheets = 4): Promise<Database> {
  const db = await emptyDatabase();
  const { id } = await addPad(db, { ...CHALK, ...asIs });
  const design = {
    name: 'Chalk',
    print: { direction: 'any way' },
    doubleSided: false,
    swatch: SWATCH,
  } as const;
  await addDesign(db, { pad: id, design, sheets, at: FIRST });
  return db;
}

const PART = { print: 'any way', paper: { of: 'any' }, grammage: null, match: false } as const;

async function planned(db: Database, part: { width: number; height: number }, copies: number) {
  const batch: Batch = {
    blanks: [],
    paper: { of: 'any' },
    parts: [{ ...PART, name: 'half', width: length(part.width), height: length(part.height), copies }],
    match: 'each set',
    keep: [],
  };
  const pieces = (await listDesigns(db)).map(pieceOfSheet);
  const shelf = { pieces, longestCut: inches(24), keepAtLeast: inches(1) };
  const { order, pieces: offered } = cuttingOf(batch, [], shelf);
  return planCuts(order, offered, { work: 60, seed: 1 });
}

describe('an A4 pad that is really 209.5 mm wide', () => {
  const MEASURED = { measured: { width: millimetres(209.5) } };

  it('gives no two parts of 105 mm across, which the size it is sold by would', async () => {
    expect((await planned(await chalk({}), HALF, 2)).newSheets).toBe(1);
    expect((await planned(await chalk(MEASURED), HALF, 2)).newSheets).toBe(2);
  });

  it('leaves what is there, not what it is sold by', async () => {
    const plan = await planned(
      await chalk(MEASURED),
      { width: millimetres(100), height: millimetres(297) },
      1,
    );
    expect(plan.used[0]!.leftovers).toMatchObject([{ width: millimetres(109.5), height: millimetres(297) }]);
  });

  it('is not offered for a blank as wide as it is sold', async () => {
    const wanted = { ...CHALK.sheet, mayTurn: false };
    expect((await findPieces(await chalk({}), wanted)).choices).toHaveLength(1);
    const found = await findPieces(await chalk(MEASURED), wanted);
    expect(found.choices).toEqual([]);
    expect(found.nearest!.short).toEqual({ width: millimetres(0.5), height: 0 });
  });

  it('leaves an offcut of it on the shelf', async () => {
    const db = await chalk(MEASURED);
    const wanted = { width: millimetres(100), height: millimetres(297), mayTurn: true };
    const piece = { design: 1, offcut: null };
    await takePiece(db, { piece, wanted, copies: 1, project: THANKS, at: later(1) });
    expect((await listOffcuts(db)).map(({ width, height }) => [width, height])).toEqual([
      [millimetres(109.5), millimetres(297)],
    ]);
    expect(await checkData(db)).toEqual([]);
  });

  it('can be put right, and is then as it is sold again', async () => {
    const db = await chalk(MEASURED);
    expect((await readPad(db, 1))!.pad.measured).toEqual(MEASURED.measured);
    await editPad(db, 1, CHALK);
    expect((await readPad(db, 1))!.pad.measured).toEqual({});
    expect((await planned(db, HALF, 2)).newSheets).toBe(1);
  });
});

describe('a strip that cannot be used', () => {
  it.each(['left', 'right', 'top', 'bottom'] as const)(
    'is not planned on, along the %s edge',
    async (edge) => {
      const across = edge === 'left' || edge === 'right';
      const db = await chalk({ strip: { edge, depth: millimetres(10) } });
      const third = { width: millimetres(across ? 100 : 210), height: millimetres(across ? 297 : 143.5) };
      expect((await planned(db, third, 2)).newSheets).toBe(1);
      const wider = { width: third.width + (across ? 4000 : 0), height: third.height + (across ? 0 : 4000) };
      expect((await planned(db, wider, 2)).newSheets).toBe(2);
    },
  );

  it('takes the border that lies in it, and leaves the rest of one that is deeper', async () => {
    const db = await emptyDatabase();
    const wanted = { ...SQUARE_8, border: true };
    const { id } = await addPad(db, { ...MEADOW, strip: { edge: 'bottom', depth: inches(1) } });
    await addDesign(db, { pad: id, design: HEM, sheets: 1, at: FIRST });
    const [choice] = (await findPieces(db, wanted)).choices;
    expect(choice!.piece).toMatchObject({ width: inches(12), height: inches(11), border: true });
    expect(choice!.piece.design.print).toEqual({ direction: 'one edge', border: inches(1 / 2) });
    await editPad(db, id, { ...MEADOW, strip: { edge: 'bottom', depth: inches(1.5) } });
    expect((await findPieces(db, wanted)).choices).toEqual([]);
    expect((await listDesigns(db))[0]!.print).toEqual({ direction: 'upright' });
  });

  it('is refused by the data file where it leaves no paper', async () => {
    await expect(chalk({ strip: { edge: 'left', depth: millimetres(210) } })).rejects.toThrow('CHECK');
    const narrow = {
      measured: { width: millimetres(209) },
      strip: { edge: 'left', depth: millimetres(209) },
    };
    await expect(chalk(narrow as Partial<NewPad>)).rejects.toThrow('CHECK');
  });
});

describe('a book from before sheets were measured', () => {
  /** Written in the rows of its day: two designs of one pad, an offcut, and nothing of what came later. */
  async function oldBook(): Promise<Database> {
    const db = openDatabase(':memory:');
    onTestFinished(() => db.destroy());
    const provider = { getMigrations: async () => migrations };
    await new Migrator({ db, provider }).migrateTo('0009_ready_made');
    const side = inches(12);
    await sql`INSERT INTO pads (name, kind, width, height, grammage, low_mark, source, note)
      VALUES ('Meadow walk', 'patterned', ${side}, ${side}, 180, 6, '', '')`.execute(db);
    for (const [name, direction, border] of [
      ['Fern', 'any way', null],
      ['Hem', 'one edge', inches(1.5)],
    ])
      await sql`INSERT INTO designs (pad_id, name, direction, border, double_sided, swatch)
        VALUES (1, ${name}, ${direction}, ${border}, 0, ${JSON.stringify(SWATCH)})`.execute(db);
    await sql`INSERT INTO offcuts (design_id, width, height, border, code, place, note)
      VALUES (1, ${inches(8.5)}, ${inches(8.5)}, 0, 'A2', '', '')`.execute(db);
    for (const [design, offcut, delta] of [
      [1, null, 5],
      [2, null, 2],
      [1, 1, 1],
    ])
      await sql`INSERT INTO movements (at, kind, design_id, offcut_id, delta, note)
        VALUES (${FIRST}, ${offcut === null ? 'bought' : 'counted'}, ${design}, ${offcut}, ${delta}, '')`.execute(
        db,
      );
    return db;
  }

  it('opens, and every sheet is what it was', async () => {
    const db = await oldBook();
    expect((await sql`SELECT * FROM pads`.execute(db)).rows[0]).not.toHaveProperty('measured_width');
    await migrate(db);
    const { pad, designs } = (await readPad(db, 1))!;
    expect(pad).toMatchObject({ sheet: MEADOW.sheet, measured: {}, strip: null });
    expect(designs.map(pieceOfSheet)).toMatchObject([
      { ...MEADOW.sheet, count: 5, border: false },
      { ...MEADOW.sheet, count: 2, border: true },
    ]);
    expect(designs[1]!.print).toEqual(HEM.print);
    expect(designs[1]).not.toHaveProperty('wholePrint');
    expect((await listOffcuts(db)).map(pieceOfOffcut)).toMatchObject([{ width: inches(8.5), count: 1 }]);
    const { choices } = await findPieces(db, SQUARE_8);
    expect(choices.map(({ piece }) => [piece.design.name, piece.width])).toEqual([
      ['Fern', inches(8.5)],
      ['Fern', inches(12)],
      ['Hem', inches(12)],
    ]);
    expect((await checkData(db)).filter((failure) => !failure.includes('code'))).toEqual([]);
  });
});
