/** Uses summed up from the ledger, held against sums made line by line. */
import { expect, it } from 'vitest';
import { takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { listMovements } from '#stores/movements.ts';
import { createProject } from '#stores/projects.ts';
import { undoCut } from '#stores/undo.ts';
import { latestUses, usesByMonth, usesOf } from '#stores/use.ts';
import { fillShelf, later, SQUARE_8, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

const MONTH = 31 * 24 * 60;

async function take(db: Database, title: string, design: number, copies: number, minutes: number) {
  const project = await createProject(db, { ...THANKS, title }, later(minutes));
  const piece = { design, offcut: null };
  const at = later(minutes);
  const cut = await takePiece(db, { piece, wanted: SQUARE_8, copies, project: project.id, at });
  return (cut as { cut: number }).cut;
}

async function used() {
  const db = await emptyDatabase();
  const cast = await fillShelf(db);
  await take(db, 'One', cast.fern.id, 2, 1);
  await take(db, 'Two', cast.hare.id, 1, MONTH);
  await undoCut(db, await take(db, 'Undone', cast.fern.id, 1, MONTH + 1), later(MONTH + 2));
  await take(db, 'Three', cast.fern.id, 1, MONTH + 3);
  return { db, ...cast };
}

it('adds up what was taken and stayed taken, for a design and for a pad', async () => {
  const { db, fern, hare, hem, white } = await used();
  const papers = [[fern.id], [fern.id, hare.id, hem.id], [white.id]];
  const sums = await usesOf(db, papers, later(0));
  expect(sums.map((use) => [use?.sheets, use?.batches])).toEqual([
    [3, 2],
    [4, 3],
    [0, 0],
  ]);
  const lines = (await listMovements(db)).filter(
    ({ kind, piece, reversedBy }) => kind === 'cut' && piece.offcut === null && reversedBy === null,
  );
  expect(sums[1]!.sheets).toBe(-lines.reduce((sum, { delta }) => sum + delta, 0));
  expect((await usesOf(db, papers, later(MONTH)))[0]).toMatchObject({ sheets: 1, batches: 1 });
});

it('names the last projects, newest first, and the months', async () => {
  const { db, fern, hare, white } = await used();
  const uses = await latestUses(db, [[fern.id, hare.id], [white.id]], 2);
  expect(uses.map((paper) => paper.map(({ title, sheets }) => [title, sheets]))).toEqual([
    [
      ['Three', 1],
      ['Two', 1],
    ],
    [],
  ]);
  expect(await usesByMonth(db, fern.id, later(0))).toEqual([
    { month: '2026-03', sheets: 2, batches: 1 },
    { month: '2026-04', sheets: 1, batches: 1 },
  ]);
});
