/** Lessons as they are told, changed, shown and hidden, and as the migration makes them of an old book. */
import { Migrator, sql } from 'kysely';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Lesson, Place } from '#core/project/lessons.ts';
import { migrations } from '#migrations/all.ts';
import { checkData } from '#stores/checks.ts';
import { type Database, migrate, openDatabase } from '#stores/database.ts';
import { addTrial, recordOutcome, withdrawOutcome } from '#stores/envelopes.ts';
import {
  hideLesson,
  lessonsOf,
  placeLesson,
  placeTelling,
  showAlways,
  unhideLesson,
} from '#stores/lessons.ts';
import { lessonsHere } from '#stores/lessons-here.ts';
import { createProject, editProject } from '#stores/projects.ts';
import { spoilBlank } from '#stores/spoil.ts';
import { CARD, type Cast, fillShelf, later, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { takeThree } from '#tests/support/projects.ts';
import { watchQueries } from '#tests/support/queries.ts';

let db: Database;
let cast: Cast;
let project: number;
let envelopes: readonly number[];

beforeEach(async () => {
  db = await emptyDatabase();
  cast = await fillShelf(db);
  ({ project, envelopes } = await takeThree(db, cast, { ...THANKS, notcher: 1 }));
});

const GLUED = { wrong: 'The glue crept past the flap.', savedBy: 'Baking paper.' };
const AT_GLUE: Place = {
  steps: ['glue'],
  parts: ['envelope'],
  project: null,
  designs: [],
  kinds: ['patterned'],
  tool: null,
  size: null,
  fold: null,
};
const wordsIn = (lessons: readonly Lesson[]): string[] => lessons.map(({ words }) => words);

describe('what is told', () => {
  test('of an envelope is a lesson with a guessed step and what it is about', async () => {
    await recordOutcome(db, envelopes[0]!, GLUED, later(2));
    expect(await lessonsOf(db, project)).toMatchObject([
      {
        words: GLUED.wrong,
        savedBy: GLUED.savedBy,
        step: 'glue',
        chosen: false,
        envelope: 1,
        features: {
          part: 'envelope',
          design: cast.fern.id,
          kind: 'patterned',
          tool: 1,
          size: 'medium',
          fold: 'diagonal',
        },
      },
    ]);
    expect(await checkData(db)).toEqual([]);
  });

  test('of the project, of a spoiled blank and of several alike, each wording once', async () => {
    for (const id of envelopes.slice(0, 2)) await recordOutcome(db, id, GLUED, later(2));
    await spoilBlank(db, envelopes[2]!, { wrong: 'Cut short.' }, later(3));
    await editProject(db, project, { lesson: 'Fold slowly.' }, later(4));
    const steps = (await lessonsOf(db, project)).map(({ step, envelope }) => [step, envelope]);
    expect(steps).toEqual([
      ['glue', 1],
      ['cut', 3],
      ['fold', null],
    ]);
    expect(await checkData(db)).toEqual([]);
  });

  test('otherwise is the same lesson with a new guess, unless she chose its step; taken back it is none', async () => {
    await recordOutcome(db, envelopes[0]!, GLUED, later(2));
    const id = (await lessonsOf(db, project))[0]!.id;
    await hideLesson(db, id, { place: 'somewhere' });
    await recordOutcome(db, envelopes[0]!, { wrong: 'Scored too hard.' }, later(3));
    expect(await lessonsOf(db, project)).toMatchObject([{ id, step: 'score', savedBy: '', hidden: 1 }]);
    await placeLesson(db, id, 'notch');
    await recordOutcome(db, envelopes[0]!, GLUED, later(4));
    expect(await lessonsOf(db, project)).toMatchObject([{ id, step: 'notch', chosen: true }]);
    await placeLesson(db, id, null);
    expect(await lessonsOf(db, project)).toMatchObject([{ id, step: 'glue', chosen: false }]);
    await recordOutcome(db, envelopes[0]!, { felt: 'easy' }, later(5));
    expect(await lessonsOf(db, project)).toEqual([]);
  });

  test('of two alike stays, marks and all, until both are withdrawn', async () => {
    for (const id of envelopes.slice(0, 2)) await recordOutcome(db, id, GLUED, later(2));
    const id = (await lessonsOf(db, project))[0]!.id;
    await showAlways(db, id, true);
    await withdrawOutcome(db, envelopes[0]!, later(3));
    expect(await lessonsOf(db, project)).toMatchObject([{ id, envelope: 2, always: true }]);
    expect(await checkData(db)).toEqual([]);
    await withdrawOutcome(db, envelopes[1]!, later(4));
    expect(await lessonsOf(db, project)).toEqual([]);
  });

  test('on a trial from scrap belongs to the project’s paper', async () => {
    const trial = (await addTrial(db, project, later(2)))!;
    await recordOutcome(db, trial.id, { wrong: 'Tore at the notch.' }, later(3));
    expect((await lessonsOf(db, project))[0]!.features).toMatchObject({
      design: cast.fern.id,
      kind: 'patterned',
    });
    const { id } = await createProject(db, { title: 'An idea', lesson: 'Glue thinly.' }, later(4));
    expect((await lessonsOf(db, id))[0]!.features).toMatchObject({ design: null, kind: null, fold: null });
  });

  test('gets its step with the telling', async () => {
    await recordOutcome(db, envelopes[0]!, GLUED, later(2));
    await placeTelling(db, project, GLUED, 'fold');
    expect(await lessonsOf(db, project)).toMatchObject([{ step: 'fold', chosen: true }]);
  });
});

describe('a lesson comes up', () => {
  let id: number;

  beforeEach(async () => {
    await recordOutcome(db, envelopes[0]!, GLUED, later(2));
    id = (await lessonsOf(db, project))[0]!.id;
  });

  test('where its step and its paper do', async () => {
    expect(wordsIn(await lessonsHere(db, AT_GLUE))).toEqual([GLUED.wrong]);
    expect(await lessonsHere(db, { ...AT_GLUE, steps: ['score'] })).toEqual([]);
    expect(await lessonsHere(db, { ...AT_GLUE, kinds: ['vellum'] })).toEqual([]);
    expect(wordsIn(await lessonsHere(db, { ...AT_GLUE, kinds: [], designs: [cast.fern.id] }))).toHaveLength(
      1,
    );
    expect(await lessonsHere(db, { ...AT_GLUE, kinds: [] })).toEqual([]);
  });

  test('always, whatever the paper', async () => {
    await showAlways(db, id, true);
    expect(wordsIn(await lessonsHere(db, { ...AT_GLUE, kinds: [] }))).toEqual([GLUED.wrong]);
    await showAlways(db, id, false);
    expect(await lessonsHere(db, { ...AT_GLUE, kinds: [] })).toEqual([]);
  });

  test('not where it was hidden, for a project or for a kind of place, until it is let back', async () => {
    const forProject = { ...AT_GLUE, project };
    await hideLesson(db, id, { project });
    await hideLesson(db, id, { project });
    expect(await lessonsHere(db, forProject)).toEqual([]);
    expect(await lessonsHere(db, AT_GLUE)).toHaveLength(1);
    await hideLesson(db, id, { place: 'envelope, any fold, patterned' });
    expect(await lessonsHere(db, AT_GLUE)).toEqual([]);
    expect(await lessonsHere(db, { ...AT_GLUE, fold: 'diagonal' })).toHaveLength(1);
    await unhideLesson(db, id);
    expect(await lessonsHere(db, forProject)).toHaveLength(1);
  });

  test('not while its project is put away', async () => {
    await sql`UPDATE projects SET put_away_at = ${later(9)} WHERE id = ${project}`.execute(db);
    expect(await lessonsHere(db, AT_GLUE)).toEqual([]);
  });

  test('of many, found in one query by its indexes, the best two', async () => {
    for (let one = 0; one < 40; one += 1)
      await createProject(db, { title: `${one}`, lesson: `Glue number ${one}.` }, later(one));
    await sql`UPDATE lessons SET paper_kind = 'patterned' WHERE paper_kind IS NULL`.execute(db);
    const queries = watchQueries(db);
    const place = { ...AT_GLUE, steps: ['paper', 'glue'] as const, designs: [cast.fern.id, cast.hare.id] };
    expect(wordsIn(await lessonsHere(db, place))).toEqual([GLUED.wrong, 'Glue number 39.']);
    const [asked, ...more] = queries.take();
    expect(more).toEqual([]);
    const split = asked!.lastIndexOf(' [');
    const text = asked!.slice(0, split);
    const values = JSON.parse(asked!.slice(split + 1)) as unknown[];
    const parts = text
      .split('?')
      .flatMap((part, index) => [sql.raw(part), ...(index < values.length ? [sql.lit(values[index])] : [])]);
    const plan = await sql<{ detail: string }>`EXPLAIN QUERY PLAN ${sql.join(parts, sql``)}`.execute(db);
    const scans = plan.rows
      .map(({ detail }) => detail)
      .filter((line) => /SCAN (lessons|projects)\b/.test(line));
    expect(scans).toEqual([]);
  });
});

test('an old book’s words become lessons where its steps can be guessed, and stay where they were', async () => {
  const old = openDatabase(':memory:');
  const before = Object.fromEntries(Object.entries(migrations).filter(([name]) => name < '0011'));
  await new Migrator({ db: old, provider: { getMigrations: async () => before } }).migrateToLatest();
  await sql`INSERT INTO pads (id, name, kind, width, height, low_mark, source, note) VALUES (1, 'Pad', 'vellum', 1, 1, 0, '', '')`.execute(
    old,
  );
  await sql`INSERT INTO designs (id, pad_id, name, direction, double_sided, swatch) VALUES (1, 1, 'Mist', 'any way', 0, '{}')`.execute(
    old,
  );
  await sql`INSERT INTO projects (id, title, card_width, card_height, card_bulk, quantity, recipe, notes, lesson, created_at, changed_at)
    VALUES (1, 'Frosted', ${CARD.width}, ${CARD.height}, 0, 3, '{"fold":"diagonal"}', '', 'Dry tape only.', ${later(0)}, ${later(9)})`.execute(
    old,
  );
  await sql`INSERT INTO cuts (id, project_id, at, pieces) VALUES (1, 1, ${later(1)}, '[]')`.execute(old);
  for (const number of [1, 2, 3]) {
    await sql`INSERT INTO envelopes (id, project_id, number, cut_id, design_id, state, trial)
      VALUES (${number}, 1, ${number}, 1, 1, 'made', 0)`.execute(old);
    await sql`INSERT INTO outcomes (envelope_id, at, notcher_id, twin, wrong, saved_by)
      VALUES (${number}, ${later(number)}, 1, 0, ${number < 3 ? 'The glue rippled.' : ''}, ${number < 3 ? '' : 'Pressed it.'})`.execute(
      old,
    );
  }
  await migrate(old);
  const about = { part: 'envelope', design: 1, kind: 'vellum', size: 'medium', fold: 'diagonal' };
  expect(await lessonsOf(old, 1)).toMatchObject([
    { words: 'The glue rippled.', step: 'glue', envelope: 1, features: { ...about, tool: 1 } },
    { words: 'Pressed it.', step: null, envelope: 3 },
    { words: 'Dry tape only.', step: 'glue', envelope: null, features: about },
  ]);
  const { rows } = await sql<{ wrong: string }>`SELECT wrong FROM outcomes WHERE envelope_id = 1`.execute(
    old,
  );
  expect(rows).toEqual([{ wrong: 'The glue rippled.' }]);
  await old.destroy();
});
