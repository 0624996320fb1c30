/** The journal: projects, their states, envelopes, outcomes, series, and the maker's own settings. */
import { describe, expect, it } from 'vitest';
import { inches, toInches } from '#shared/length.ts';
import { addCardSize, editCardSize, listCardSizes } from '#stores/card-sizes.ts';
import { takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { addTrial, listEnvelopes, makeEnvelope, readEnvelope, recordOutcome } from '#stores/envelopes.ts';
import { readProjectInFull } from '#stores/journal.ts';
import {
  changeStart,
  createProject,
  editProject,
  finishProject,
  listProjects,
  readProject,
  reopenProject,
} from '#stores/projects.ts';
import { addSeries, editSeries, listSeries } from '#stores/series.ts';
import { editSettings, readSettings } from '#stores/settings.ts';
import { spoilBlank } from '#stores/spoil.ts';
import { once } from '#stores/submissions.ts';
import { BLANK, CARD, FIRST, fillShelf, later, RECIPE, size, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { rowCounts, shelf } from '#tests/support/shelf.ts';

const startThanks = async (db: Database, copies = 3) => {
  const { fern, white } = await fillShelf(db);
  const piece = { design: fern.id, offcut: null };
  const taken = await takePiece(db, { piece, wanted: BLANK, copies, project: THANKS, at: later(1) });
  if (!taken || 'refused' in taken) throw new Error('not cut');
  return { ...taken, fern, white };
};

describe('a project', () => {
  it('is an idea until it has a recipe', async () => {
    const db = await emptyDatabase();
    const idea = await createProject(db, { title: 'Leaves in a row' }, FIRST);
    expect(idea).toMatchObject({
      state: 'idea',
      card: null,
      quantity: 1,
      recipe: null,
      notes: '',
      createdAt: FIRST,
    });
    const planned = await editProject(
      db,
      idea.id,
      { card: CARD, recipe: RECIPE, notes: 'with twine' },
      later(1),
    );
    expect(planned).toMatchObject({ state: 'planned', card: CARD, recipe: RECIPE, title: 'Leaves in a row' });
    expect(planned?.changedAt).toBe(later(1));
    expect((await editProject(db, idea.id, { recipe: null }, later(2)))?.state).toBe('idea');
    expect(await editProject(db, 99, { notes: 'x' }, later(3))).toBeUndefined();
  });

  it('is made once all its envelopes are', async () => {
    const db = await emptyDatabase();
    const { envelopes, project } = await startThanks(db);
    for (const [minutes, id] of envelopes.entries()) {
      expect((await readProject(db, project))?.state).toBe('cut');
      await makeEnvelope(db, id, later(2 + minutes));
    }
    expect((await readProject(db, project))?.state).toBe('made');
  });

  it('is made when she says so, and goes on when she says that', async () => {
    const db = await emptyDatabase();
    const { id } = await createProject(db, THANKS, FIRST);
    expect(await finishProject(db, id, later(1))).toMatchObject({ state: 'made', finishedAt: later(1) });
    expect(await reopenProject(db, id, later(2))).toMatchObject({ state: 'planned', finishedAt: null });
  });

  it('is found by state, series and words, changed last first', async () => {
    const db = await emptyDatabase();
    const winter = (await addSeries(db, { name: 'Winter', note: '' }))!;
    const one = await createProject(db, { ...THANKS, series: winter.id }, later(1));
    const other = await createProject(db, { title: 'Tags', lesson: 'Trim LESS than 100%_' }, later(2));
    expect((await listProjects(db)).map(({ id }) => id)).toEqual([other.id, one.id]);
    await editProject(db, one.id, { notes: 'blue' }, later(3));
    expect((await listProjects(db, { limit: 1 })).map(({ id }) => id)).toEqual([one.id]);
    expect((await listProjects(db, { state: 'idea' })).map(({ id }) => id)).toEqual([other.id]);
    expect((await listProjects(db, { series: winter.id }))[0]?.series).toEqual(winter);
    expect((await listProjects(db, { text: 'less than 100%' })).map(({ id }) => id)).toEqual([other.id]);
    expect(await listProjects(db, { text: 'green' })).toEqual([]);
  });

  it('changes the start for the rest, until another recipe comes', async () => {
    const db = await emptyDatabase();
    const { id } = await createProject(db, THANKS, FIRST);
    const start = inches(3);
    expect((await changeStart(db, id, start, later(1)))?.start).toBe(start);
    expect((await editProject(db, id, { title: 'Thanks' }, later(2)))?.start).toBe(start);
    expect((await editProject(db, id, { recipe: RECIPE }, later(3)))?.start).toBeNull();
  });
});

describe('an envelope', () => {
  it('is tried on scrap without counting towards the batch', async () => {
    const db = await emptyDatabase();
    const { id } = await createProject(db, { ...THANKS, quantity: 1 }, FIRST);
    const trial = (await addTrial(db, id, later(1)))!;
    expect(trial).toMatchObject({ number: 1, trial: true, cut: null, design: null, state: 'blank' });
    await makeEnvelope(db, trial.id, later(2));
    expect((await readProject(db, id))?.state).toBe('planned');
    expect(await addTrial(db, 99, later(3))).toBeUndefined();
  });

  it('has its outcome written down, and put right later', async () => {
    const db = await emptyDatabase();
    const { envelopes, project } = await startThanks(db);
    const pocket = size(6.5, 3.5);
    await recordOutcome(
      db,
      envelopes[0]!,
      { felt: 'tight', pocket, wrong: 'tore 🤦', savedBy: 'washi <b>' },
      later(2),
    );
    const [first] = await listEnvelopes(db, project);
    expect(first).toMatchObject({
      state: 'made',
      outcome: {
        felt: 'tight',
        pocket,
        asMade: { square: RECIPE.blank.width, start: RECIPE.starts[0] },
        twin: false,
        finishes: null,
        wrong: 'tore 🤦',
        savedBy: 'washi <b>',
        at: later(2),
      },
    });
    await recordOutcome(db, envelopes[0]!, { felt: 'snug' }, later(3));
    expect((await readEnvelope(db, envelopes[0]!))?.outcome).toMatchObject({
      felt: 'snug',
      pocket: null,
      at: later(2),
    });
    expect(await recordOutcome(db, 99, { felt: 'snug' }, later(4))).toBeUndefined();
  });

  it('was made with the start in use then, or its twin, unless it is said otherwise', async () => {
    const db = await emptyDatabase();
    const { envelopes, project } = await startThanks(db);
    const [one, two, three] = envelopes;
    const pocket = size(6.5, 3.5);
    await makeEnvelope(db, one!, later(2));
    await changeStart(db, project, inches(3), later(3));
    await recordOutcome(db, one!, { pocket }, later(4));
    await recordOutcome(db, two!, { pocket, twin: true }, later(5));
    const asMade = { square: inches(8), start: inches(2.75) };
    const finishes = { C: { shape: 'straight' as const, depth: inches(3) } };
    await recordOutcome(db, three!, { pocket, asMade, finishes }, later(6));
    const made = await listEnvelopes(db, project);
    const starts = made.map(({ outcome }) => outcome?.asMade?.start);
    const twin = inches(toInches(RECIPE.blank.width) - 3);
    expect(starts).toEqual([RECIPE.starts[0], twin, inches(2.75)]);
    expect(made.map(({ start }) => start)).toEqual([null, inches(3), inches(3)]);
    expect(made[2]?.outcome).toMatchObject({ asMade, finishes });
  });

  it('is recorded as spoiled and replaced in one go', async () => {
    const db = await emptyDatabase();
    const { envelopes, project, white } = await startThanks(db, 1);
    const replacement = { piece: { design: white.id, offcut: null }, wanted: BLANK };
    const spoilt = await spoilBlank(db, envelopes[0]!, { wrong: 'cut crooked', replacement }, later(2));
    expect(spoilt).toMatchObject({ envelope: { state: 'spoiled', outcome: { wrong: 'cut crooked' } } });
    expect((await listEnvelopes(db, project)).map(({ state }) => state)).toEqual(['spoiled', 'blank']);
    expect((await shelf(db))[`White ${white.id}`]).toBe(19);
    expect(await spoilBlank(db, envelopes[0]!, { wrong: 'again' }, later(3))).toMatchObject({
      refused: 'not a blank',
    });
    expect(await spoilBlank(db, 99, { wrong: 'what?' }, later(3))).toBeUndefined();
  });

  it('is not spoiled on paper when its replacement is gone', async () => {
    const db = await emptyDatabase();
    const { envelopes, fern } = await startThanks(db, 1);
    const before = await rowCounts(db);
    const replacement = { piece: { design: fern.id, offcut: 1 }, wanted: { ...BLANK, ...size(13, 13) } };
    const refused = await spoilBlank(db, envelopes[0]!, { wrong: 'cut crooked', replacement }, later(2));
    expect(refused).toMatchObject({ refused: 'gone' });
    expect(await rowCounts(db)).toEqual(before);
    expect((await readEnvelope(db, envelopes[0]!))?.state).toBe('blank');
  });

  it('stays spoiled', async () => {
    const db = await emptyDatabase();
    const { envelopes, project } = await startThanks(db, 1);
    await spoilBlank(db, envelopes[0]!, { wrong: 'wet' }, later(2));
    await makeEnvelope(db, envelopes[0]!, later(3));
    expect((await readProjectInFull(db, project))?.envelopes[0]?.state).toBe('spoiled');
  });
});

describe('series, cards and settings', () => {
  it('keep names of series apart', async () => {
    const db = await emptyDatabase();
    const winter = (await addSeries(db, { name: 'Winter', note: '' }))!;
    expect(await addSeries(db, { name: 'Winter', note: 'again' })).toBeUndefined();
    const garden = (await addSeries(db, { name: 'Garden', note: '' }))!;
    expect(await editSeries(db, garden.id, { name: 'Winter', note: 'x' })).toBe('taken');
    expect(await listSeries(db)).toContainEqual(garden);
    expect(await editSeries(db, 99, { name: 'Nowhere', note: '' })).toBeUndefined();
    expect(await editSeries(db, winter.id, { name: 'Frost', note: 'y' })).toMatchObject({
      name: 'Frost',
      note: 'y',
    });
    expect((await listSeries(db)).map(({ name }) => name)).toEqual(['Frost', 'Garden']);
  });

  it('keep the maker’s drawn cards', async () => {
    const db = await emptyDatabase();
    const slim = await addCardSize(db, { name: 'Slim', ...CARD });
    expect(await editCardSize(db, slim.id, { ...slim, name: 'Slimmer' })).toMatchObject({ name: 'Slimmer' });
    expect(await listCardSizes(db)).toEqual([{ id: slim.id, name: 'Slimmer', ...CARD }]);
  });

  it('change what is named and keep the rest', async () => {
    const db = await emptyDatabase();
    const before = await readSettings(db);
    expect(before).toMatchObject({ units: { unit: 'in', step: 16 }, keepAtLeast: inches(0.75) });
    const changed = await editSettings(db, { units: { unit: 'mm' }, longestCut: inches(15) });
    expect(changed).toEqual({ ...before, units: { unit: 'mm' }, longestCut: inches(15) });
  });
});

describe('a form sent twice', () => {
  const act = (title: string) => async (db: Database) => ({
    location: `/projects/${(await createProject(db, { title }, FIRST)).id}`,
  });

  it('does its thing once', async () => {
    const db = await emptyDatabase();
    const first = await once(db, 'token-one', FIRST, act('Tags'));
    expect(first).toEqual({ repeated: false, value: { location: '/projects/1' } });
    expect(await once(db, 'token-one', later(1), act('Tags'))).toEqual({
      repeated: true,
      location: '/projects/1',
    });
    expect((await rowCounts(db)).projects).toBe(1);
  });

  it('may be sent again after a refusal or a failure, with nothing kept of it', async () => {
    const db = await emptyDatabase();
    await once(db, 'token-two', FIRST, async () => ({ location: undefined }));
    const failing = once(db, 'token-two', FIRST, async (db) => {
      await createProject(db, { title: 'Half' }, FIRST);
      throw new Error('no');
    });
    await expect(failing).rejects.toThrow('no');
    expect((await rowCounts(db)).projects).toBe(0);
    expect(await once(db, 'token-two', FIRST, act('Tags'))).toMatchObject({ repeated: false });
  });
});
