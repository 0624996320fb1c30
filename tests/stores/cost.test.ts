/** What uses of paper cost, held against the price: nothing is paid twice and nothing is lost. */
import { expect, it } from 'vitest';
import { costOfArea, costOfBatch } from '#core/stash/cost.ts';
import type { PieceCut } from '#core/stash/stash.ts';
import { addShares, NOTHING, type Share, shareOf } from '#shared/money.ts';
import { paperUsed } from '#stores/cost.ts';
import { cutPieces, takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { addDesign, listDesigns } from '#stores/designs.ts';
import { binOffcut, buySheets, countOffcut, putBack } from '#stores/movements.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { addPad } from '#stores/pads.ts';
import { createProject } from '#stores/projects.ts';
import { undoCut } from '#stores/undo.ts';
import { FERN, FIRST, later, MEADOW, SQUARE_8, size, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

const SMALL = { ...size(3, 3), mayTurn: true };

async function costs(db: Database, projects: readonly number[]): Promise<Share> {
  const designs = new Map((await listDesigns(db)).map((one) => [one.id, one]));
  const shares: Share[] = [];
  for (const project of projects) {
    shares.push(
      ...costOfBatch(await paperUsed(db, project), designs, 1).designs.map(({ cost }) => cost ?? NOTHING),
    );
  }
  return addShares(shares);
}

/** What lies on the shelf, by its area. */
async function shelf(db: Database): Promise<Share> {
  const designs = await listDesigns(db);
  const offcuts = await listOffcuts(db);
  return addShares([
    ...designs.map(({ pad, sheets }) =>
      shareOf(pad.price!.hundredths, BigInt(sheets), BigInt(pad.price!.sheets)),
    ),
    ...offcuts.map(
      ({ design, width, height, count }) =>
        costOfArea(design.pad, BigInt(width) * BigInt(height) * BigInt(count))!,
    ),
  ]);
}

/** Four sheets at 9.99 for 7, each of twelve inches with a strip that can't be used. */
async function priced() {
  const db = await emptyDatabase();
  const price = { hundredths: 999, sheets: 7 };
  const strip = { edge: 'bottom', depth: size(1, 1).width } as const;
  const pad = await addPad(db, { ...MEADOW, strip, price });
  const fern = (await addDesign(db, { pad: pad.id, design: FERN, sheets: 4, at: FIRST }))!;
  const open = async (title: string) => (await createProject(db, { ...THANKS, title }, FIRST)).id;
  const [one, two] = [await open('One'), await open('Two')];
  return { db, fern, one, two, bought: shareOf(999, 4n, 7n) };
}

const cutOf = async (
  db: Database,
  design: number,
  offcut: number | null,
  project: number,
  wanted = SQUARE_8,
) => takePiece(db, { piece: { design, offcut }, wanted, copies: 1, project, at: later(1) });

it('the uses of the sheets and what is left of them add up to their price', async () => {
  const { db, fern, one, two, bought } = await priced();
  const whole = async () => addShares([await costs(db, [one, two]), await shelf(db)]);
  expect(await whole()).toEqual(bought);
  await cutOf(db, fern.id, null, one);
  await cutOf(db, fern.id, null, one);
  expect(await whole()).toEqual(bought);
  const [offcut, other] = await listOffcuts(db);
  await cutOf(db, fern.id, offcut!.id, two, SMALL);
  expect(await whole()).toEqual(bought);
  const before = await costs(db, [one]);
  await binOffcut(db, other!.id, { at: later(2), count: 1 });
  expect(await whole()).toEqual(bought);
  expect(await costs(db, [one])).not.toEqual(before);
  await putBack(db, other!.id, later(3));
  expect(await costs(db, [one])).toEqual(before);
  await countOffcut(db, other!.id, { count: 0, at: later(4) });
  expect(await whole()).toEqual(bought);
  const taken = (await cutOf(db, fern.id, null, two)) as { cut: number };
  await undoCut(db, taken.cut, later(5));
  expect(await whole()).toEqual(bought);
});

it('a cut for two projects is shared by the area of their parts', async () => {
  const { db, fern, one, two } = await priced();
  const sheet = { width: size(12, 11).width, height: size(12, 11).height };
  const at = { x: size(0, 0).width, y: size(0, 0).width };
  const piece: PieceCut = {
    ...sheet,
    piece: { design: fern.id, offcut: null },
    parts: [
      { ...at, ...size(6, 6), part: 'envelope', turned: false },
      { ...at, ...size(3, 6), part: 'envelope', turned: false, project: two },
    ],
    leftovers: [],
    cuts: { part: 'envelope' } as never,
  };
  await cutPieces(db, { pieces: [piece], project: one, at: later(1) });
  expect(await costs(db, [one])).toEqual(shareOf(999, 2n, 21n));
  expect(await costs(db, [two])).toEqual(shareOf(999, 1n, 21n));
});

it('is said per set, and adds up as it is shown', async () => {
  const { db, fern, one } = await priced();
  await buySheets(db, fern.id, { sheets: 3, at: later(1) });
  for (let sheet = 0; sheet < 3; sheet += 1)
    await cutOf(db, fern.id, null, one, { ...size(12, 11), mayTurn: false });
  const designs = new Map((await listDesigns(db)).map((design) => [design.id, design]));
  const cost = costOfBatch(await paperUsed(db, one), designs, 3);
  expect(cost).toMatchObject({ total: 428, perSet: 143, rounded: [428] });
  expect(cost.designs[0]!.sheets).toBe(3);
});
