/** Taking paper for a project and undoing it: all of it or nothing. */
import { sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import { chooseFrom } from '#core/stash/shelf-search.ts';
import { type PieceCut, pieceOfOffcut } from '#core/stash/stash.ts';
import { inches } from '#shared/length.ts';
import { type CutOutcome, cutPieces, listCuts, readCut, takePiece } from '#stores/cuts.ts';
import { listEnvelopes, makeEnvelope } from '#stores/envelopes.ts';
import { readProjectInFull } from '#stores/journal.ts';
import { binOffcut, countOffcut, countSheets, listMovements, putBack } from '#stores/movements.ts';
import { editOffcut, listOffcuts, readOffcut } from '#stores/offcuts.ts';
import { readProject } from '#stores/projects.ts';
import { undoCut } from '#stores/undo.ts';
import { BLANK, fillShelf, later, SQUARE_8, scrap, size, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { rowCounts, shelf } from '#tests/support/shelf.ts';

type Done = Exclude<CutOutcome, { refused: 'gone' }>;

const done = (outcome: CutOutcome | undefined): Done => {
  if (!outcome || 'refused' in outcome) throw new Error(`not cut: ${JSON.stringify(outcome)}`);
  return outcome;
};

const sheetsOf = (design: { id: number }) => ({ design: design.id, offcut: null });
const offcutOf = (offcut: { id: number; design: { id: number } }) => ({
  design: offcut.design.id,
  offcut: offcut.id,
});

describe('taking a piece', () => {
  it('uses a sheet, shelves what is left, opens the project and starts its blanks', async () => {
    const db = await emptyDatabase();
    const { hem } = await fillShelf(db);
    const piece = sheetsOf(hem);
    const taken = done(
      await takePiece(db, { piece, wanted: BLANK, copies: 1, project: THANKS, at: later(1) }),
    );
    const { project, envelopes, cuts } = (await readProjectInFull(db, taken.project))!;
    expect(project).toMatchObject({
      title: THANKS.title,
      state: 'cut',
      recipe: THANKS.recipe,
      changedAt: later(1),
    });
    expect(envelopes).toMatchObject([
      { number: 1, state: 'blank', cut: taken.cut, design: hem.id, trial: false },
    ]);
    expect(cuts).toMatchObject([{ id: taken.cut, undoneAt: null, pieces: [{ piece }] }]);
    const leftovers = await listOffcuts(db, { ids: taken.offcuts });
    expect(leftovers.map(({ width, height, border, count }) => [width, height, border, count])).toEqual([
      [inches(12), inches(4.5), true, 1],
      [inches(4.5), inches(7.5), false, 1],
    ]);
    const lines = await listMovements(db, { project: taken.project });
    expect(lines.map(({ kind, delta }) => [kind, delta])).toEqual([
      ['left over', 1],
      ['left over', 1],
      ['cut', -1],
    ]);
  });

  it('takes as many alike pieces as the blanks need, leftovers counted alike', async () => {
    const db = await emptyDatabase();
    const { fern } = await fillShelf(db);
    const wanted = { ...size(5.25, 5.25), mayTurn: true };
    const taken = done(
      await takePiece(db, { piece: sheetsOf(fern), wanted, copies: 10, project: THANKS, at: later(1) }),
    );
    expect(taken.envelopes).toHaveLength(10);
    expect((await shelf(db))[`Fern ${fern.id}`]).toBe(2);
    const strips = (await listOffcuts(db, { ids: taken.offcuts })).filter(({ count }) => count === 2);
    expect(strips.length).toBeGreaterThan(0);
  });

  it('puts what is left where the piece lay and drops what is under the keeping size', async () => {
    const db = await emptyDatabase();
    const { corner, strips } = await fillShelf(db);
    const whole = done(
      await takePiece(db, {
        piece: offcutOf(corner),
        wanted: SQUARE_8,
        copies: 1,
        project: THANKS,
        at: later(1),
      }),
    );
    expect(whole.offcuts).toEqual([]);
    const wanted = { ...size(3, 3), mayTurn: true };
    const part = done(
      await takePiece(db, {
        piece: offcutOf(strips),
        wanted,
        copies: 1,
        project: whole.project,
        at: later(2),
      }),
    );
    expect(await listOffcuts(db, { ids: part.offcuts })).toMatchObject([
      { ...size(9, 3), place: 'tray 1', count: 1 },
    ]);
    expect((await readOffcut(db, strips.id))?.count).toBe(2);
  });

  it('goes on numbering the envelopes of a project that it joins', async () => {
    const db = await emptyDatabase();
    const { fern } = await fillShelf(db);
    const take = { piece: sheetsOf(fern), wanted: BLANK, copies: 1 };
    const first = done(await takePiece(db, { ...take, project: THANKS, at: later(1), trial: true }));
    done(await takePiece(db, { ...take, copies: 2, project: first.project, at: later(2) }));
    const envelopes = await listEnvelopes(db, first.project);
    expect(envelopes.map(({ number, trial }) => [number, trial])).toEqual([
      [1, true],
      [2, false],
      [3, false],
    ]);
  });

  it('tells the second of two who want the same piece', async () => {
    const db = await emptyDatabase();
    const { corner } = await fillShelf(db);
    const take = { piece: offcutOf(corner), wanted: SQUARE_8, copies: 1, project: THANKS, at: later(1) };
    const [one, other] = await Promise.all([takePiece(db, take), takePiece(db, take)]);
    expect(one).toHaveProperty('cut');
    expect(other).toEqual({
      refused: 'gone',
      pieces: [{ piece: offcutOf(corner), wanted: 1, left: 0, changed: false }],
    });
    expect((await rowCounts(db)).projects).toBe(1);
  });

  it('writes nothing where the piece is too small, too few or was never there', async () => {
    const db = await emptyDatabase();
    const { strips, hem } = await fillShelf(db);
    const before = await rowCounts(db);
    const rest = { wanted: SQUARE_8, project: THANKS, at: later(1) };
    const small = await takePiece(db, { ...rest, piece: offcutOf(strips), copies: 1 });
    expect(small).toMatchObject({ refused: 'gone', pieces: [{ left: 3, changed: true }] });
    const few = await takePiece(db, { ...rest, piece: sheetsOf(hem), copies: 3 });
    expect(few).toMatchObject({ refused: 'gone', pieces: [{ wanted: 3, left: 2, changed: false }] });
    const never = await takePiece(db, { ...rest, piece: { design: hem.id, offcut: 999 }, copies: 1 });
    expect(never).toMatchObject({ refused: 'gone', pieces: [{ left: 0 }] });
    const wrong = await takePiece(db, { ...rest, piece: { design: hem.id, offcut: strips.id }, copies: 1 });
    expect(wrong).toMatchObject({ refused: 'gone' });
    expect(await takePiece(db, { ...rest, piece: sheetsOf(hem), copies: 1, project: 77 })).toBeUndefined();
    expect(await rowCounts(db)).toEqual(before);
  });
});

describe('cutting a whole plan', () => {
  const plan = async (...offcuts: Parameters<typeof pieceOfOffcut>[0][]): Promise<PieceCut[]> =>
    offcuts.map(
      (offcut) => chooseFrom(pieceOfOffcut(offcut), { ...size(3, 3), mayTurn: true }, inches(0.75))!.cut,
    );

  it('cuts many pieces at once', async () => {
    const db = await emptyDatabase();
    const { corner, strips, lying } = await fillShelf(db);
    const pieces = await plan(corner, strips, strips, lying);
    const cut = done(await cutPieces(db, { pieces, project: THANKS, at: later(1) }));
    expect(cut.envelopes).toHaveLength(4);
    const [used] = (await listMovements(db, { cut: cut.cut })).filter(
      ({ piece, kind }) => kind === 'cut' && piece.offcut === strips.id,
    );
    expect(used?.delta).toBe(-2);
  });

  it('writes nothing when one of its pieces has changed since, and says which', async () => {
    const db = await emptyDatabase();
    const { corner, strips, lying } = await fillShelf(db);
    const pieces = await plan(corner, strips, strips, lying);
    await editOffcut(db, lying.id, scrap(9, 3.5));
    await countOffcut(db, strips.id, { count: 1, at: later(1) });
    const before = await rowCounts(db);
    expect(await cutPieces(db, { pieces, project: THANKS, at: later(2) })).toEqual({
      refused: 'gone',
      pieces: [
        { piece: offcutOf(strips), wanted: 2, left: 1, changed: false },
        { piece: offcutOf(lying), wanted: 1, left: 1, changed: true },
      ],
    });
    expect(await rowCounts(db)).toEqual(before);
  });

  it('leaves nothing half-written when the data file refuses a line', async () => {
    const db = await emptyDatabase();
    const { corner, strips } = await fillShelf(db);
    await sql`CREATE TRIGGER no_envelopes BEFORE INSERT ON envelopes
      BEGIN SELECT RAISE(ABORT, 'disk full'); END`.execute(db);
    const before = [await rowCounts(db), await shelf(db)];
    const pieces = await plan(corner, strips);
    await expect(cutPieces(db, { pieces, project: THANKS, at: later(1) })).rejects.toThrow('disk full');
    expect([await rowCounts(db), await shelf(db)]).toEqual(before);
  });
});

describe('undoing a cut', () => {
  const cutSheet = async () => {
    const db = await emptyDatabase();
    const cast = await fillShelf(db);
    const before = await shelf(db);
    const take = { piece: sheetsOf(cast.fern), wanted: BLANK, copies: 1, project: THANKS, at: later(1) };
    const taken = done(await takePiece(db, take));
    return { db, cast, before, taken };
  };

  it('restores every count and leaves the project planned', async () => {
    const { db, before, taken } = await cutSheet();
    expect(await shelf(db)).not.toEqual(before);
    expect(await undoCut(db, taken.cut, later(2))).toEqual({ undone: taken.cut });
    expect(await shelf(db)).toEqual(before);
    expect(await readProject(db, taken.project)).toMatchObject({ state: 'planned', changedAt: later(2) });
    expect(await listEnvelopes(db, taken.project)).toEqual([]);
    expect(await listCuts(db, taken.project)).toMatchObject([{ undoneAt: later(2) }]);
  });

  it('happens once', async () => {
    const { db, taken } = await cutSheet();
    await undoCut(db, taken.cut, later(2));
    expect(await undoCut(db, taken.cut, later(3))).toEqual({ refused: 'undone already', at: later(2) });
    expect(await undoCut(db, 99, later(3))).toBeUndefined();
  });

  it('is refused once the paper was counted, with nothing written', async () => {
    const { db, cast, taken } = await cutSheet();
    await countSheets(db, cast.fern.id, { sheets: 4, at: later(2) });
    const before = await rowCounts(db);
    expect(await undoCut(db, taken.cut, later(3))).toEqual({
      refused: 'counted since',
      piece: sheetsOf(cast.fern),
      at: later(2),
    });
    expect(await rowCounts(db)).toEqual(before);
  });

  it('is refused once a leftover went into another project, and says which', async () => {
    const { db, taken } = await cutSheet();
    const [leftover] = await listOffcuts(db, { ids: taken.offcuts });
    const next = done(
      await takePiece(db, {
        piece: offcutOf(leftover!),
        wanted: { ...size(3, 3), mayTurn: true },
        copies: 1,
        project: { title: 'Tags' },
        at: later(2),
      }),
    );
    expect(await undoCut(db, taken.cut, later(3))).toEqual({
      refused: 'used since',
      piece: offcutOf(leftover!),
      project: { id: next.project, title: 'Tags' },
      at: later(2),
    });
    await undoCut(db, next.cut, later(4));
    expect(await undoCut(db, taken.cut, later(5))).toEqual({ undone: taken.cut });
  });

  it('is refused while a leftover is in the bin', async () => {
    const { db, taken } = await cutSheet();
    await binOffcut(db, taken.offcuts[0]!, { at: later(2) });
    expect(await undoCut(db, taken.cut, later(3))).toMatchObject({ refused: 'gone since', kind: 'binned' });
    await putBack(db, taken.offcuts[0]!, later(4));
    expect(await undoCut(db, taken.cut, later(5))).toEqual({ undone: taken.cut });
  });

  it('is refused once an envelope was made of it', async () => {
    const { db, taken } = await cutSheet();
    await makeEnvelope(db, taken.envelopes[0]!, later(2));
    expect(await undoCut(db, taken.cut, later(3))).toEqual({ refused: 'made since', envelope: 1 });
  });

  it('keeps the cut to read', async () => {
    const { db, taken } = await cutSheet();
    const before = await readCut(db, taken.cut);
    await undoCut(db, taken.cut, later(2));
    expect(await readCut(db, taken.cut)).toEqual({ ...before, undoneAt: later(2) });
  });
});
