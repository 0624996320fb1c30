/** Searching the shelf: what will do, in which order, and what is nearest when nothing will. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BlankWanted, chooseFrom } from '#core/stash/shelf-search.ts';
import { pieceOfOffcut } from '#core/stash/stash.ts';
import { shortfall, unsuited } from '#core/stash/suits.ts';
import { inches, length } from '#shared/length.ts';
import { binOffcut, countSheets } from '#stores/movements.ts';
import { addOffcut, listOffcuts } from '#stores/offcuts.ts';
import { findChoices, findLeftOut, findPieces, readShelf } from '#stores/search.ts';
import { editSettings } from '#stores/settings.ts';
import { FIRST, fillShelf, later, SQUARE_8, scrap, size, UPRIGHT_4_BY_9 } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

const names = (found: Awaited<ReturnType<typeof findPieces>>) =>
  found.choices.map(({ piece }) => piece.offcut?.code ?? piece.design.name);

describe('what will do', () => {
  it('offers offcuts before sheets, the least regretted first', async () => {
    const db = await emptyDatabase();
    const { corner, fern } = await fillShelf(db);
    const large = (await addOffcut(db, { design: fern.id, offcut: scrap(12, 10), count: 1, at: FIRST }))!;
    const strip = (await addOffcut(db, { design: fern.id, offcut: scrap(8, 12), count: 1, at: FIRST }))!;
    const found = await findPieces(db, SQUARE_8);
    expect(names(found)).toEqual([corner.code, strip.code, large.code, 'White', 'Fern', 'Hare', 'Hem']);
    expect(found).toMatchObject({ more: false, nearest: null });
  });

  it('carries the leftovers that each choice would leave', async () => {
    const db = await emptyDatabase();
    const { fern } = await fillShelf(db);
    const strip = (await addOffcut(db, { design: fern.id, offcut: scrap(8, 12), count: 2, at: FIRST }))!;
    const [, second] = (await findPieces(db, SQUARE_8)).choices;
    expect(second).toMatchObject({
      piece: { count: 2 },
      yields: 1,
      cut: { piece: { design: fern.id, offcut: strip.id }, leftovers: [{ ...size(8, 4), place: 'tray 1' }] },
    });
  });

  it('never turns an upright print for a straight fold, and always for a square', async () => {
    const db = await emptyDatabase();
    const { lying, hare, fern } = await fillShelf(db);
    expect(names(await findPieces(db, { ...UPRIGHT_4_BY_9, designs: [hare.id] }))).toEqual(['Hare']);
    expect(names(await findPieces(db, { ...UPRIGHT_4_BY_9, designs: [hare.id], mayTurn: true }))[0]).toBe(
      lying.code,
    );
    const lyingFern = (await addOffcut(db, { design: fern.id, offcut: scrap(9, 4), count: 1, at: FIRST }))!;
    expect(names(await findPieces(db, UPRIGHT_4_BY_9))).toContain(lyingFern.code);
  });

  it('looks for the kinds of paper and the designs asked for', async () => {
    const db = await emptyDatabase();
    const { fern, corner } = await fillShelf(db);
    expect(names(await findPieces(db, { ...SQUARE_8, kinds: ['cardstock'] }))).toEqual(['White']);
    expect(names(await findPieces(db, { ...SQUARE_8, designs: [fern.id] }))).toEqual([corner.code, 'Fern']);
  });

  it('takes a border only from pieces that still have it', async () => {
    const db = await emptyDatabase();
    const { hem } = await fillShelf(db);
    await addOffcut(db, { design: hem.id, offcut: scrap(9, 9), count: 1, at: FIRST });
    const kept = (await addOffcut(db, {
      design: hem.id,
      offcut: scrap(9, 10, { border: true }),
      count: 1,
      at: FIRST,
    }))!;
    expect(names(await findPieces(db, { ...SQUARE_8, border: true }))).toEqual([kept.code, 'Hem']);
  });

  it('leaves out what is gone', async () => {
    const db = await emptyDatabase();
    const { corner, white } = await fillShelf(db);
    await binOffcut(db, corner.id, { at: later(1) });
    await countSheets(db, white.id, { sheets: 0, at: later(2) });
    expect(names(await findPieces(db, SQUARE_8))).toEqual(['Fern', 'Hare', 'Hem']);
  });

  it('says that there are more than it shows', async () => {
    const db = await emptyDatabase();
    const { fern } = await fillShelf(db);
    await addOffcut(db, { design: fern.id, offcut: scrap(9, 9), count: 1, at: FIRST });
    const found = await findPieces(db, SQUARE_8, { limit: 1 });
    expect(found.more).toBe(true);
    expect(found.choices.filter(({ piece }) => piece.offcut)).toHaveLength(1);
  });
});

describe('when nothing will do', () => {
  it('names the piece that lacks least, and how much', async () => {
    const db = await emptyDatabase();
    const { fern, hare, hem, white } = await fillShelf(db);
    for (const { id } of [fern, hare, hem]) await countSheets(db, id, { sheets: 0, at: later(1) });
    const { choices, nearest } = await findPieces(db, { ...size(8.75, 8.75), mayTurn: true });
    expect(choices).toEqual([]);
    expect(nearest).toMatchObject({
      piece: { design: { id: white.id }, offcut: null },
      short: size(0.25, 0),
    });
  });

  it('is an offcut where that is nearer', async () => {
    const db = await emptyDatabase();
    const { corner, fern } = await fillShelf(db);
    await countSheets(db, fern.id, { sheets: 0, at: later(1) });
    const { nearest } = await findPieces(db, { ...size(9, 8.75), mayTurn: true, designs: [fern.id] });
    expect(nearest).toMatchObject({ piece: { offcut: { id: corner.id } }, short: size(0.5, 0.25) });
  });

  it('is nothing where there is no such paper', async () => {
    const db = await emptyDatabase();
    await fillShelf(db);
    const found = await findPieces(db, { ...SQUARE_8, kinds: ['vellum'] });
    expect(found).toEqual({ choices: [], more: false, sheets: 0, nearest: null });
  });
});

describe('properties', () => {
  const side = fc.integer({ min: 1, max: 12 * 1016 }).map((thousandths) => length(thousandths * 1000));
  const shelf = fc.array(fc.record({ width: side, height: side, print: fc.nat(2), border: fc.boolean() }), {
    minLength: 1,
    maxLength: 30,
  });
  const blankSide = fc.oneof(
    side,
    fc.integer({ min: 1, max: 2 * 1016 }).map((thousandths) => length(thousandths * 1000)),
  );
  const wanted = fc.record({
    width: blankSide,
    height: blankSide,
    mayTurn: fc.boolean(),
    square: fc.boolean(),
    border: fc.boolean(),
    keep: fc.integer({ min: 1, max: 3 * 1016 }),
    limit: fc.integer({ min: 1, max: 30 }),
  });

  it('SQL finds exactly what the core accepts, in its order of regret to the last bit', async () => {
    await fc.assert(
      fc.asyncProperty(shelf, wanted, async (pieces, { square, keep, limit, ...blank }) => {
        const db = await emptyDatabase();
        const { fern, hare, hem } = await fillShelf(db);
        for (const { print, ...piece } of pieces) {
          const offcut = { ...piece, place: '', note: '' };
          await addOffcut(db, { design: [fern, hare, hem][print]!.id, offcut, count: 1, at: FIRST });
        }
        const keepAtLeast = length(keep * 1000);
        await editSettings(db, { keepAtLeast });
        const asked: BlankWanted = { ...blank, height: square ? blank.width : blank.height };
        const all = (await listOffcuts(db)).map(pieceOfOffcut);
        const expected = all
          .flatMap((piece) => chooseFrom(piece, asked, keepAtLeast) ?? [])
          .sort((a, b) => a.regret - b.regret || a.piece.offcut!.id - b.piece.offcut!.id);
        const found = await findPieces(db, asked, { limit });
        const { offcuts: out } = await findLeftOut(db, await readShelf(db, keepAtLeast), asked);
        const ofPaper = all.filter((piece) => piece.border || !asked.border);
        expect(out).toBe(ofPaper.filter((piece) => unsuited(asked, piece)).length);
        const offcuts = found.choices.filter(({ piece }) => piece.offcut);
        expect(offcuts.map(({ piece, regret }) => [piece.offcut!.id, regret])).toEqual(
          expected.slice(0, limit).map(({ piece, regret }) => [piece.offcut!.id, regret]),
        );
        const other = { ...asked, mayTurn: !asked.mayTurn };
        const many = await findChoices(db, await readShelf(db, keepAtLeast), [other, asked, other], {
          limit,
        });
        expect(many[1]!.choices).toEqual(found.choices);
        expect(many[0]).toBe(many[2]);
        expect(many[0]!.choices).toEqual((await findPieces(db, other, { limit })).choices);
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });

  it('the nearest piece lacks no more than any other', async () => {
    const db = await emptyDatabase();
    await fillShelf(db);
    const asked = { ...size(20, 13), mayTurn: false };
    const { nearest } = await findPieces(db, asked);
    const worst = ({ width, height }: { width: number; height: number }) => Math.max(width, height);
    for (const offcut of await listOffcuts(db)) {
      expect(worst(nearest!.short)).toBeLessThanOrEqual(worst(shortfall(pieceOfOffcut(offcut), asked)));
    }
    expect(worst(nearest!.short)).toBe(inches(8));
  });
});
