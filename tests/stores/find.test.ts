/** What is found, whoever wrote it; that the index follows every write, and that an old book is found too. */
import { Migrator, sql } from 'kysely';
import { describe, expect, it, onTestFinished } from 'vitest';
import { readQuery } from '#core/finding/read-query.ts';
import { longFacets, SIZE_WORDS } from '#core/finding/vocabulary.ts';
import { migrations } from '#migrations/all.ts';
import { inches } from '#shared/length.ts';
import { addCardSize } from '#stores/card-sizes.ts';
import { checkFinds } from '#stores/checks-finds.ts';
import { type Database, migrate, openDatabase } from '#stores/database.ts';
import { editDesign } from '#stores/designs.ts';
import { recordOutcome } from '#stores/envelopes.ts';
import { find, type Sought } from '#stores/find.ts';
import { binOffcut } from '#stores/movements.ts';
import { editOffcut } from '#stores/offcuts.ts';
import { editPad } from '#stores/pads.ts';
import { changeStart, createProject, editProject } from '#stores/projects.ts';
import { addSeries, editSeries } from '#stores/series.ts';
import { tagProject } from '#stores/tags.ts';
import { fillShelf, later, MEADOW, RECIPE, scrap, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { takeThree } from '#tests/support/projects.ts';

async function found(db: Database, typed: string, sought: Sought = {}): Promise<string[]> {
  const groups = await find(db, readQuery(typed, { unit: 'in', step: 16 }), sought);
  return groups.flatMap(({ kind, finds }) => finds.map(({ title }) => `${kind}: ${title}`));
}

const THANKED = 'project: Thank you, neighbours';

describe('words', () => {
  it('are found in any order, from their beginnings, without accents, in title, notes and lesson', async () => {
    const db = await emptyDatabase();
    await createProject(db, { ...THANKS, notes: 'Crêpe paper, thin', lesson: 'Score it twice.' }, later(1));
    for (const typed of ['neighbours thank', 'neig', 'crepe', 'CRÊPE thin', 'than crep']) {
      expect((await found(db, typed))[0], typed).toBe(THANKED);
    }
    expect(await found(db, 'twice')).toEqual(['lesson: Thank you, neighbours']);
    expect(await found(db, 'crepe moth')).toEqual([]);
  });

  it('never break the question, whatever they are', async () => {
    const db = await emptyDatabase();
    await createProject(db, { title: 'Hare AND moon' }, later(1));
    for (const typed of [
      'hare AND moon',
      '"hare',
      "hare' OR 1=1 --",
      'NEAR(hare moon)',
      'title:hare',
      'hare*)',
      '\uE000hare',
    ])
      expect(await found(db, typed).catch(String), typed).toBeInstanceOf(Array);
    expect(await found(db, '"hare" (moon) AND')).toEqual(['project: Hare AND moon']);
  });

  it('name a print, a kind, a size', async () => {
    const db = await emptyDatabase();
    const { hare, lying } = await fillShelf(db);
    await editDesign(db, hare.id, { ...hare, swatch: { ...hare.swatch, motif: 'stripes' } });
    await createProject(
      db,
      { ...THANKS, title: 'Tiny one', card: { ...scrap(3, 2), bulk: inches(0) } },
      later(1),
    );
    await createProject(db, THANKS, later(1));
    expect(await found(db, 'striped offcut')).toEqual([`offcut: ${lying.code} Hare`]);
    expect(await found(db, 'strip')).toContain('design: Hare');
    expect(await found(db, 'mini envelope')).toEqual(['project: Tiny one']);
    expect(await found(db, 'series')).toEqual([]);
    await addSeries(db, { name: 'Lamp evenings', note: '' });
    expect(await found(db, 'series')).toEqual(['series: Lamp evenings']);
  });

  it('find an offcut by its code, also when it is gone', async () => {
    const db = await emptyDatabase();
    const { corner } = await fillShelf(db);
    expect((await found(db, corner.code.toLowerCase()))[0]).toBe(`offcut: ${corner.code} Fern`);
    await binOffcut(db, corner.id, { at: later(1), count: 1 });
    expect(await found(db, corner.code)).toEqual([`offcut: ${corner.code} Fern`]);
    expect(await found(db, 'tray fern')).toEqual([expect.stringMatching(/^offcut: .. Fern$/)]);
  });
});

describe('measures', () => {
  it('are found in every field that holds one, the nearest first', async () => {
    const db = await emptyDatabase();
    const cast = await fillShelf(db);
    const { project, envelopes } = await takeThree(db, cast);
    await recordOutcome(
      db,
      envelopes[0]!,
      {
        pocket: { width: inches(6.25), height: inches(3.5) },
        asMade: { square: inches(7), start: inches(2.8125) },
      },
      later(2),
    );
    await changeStart(db, project, inches(2.75), later(3));
    const { blank } = RECIPE;
    expect(await found(db, '5 7/8')).toContain(THANKED);
    expect(await found(db, '3 x 5.875')).toContain(THANKED);
    expect(await found(db, `${blank.width / 1_016_000} in`)).toContain(THANKED);
    expect(await found(db, '2 3/4')).toContain(THANKED);
    expect(await found(db, '2 13/16')).toContain(`outcome: Thank you, neighbours, envelope 1`);
    expect(await found(db, '3 1/2 x 6 1/4')).toEqual([`outcome: Thank you, neighbours, envelope 1`]);
    expect(await found(db, '215.9 mm')).toContain('offcut: CC Fern');
    expect(await found(db, '12 x 12')).toContain('pad: Meadow walk');
    expect(await found(db, '1 1/2')).toEqual(['design: Hem']);
    expect(await found(db, '50 in')).toEqual([]);
  });

  it('come together with words and with each other', async () => {
    const db = await emptyDatabase();
    await fillShelf(db);
    expect(await found(db, 'hare 9 in')).toEqual([expect.stringMatching(/^offcut: .. Hare$/)]);
    expect(await found(db, 'fern 9 in')).toEqual([]);
    expect(await found(db, '8.5, 11 in')).toEqual(['pad: White card']);
  });

  it('stand in the order of their distance', async () => {
    const db = await emptyDatabase();
    const add = (width: number) => addCardSize(db, { name: `${width}`, ...scrap(width, 1), bulk: inches(0) });
    for (const width of [5.5, 5.4375, 5.375, 5.34375, 5.390625]) await add(width);
    expect(await found(db, '5 3/8')).toEqual(
      [5.375, 5.390625, 5.34375, 5.4375].map((width) => `card: ${width}`),
    );
  });
});

describe('filters', () => {
  it('narrow by size, fold, fit, paper and month, alone or with words', async () => {
    const db = await emptyDatabase();
    await takeThree(db, await fillShelf(db));
    const all = [
      { name: 'fold', value: 'diagonal' },
      { name: 'fit', value: RECIPE.fit },
      { name: 'paper', value: 'patterned' },
      { name: 'month', value: '2026-03' },
      ...longFacets(SIZE_WORDS.find(({ name }) => name === 'medium')!),
    ] as const;
    expect(await found(db, '', { facets: all })).toEqual([THANKED]);
    expect(await found(db, 'thank', { facets: all })).toEqual([THANKED]);
    for (const facet of [
      { name: 'fold', value: 'side-seam' },
      { name: 'paper', value: 'vellum' },
      { name: 'month', value: '2026-04' },
    ] as const)
      expect(await found(db, 'thank', { facets: [facet] })).toEqual([]);
  });

  it('by tag, alone, with words and with a measure', async () => {
    const db = await emptyDatabase();
    const { project, envelopes } = await takeThree(db, await fillShelf(db));
    await createProject(db, { ...THANKS, title: 'Thank you, again' }, later(1));
    await recordOutcome(db, envelopes[0]!, { wrong: 'thanks torn' }, later(2));
    await tagProject(db, project, ['Kirigami']);
    const torn = 'outcome: Thank you, neighbours, envelope 1';
    expect(await found(db, '', { tag: 'kirigami' })).toEqual([THANKED, torn]);
    expect(await found(db, 'thank', { tag: 'Kirigami' })).toEqual([THANKED, torn]);
    expect(await found(db, '5 7/8 x 3', { tag: 'Kirigami' })).toEqual([THANKED]);
    expect(await found(db, 'thank', { tag: 'other' })).toEqual([]);
  });

  it('leave out what is put away', async () => {
    const db = await emptyDatabase();
    const { id } = await createProject(db, { ...THANKS, lesson: 'Thank twice.' }, later(1));
    expect(await found(db, 'thank')).toHaveLength(2);
    await db
      .updateTable('projects')
      .set({ put_away_at: later(2) })
      .where('id', '=', id)
      .execute();
    expect(await found(db, 'thank')).toEqual([]);
  });

  it('by kind, and by how many', async () => {
    const db = await emptyDatabase();
    await fillShelf(db);
    const groups = await find(db, readQuery('fern', { unit: 'mm' }), { kinds: ['offcut'], limit: 1 });
    expect(groups).toMatchObject([{ kind: 'offcut', more: true, finds: [{ kind: 'offcut' }] }]);
  });
});

/** As a book of migration 0010 holds them. */
const OLD_BOOK = [
  sql`INSERT INTO pads (name, kind, width, height, low_mark, source, note)
    VALUES ('Meadow', 'patterned', 12192000, 12192000, 5, '', '')`,
  sql`INSERT INTO designs (pad_id, name, direction, double_sided, swatch)
    VALUES (1, 'Fern', 'any way', 0, '{"motif":"stripes","ground":"#ffffff","inks":["#000000"]}')`,
  sql`INSERT INTO offcuts (design_id, width, height, border, code, place, note)
    VALUES (1, ${inches(9)}, ${inches(4)}, 0, 'CC', 'tray 1', '')`,
  sql`INSERT INTO movements (at, kind, design_id, offcut_id, delta, note)
    VALUES (${later(1)}, 'counted', 1, 1, 1, '')`,
  sql`INSERT INTO projects (title, card_width, card_height, card_bulk, quantity, notes, lesson, created_at, changed_at)
    VALUES ('Thank you, neighbours', ${inches(5.875)}, ${inches(3)}, 0, 3, '', '', ${later(1)}, ${later(1)})`,
];

describe('the index', () => {
  it('follows whatever is written', async () => {
    const db = await emptyDatabase();
    const cast = await fillShelf(db);
    const series = (await addSeries(db, { name: 'Lamps', note: '' }))!;
    const { project, envelopes } = await takeThree(db, cast, { ...THANKS, series: series.id });
    await recordOutcome(db, envelopes[0]!, { wrong: 'The vellum rippled.' }, later(2));
    await editSeries(db, series.id, { name: 'Lanterns', note: '' });
    await editProject(db, project, { title: 'Renamed' }, later(3));
    await editDesign(db, cast.fern.id, { ...cast.fern, name: 'Bracken' });
    await editPad(db, cast.fern.pad.id, { ...MEADOW, name: 'Moor', kind: 'vellum' });
    await editOffcut(db, cast.strips.id, scrap(5, 4, { place: 'shoe box' }));
    await binOffcut(db, cast.lying.id, { at: later(4), count: 1 });
    expect(await checkFinds(db)).toEqual([]);
    expect(await found(db, 'lanterns bracken')).toEqual(['project: Renamed']);
    expect(await found(db, 'rippled')).toEqual(['outcome: Renamed, envelope 1']);
    expect(await found(db, 'shoe')).toEqual(['place: shoe box', `offcut: ${cast.strips.code} Bracken`]);
    expect(await found(db, 'tray 2')).toEqual([]);
    expect(await found(db, 'fern')).toEqual([]);
  });

  it('of an old book is made when it is opened', async () => {
    const db = openDatabase(':memory:');
    onTestFinished(() => db.destroy());
    const before = Object.fromEntries(Object.entries(migrations).filter(([name]) => name < '0012'));
    await new Migrator({ db, provider: { getMigrations: async () => before } }).migrateToLatest();
    for (const row of OLD_BOOK) await row.execute(db);
    await migrate(db);
    expect(await checkFinds(db)).toEqual([]);
    expect(await found(db, 'neighbours')).toEqual([THANKED]);
    expect(await found(db, 'striped offcut 9 in')).toEqual(['offcut: CC Fern']);
    expect(await found(db, 'tray 1')).toContain('place: tray 1');
    expect(await found(db, '5 7/8 x 3')).toContain(THANKED);
  });

  it.each([
    ['a row that is missing', sql`DELETE FROM finds WHERE kind = 'design'`, /not found as it is written/],
    ['a row too many', sql`UPDATE finds SET title = 'x' WHERE kind = 'pad'`, /found though it is not there/],
    [
      'a place',
      sql`DELETE FROM finds WHERE kind = 'place'`,
      /a place on the shelf that is not found: tray 1/,
    ],
    ['a measure', sql`DELETE FROM find_measures WHERE field = 'piece'`, /a measure that is not found/],
    ['words', sql`INSERT INTO find_words_offcut (rowid, title) VALUES (7, 'ghost')`, /the words of offcut/],
  ])('is held to what is written: %s', async (_, breaking, words) => {
    const db = await emptyDatabase();
    await fillShelf(db);
    expect(await checkFinds(db)).toEqual([]);
    await breaking.execute(db);
    expect((await checkFinds(db)).join('\n')).toMatch(words);
  });
});
