/** What waits on the shelf: the offcuts that have lain longest, and designs that nothing was cut from. */
import { expect, test } from 'vitest';
import { binOffcut } from '#stores/movements.ts';
import { addOffcut } from '#stores/offcuts.ts';
import { putAway } from '#stores/put-away.ts';
import { undoCut } from '#stores/undo.ts';
import { listLongestLain, listNeverUsed } from '#stores/unused.ts';
import { FIRST, fillShelf, later, scrap } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { takeThree } from '#tests/support/projects.ts';

const ALL = { limit: 9, from: 0 };

test('offcuts that came first are named first, a page at a time, without those that are gone or put away', async () => {
  const db = await emptyDatabase();
  const { corner, strips, lying, hare } = await fillShelf(db);
  const at = later(60);
  const late = (await addOffcut(db, { design: hare.id, offcut: scrap(4, 4), count: 1, at }))!;
  const lain = async (page = ALL) =>
    (await listLongestLain(db, page)).map(({ paper, since }) => [paper.id, since]);
  expect(await lain()).toEqual([
    [corner.id, FIRST],
    [strips.id, FIRST],
    [lying.id, FIRST],
    [late.id, at],
  ]);
  expect(await lain({ limit: 1, from: 2 })).toEqual([[lying.id, FIRST]]);
  await binOffcut(db, corner.id, { at: later(61) });
  await putAway(db, { kind: 'designs', id: hare.id }, later(62));
  expect(await lain()).toEqual([[strips.id, FIRST]]);
});

test('a design is never used until something is cut from it, and again once that is undone', async () => {
  const db = await emptyDatabase();
  const cast = await fillShelf(db);
  const unused = async (page = ALL) => (await listNeverUsed(db, page)).map(({ paper }) => paper.name);
  expect(await unused()).toEqual(['Fern', 'Hare', 'Hem', 'White']);
  expect((await listNeverUsed(db, ALL))[0]!.since).toBe(FIRST);
  const { cut } = await takeThree(db, cast);
  expect(await unused()).toEqual(['Hare', 'Hem', 'White']);
  expect(await unused({ limit: 1, from: 1 })).toEqual(['Hem']);
  await undoCut(db, cut, later(9));
  expect(await unused()).toContain('Fern');
});
