/** What is deleted or put away: out of every list and choice, whole in the file, and brought back as it was. */
import { beforeEach, describe, expect, it, test } from 'vitest';
import type { AwayRef } from '#shared/put-away.ts';
import { addCardSize, listCardSizes } from '#stores/card-sizes.ts';
import { checkData } from '#stores/checks.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns, readDesign } from '#stores/designs.ts';
import { addNotcher, chooseNotcher, listNotchers, readNotcher } from '#stores/notchers.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { addPad, listPads } from '#stores/pads.ts';
import { createProject, listProjects, readProject } from '#stores/projects.ts';
import { bringBack, listAway, putAway, readStanding } from '#stores/put-away.ts';
import { findPieces } from '#stores/search.ts';
import { addSeries, listSeries, seriesNamed } from '#stores/series.ts';
import { tallySets } from '#stores/sets.ts';
import { browseShelf, searchShelf, tallyShelf } from '#stores/shelf.ts';
import { type Cast, fillShelf, later, PLAIN, SQUARE_8, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { takeThree } from '#tests/support/projects.ts';
import { shelf } from '#tests/support/shelf.ts';

let db: Database;
let cast: Cast;
beforeEach(async () => {
  db = await emptyDatabase();
  cast = await fillShelf(db);
});

const away = async (): Promise<string[]> =>
  (await listAway(db, { limit: 10 })).map(({ kind, id }) => `${kind} ${id}`);

describe('a project', () => {
  it('that nothing names is deleted, and undone as it was', async () => {
    const idea = await createProject(db, { title: 'Kites' }, later(1));
    expect(await putAway(db, { kind: 'projects', id: idea.id }, later(2))).toMatchObject({
      namedBy: [],
      at: later(2),
    });
    expect(await listProjects(db)).toEqual([]);
    expect(await bringBack(db, { kind: 'projects', id: idea.id })).toMatchObject({ at: null });
    expect(await listProjects(db)).toEqual([idea]);
  });

  it('that paper was cut for is put away: out of lists and counts, its paper and its page stay', async () => {
    const { project } = await takeThree(db, cast, { ...THANKS, quantity: 5 });
    const before = await shelf(db);
    expect((await tallySets(db)).waiting).toBe(5);
    expect(await putAway(db, { kind: 'projects', id: project }, later(2))).toMatchObject({
      namedBy: ['ledger', 'envelopes'],
    });
    expect(await listProjects(db)).toEqual([]);
    expect(await listProjects(db, { ids: [project] })).toHaveLength(1);
    expect(await readProject(db, project)).toMatchObject({ title: THANKS.title });
    expect((await tallySets(db)).waiting).toBe(0);
    expect(await shelf(db)).toEqual(before);
    expect(await checkData(db)).toEqual([]);
  });
});

describe('paper', () => {
  it('put away with its pad is not searched, counted or offered, and comes back whole', async () => {
    const sought = async () => ({
      pads: (await listPads(db, { limit: 20 })).map(({ pad }) => pad.name),
      designs: (await listDesigns(db)).length,
      offcuts: (await listOffcuts(db)).length,
      browsed: (await searchShelf(db, { order: 'newest', from: 0, limit: 10 })).counted,
      found: (await findPieces(db, SQUARE_8)).choices.map(({ piece }) => piece.design.name),
      tally: await tallyShelf(db),
    });
    const before = await sought();
    const { pad } = cast.fern;
    await putAway(db, { kind: 'pads', id: pad.id }, later(1));
    expect(await sought()).toEqual({
      pads: ['White card'],
      designs: 1,
      offcuts: 0,
      browsed: 0,
      found: ['White'],
      tally: { pads: 1, sheets: 20, offcuts: 0 },
    });
    expect(await readDesign(db, cast.fern.id)).toMatchObject({ name: 'Fern' });
    expect(await browseShelf(db, { design: cast.fern.id, limit: 10 })).toHaveLength(2);
    await bringBack(db, { kind: 'pads', id: pad.id });
    expect(await sought()).toEqual(before);
  });

  it('of one design alone leaves the pad’s others', async () => {
    await putAway(db, { kind: 'designs', id: cast.fern.id }, later(1));
    const meadow = (await listPads(db, { limit: 20 })).find(({ pad }) => pad.id === cast.fern.pad.id)!;
    expect([meadow.designs.map(({ name }) => name), meadow.sheets]).toEqual([['Hare', 'Hem'], 5]);
    expect((await findPieces(db, SQUARE_8)).choices.map(({ piece }) => piece.design.name)).not.toContain(
      'Fern',
    );
  });
});

test('a pad without designs and a drawn card are deleted, a series with projects is put away', async () => {
  const pad = await addPad(db, { ...PLAIN, name: 'Mistyped' });
  const card = await addCardSize(db, { name: 'Slim', ...THANKS.card! });
  const series = (await addSeries(db, { name: 'Winter', note: 'cold' }))!;
  await createProject(db, { ...THANKS, series: series.id }, later(1));
  const refs: AwayRef[] = [
    { kind: 'pads', id: pad.id },
    { kind: 'cards', id: card.id },
    { kind: 'series', id: series.id },
  ];
  const named = await Promise.all(refs.map(async (ref) => (await readStanding(db, ref))!.namedBy));
  expect(named).toEqual([[], [], ['projects']]);
  for (const [minute, ref] of refs.entries()) await putAway(db, ref, later(2 + minute));
  expect(await listCardSizes(db)).toEqual([]);
  expect(await listSeries(db)).toEqual([]);
  expect(await away()).toEqual([`series ${series.id}`, `cards ${card.id}`, `pads ${pad.id}`]);
  expect(await seriesNamed(db, 'Winter')).toEqual(series);
  expect(await listSeries(db)).toEqual([series]);
});

describe('a tool', () => {
  const tool = {
    name: 'Old ruler',
    kind: 'ruler' as const,
    graduation: THANKS.card!.bulk,
    largestSheet: THANKS.card!.width,
    turning: 'clockwise' as const,
    pinnedInset: null,
    pinnedZeroOffset: null,
  };

  it('is put away but for the one in use, which the file itself keeps', async () => {
    const other = await addNotcher(db, tool);
    expect(await putAway(db, { kind: 'tools', id: 1 }, later(1))).toEqual({ refused: 'in use' });
    await expect(
      db
        .updateTable('notchers')
        .set({ put_away_at: later(1) })
        .execute(),
    ).rejects.toThrow('in use');
    await putAway(db, { kind: 'tools', id: other.tool.id }, later(1));
    expect((await listNotchers(db)).map(({ tool }) => tool.id)).toEqual([1]);
    expect(await readNotcher(db, other.tool.id)).toBeDefined();
  });

  it('comes back by being chosen', async () => {
    const { id } = (await addNotcher(db, tool)).tool;
    await putAway(db, { kind: 'tools', id }, later(1));
    expect((await chooseNotcher(db, id))?.tool.chosen).toBe(true);
    expect(await away()).toEqual([]);
  });
});

test('what is away is read page by page, the last one first', async () => {
  for (let one = 1; one <= 5; one++) {
    const { id } = await createProject(db, { title: `Idea ${one}` }, later(one));
    await putAway(db, { kind: 'projects', id }, later(10 + one));
  }
  const names = async (from: number) => (await listAway(db, { from, limit: 2 })).map(({ name }) => name);
  expect(await names(0)).toEqual(['Idea 5', 'Idea 4']);
  expect(await names(4)).toEqual(['Idea 1']);
});

test('what never was is neither put away nor brought back', async () => {
  expect(await putAway(db, { kind: 'pads', id: 99 }, later(1))).toBeUndefined();
  expect(await bringBack(db, { kind: 'series', id: 99 })).toBeUndefined();
});
