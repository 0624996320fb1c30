/** What is worked out once for as long as nobody writes: every writer is noticed, also another server on the same file. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { closeDatabase, migrate, openDatabase, transact } from '#stores/database.ts';
import { addPad, editPad, listPads } from '#stores/pads.ts';
import { remembered } from '#stores/remembered.ts';
import { MEADOW } from '#tests/support/cast.ts';

test('is asked again after a write of ours, of another server, and of one undone', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'remembered-'));
  const [ours, theirs] = [openDatabase(join(folder, 'a.db')), openDatabase(join(folder, 'a.db'))];
  await migrate(ours);
  let asked = 0;
  const names = (db = ours): Promise<string[]> =>
    remembered(db, 'names', async () => {
      asked += 1;
      return (await listPads(db, { limit: 9 })).map(({ pad }) => pad.name);
    });
  expect([await names(), await names(), asked]).toEqual([[], [], 1]);
  const pad = await addPad(ours, MEADOW);
  expect([await names(), await names(), asked]).toEqual([['Meadow walk'], ['Meadow walk'], 2]);
  await editPad(theirs, pad.id, { ...MEADOW, name: 'Theirs' });
  expect([await names(), await names(), asked]).toEqual([['Theirs'], ['Theirs'], 3]);
  await transact(ours, async (db) => {
    await editPad(db, pad.id, { ...MEADOW, name: 'Undone' });
    expect(await names(db)).toEqual(['Undone']);
    throw new Error('undone');
  }).catch(() => {});
  expect(await names()).toEqual(['Theirs']);
  await Promise.all([closeDatabase(ours), closeDatabase(theirs)]);
  await rm(folder, { recursive: true });
});
