/** Laws of the ledger over random evenings: counts stay sums, and what is undone is as if it had not been. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pieceOfOffcut, pieceOfSheet, refOf } from '#core/stash/stash.ts';
import { checkData } from '#stores/checks.ts';
import { takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { listEnvelopes, makeEnvelope } from '#stores/envelopes.ts';
import { binOffcut, buySheets, countOffcut, countSheets, putBack, undoMovement } from '#stores/movements.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { spoilBlank } from '#stores/spoil.ts';
import { undoCut } from '#stores/undo.ts';
import { fillShelf, later, size, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { shelf } from '#tests/support/shelf.ts';

const VERBS = ['take', 'undo cut', 'buy', 'count', 'bin', 'put back', 'undo line', 'make', 'spoil'] as const;

const evening = fc.array(
  fc.record({ verb: fc.constantFrom(...VERBS), which: fc.nat(40), amount: fc.integer({ min: 1, max: 4 }) }),
  { minLength: 5, maxLength: 25 },
);

type Step = { readonly verb: (typeof VERBS)[number]; readonly which: number; readonly amount: number };

const pick = <T>(list: readonly T[], which: number): T | undefined => list[which % Math.max(1, list.length)];

async function act(db: Database, { verb, which, amount }: Step, at: string): Promise<void> {
  const designs = await listDesigns(db);
  const offcuts = await listOffcuts(db, { onShelf: false });
  const pieces = [...offcuts.map(pieceOfOffcut), ...designs.map(pieceOfSheet)];
  const cuts = await db.selectFrom('cuts').select(['id', 'project_id']).execute();
  const cut = pick(cuts, which);
  const blanks = cut ? await listEnvelopes(db, cut.project_id) : [];
  const blank = pick(blanks, amount);
  const side = amount + 1;
  const wanted = { ...size(side, side + (which % 3)), mayTurn: which % 2 === 0 };
  if (verb === 'take') {
    const project = cut && which % 2 === 0 ? cut.project_id : THANKS;
    await takePiece(db, { piece: refOf(pick(pieces, which)!), wanted, copies: amount, project, at });
  }
  if (verb === 'undo cut' && cut) await undoCut(db, cut.id, at);
  if (verb === 'buy') await buySheets(db, pick(designs, which)!.id, { sheets: amount, at });
  if (verb === 'count' && which % 2 === 0)
    await countSheets(db, pick(designs, which)!.id, { sheets: amount, at });
  if (verb === 'count' && which % 2 === 1)
    await countOffcut(db, pick(offcuts, which)!.id, { count: amount, at });
  if (verb === 'bin') await binOffcut(db, pick(offcuts, which)!.id, { at, spoiled: amount === 1 });
  if (verb === 'put back') await putBack(db, pick(offcuts, which)!.id, at);
  if (verb === 'undo line') await undoMovement(db, which, at);
  if (verb === 'make' && blank) await makeEnvelope(db, blank.id, at);
  if (verb === 'spoil' && blank) await spoilBlank(db, blank.id, { wrong: 'slipped' }, at);
}

describe('random evenings', () => {
  it('keep every invariant of the data file', async () => {
    await fc.assert(
      fc.asyncProperty(evening, async (steps) => {
        const db = await emptyDatabase();
        await fillShelf(db);
        for (const [minute, step] of steps.entries()) await act(db, step, later(minute + 1));
        expect(await checkData(db)).toEqual([]);
      }),
      { seed: 20261125, numRuns: 15 },
    );
  });

  it('are undone by undoing their cuts, in whatever order that is allowed', async () => {
    const cuts = fc.array(fc.record({ which: fc.nat(40), amount: fc.integer({ min: 1, max: 4 }) }), {
      maxLength: 12,
    });
    await fc.assert(
      fc.asyncProperty(cuts, fc.nat(1000), async (steps, order) => {
        const db = await emptyDatabase();
        await fillShelf(db);
        const before = await shelf(db);
        for (const [minute, step] of steps.entries())
          await act(db, { verb: 'take', ...step }, later(minute + 1));
        const standing = (await db.selectFrom('cuts').select('id').execute()).map(({ id }) => id);
        for (let turn = 0; standing.length > 0; turn++) {
          const next = (order + turn) % standing.length;
          const undone = await undoCut(db, standing[next]!, later(100 + turn));
          if (undone && 'undone' in undone) standing.splice(next, 1);
          else expect(undone).toMatchObject({ refused: 'used since' });
          expect(turn).toBeLessThan(500);
        }
        expect(await shelf(db)).toEqual(before);
      }),
      { seed: 20261125, numRuns: 15 },
    );
  });
});
