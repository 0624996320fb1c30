/** Plans in the data file: kept as asked, cut whole or not at all, undone, ticked; what the database itself refuses. */
import { readFileSync } from 'node:fs';
import { sql } from 'kysely';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '#core/batch/batch.ts';
import type { NewPlan } from '#core/batch/planned.ts';
import { cuttingOf } from '#core/batch/to-order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { earlierCutSheet } from '#core/cutting/trimmer/earlier-steps.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import type { Project } from '#core/project/journal.ts';
import { pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import { inches } from '#shared/length.ts';
import { checkData } from '#stores/checks.ts';
import { listCuts, takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { listEnvelopes } from '#stores/envelopes.ts';
import { countSheets, listMovements } from '#stores/movements.ts';
import { editOffcut, listOffcuts } from '#stores/offcuts.ts';
import {
  addPlan,
  cutPlan,
  failPlan,
  finishPlan,
  latestPlan,
  type PlanCut,
  planChanges,
  readPlan,
  spoilPart,
  tickStep,
  untickStep,
} from '#stores/plans.ts';
import { createProject, editProject, readProject } from '#stores/projects.ts';
import { undoCut } from '#stores/undo.ts';
import {
  BLANK,
  CARD,
  type Cast,
  FIRST,
  fillShelf,
  later,
  RECIPE,
  scrap,
  size,
  THANKS,
} from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { rowCounts, shelf } from '#tests/support/shelf.ts';

let db: Database;
let cast: Cast;
let project: Project;
let other: Project;

beforeEach(async () => {
  db = await emptyDatabase();
  cast = await fillShelf(db);
  project = await createProject(db, THANKS, FIRST);
  other = await createProject(db, { ...THANKS, title: 'For next door', quantity: 1 }, FIRST);
});

const FRONT = {
  name: 'Front',
  ...size(5, 3),
  copies: 2,
  print: 'any way',
  paper: { of: 'any' },
  grammage: null,
  match: false,
} as const;

async function asked(rest: Partial<Batch> = {}): Promise<NewPlan> {
  const batch: Batch = {
    blanks: [
      { project: project.id, copies: 3, missing: 3 },
      { project: other.id, copies: 1, missing: 1 },
    ],
    paper: { of: 'kind', kind: 'patterned' },
    parts: [FRONT],
    match: 'each set',
    keep: [],
    ...rest,
  };
  const pieces = [
    ...(await listDesigns(db, { left: true })).map(pieceOfSheet),
    ...(await listOffcuts(db)).map(pieceOfOffcut),
  ];
  const limits = { longestCut: inches(18), keepAtLeast: inches(1) };
  return { project: project.id, batch, ...cuttingOf(batch, [project, other], { pieces, ...limits }) };
}

async function found(rest: Partial<Batch> = {}, more: Partial<NewPlan> = {}): Promise<number> {
  const plan = { ...(await asked(rest)), ...more };
  const id = await addPlan(db, plan, later(1));
  await finishPlan(db, id, planCuts(plan.order, plan.pieces, { work: 40, seed: 1 }));
  return id;
}

const cutIt = (id: number): Promise<PlanCut | undefined> =>
  cutPlan(db, id, { place: 'blue folder', at: later(2) });

test('is kept as it was asked, and as it was found', async () => {
  const plan = await asked();
  const id = await addPlan(db, plan, later(1));
  expect(await readPlan(db, id)).toMatchObject({
    ...plan,
    plan: null,
    fault: null,
    cut: null,
    trial: false,
    insteadOf: null,
  });
  const cuts = planCuts(plan.order, plan.pieces, { work: 40, seed: 1 });
  await finishPlan(db, id, cuts);
  expect((await readPlan(db, id))!.plan).toEqual(cuts);
  expect((await latestPlan(db, project.id))!.id).toBe(id);
  expect(await latestPlan(db, other.id)).toBeUndefined();
});

test('is made once: a second answer or a late fault changes nothing', async () => {
  const id = await found();
  const before = await readPlan(db, id);
  await finishPlan(db, id, { ...before!.plan!, placed: 99 });
  await failPlan(db, id, 'too late');
  expect(await readPlan(db, id)).toEqual(before);
});

test('keeps its steps with it; one kept before that has those that its ticks are of', async () => {
  const plan = await asked();
  const cuts = planCuts(plan.order, plan.pieces, { work: 40, seed: 1 });
  const id = await found();
  expect((await readPlan(db, id))!.plan!.steps).toEqual(cuts.steps);
  const { steps: _, patterns: __, ...earlier } = cuts;
  const old = await addPlan(db, plan, later(1));
  await finishPlan(db, old, earlier as typeof cuts);
  const read = (await readPlan(db, old))!.plan!;
  expect(read).toEqual({ ...earlier, ...earlierCutSheet(plan.pieces, earlier) });
  expect(read.steps[0]!.number).toBe(0);
  expect(await checkData(db)).toEqual([]);
});

test('one kept before its parts and pieces said what they stand for reads, and is cut, as it did', async () => {
  const { batch, cutting, plan } = JSON.parse(
    readFileSync('tests/fixtures/plan-kept-before-identity.json', 'utf8'),
  );
  const recipe = solveEnvelope({ card: CARD, notcher: RECIPE.notcher }).find(
    ({ fold }) => fold === 'two-piece',
  )!;
  await editProject(db, project.id, { ...THANKS, recipe, quantity: 2 }, later(1));
  const asked = { project: project.id, batch, ...cutting };
  const id = await addPlan(db, asked, later(1));
  await finishPlan(db, id, plan);
  const read = (await readPlan(db, id))!;
  expect(read.order.parts.map((part) => [part.id, part.of])).toEqual([
    ['envelope', { project: project.id, piece: 0 }],
    ['envelope, piece 2', { project: project.id, piece: 1 }],
    ['envelope (project 2)', { project: other.id, piece: 0 }],
    ['Tag (project 2)', { typed: 0 }],
    ['Part Envelope, piece 2', { typed: 1 }],
  ]);
  expect(read.pieces.map(({ id, ref }) => [id, ref])).toContainEqual([
    'offcut-3',
    { design: cast.hare.id, offcut: 3 },
  ]);
  expect(read.pieces.find(({ id }) => id === 'sheet-4')!.ref).toEqual({ design: 4, offcut: null });
  expect(await planChanges(db, read)).toEqual([]);
  await cutIt(id);
  const parts = (await listCuts(db, project.id)).flatMap(({ pieces }) =>
    pieces.flatMap(({ parts }) => parts),
  );
  expect(parts.map(({ part, project }) => (project ? `${part} for ${project}` : part)).sort()).toEqual([
    ...['Part Envelope, piece 2', 'Part Envelope, piece 2'],
    ...Array(4).fill('Tag (project 2)'),
    ...['envelope', 'envelope', `envelope for ${other.id}`, 'envelope, piece 2', 'envelope, piece 2'],
  ]);
  expect(await checkData(db)).toEqual([]);
});

describe('cutting it', () => {
  test('writes pieces, leftovers, movements and the envelopes of every project in one go', async () => {
    const before = await shelf(db);
    const id = await found();
    const plan = (await readPlan(db, id))!;
    const done = await cutIt(id);
    expect(done).not.toHaveProperty('refused');
    const cut = (done as Extract<PlanCut, { cut: number }>).cut;
    expect((await readPlan(db, id))!.cut).toEqual({ id: cut, at: later(2) });
    expect((await listEnvelopes(db, project.id)).map(({ state }) => state)).toEqual([
      'blank',
      'blank',
      'blank',
    ]);
    expect((await listEnvelopes(db, other.id)).map((one) => one.cut)).toEqual([cut]);
    expect((await readProject(db, other.id))!.state).toBe('cut');
    expect((await listCuts(db, other.id)).map((one) => one.id)).toEqual([cut]);
    const lines = await listMovements(db, { cut });
    expect(lines.every((line) => line.project === project.id)).toBe(true);
    const taken = lines.filter(({ delta }) => delta < 0).reduce((sum, { delta }) => sum - delta, 0);
    expect(taken).toBe(plan.plan!.used.length);
    const left = plan.plan!.used.reduce((sum, one) => sum + one.leftovers.length, 0);
    expect(lines.filter(({ delta }) => delta > 0).reduce((sum, { delta }) => sum + delta, 0)).toBe(left);
    expect(await shelf(db)).not.toEqual(before);
    expect(await checkData(db)).toEqual([]);
  });

  test('puts leftovers of sheets where she says, and others where their piece lay', async () => {
    const id = await found();
    await cutIt(id);
    const [cut] = await listCuts(db, project.id);
    for (const { piece, leftovers } of cut!.pieces) {
      const lay = piece.offcut === null ? 'blue folder' : 'tray 1';
      for (const one of leftovers) expect(one.place).toBe(lay);
    }
  });

  test('is undone whole, and can then be done again', async () => {
    const before = await shelf(db);
    const id = await found();
    const { cut } = (await cutIt(id)) as Extract<PlanCut, { cut: number }>;
    expect(await undoCut(db, cut, later(3))).toEqual({ undone: cut });
    expect(await shelf(db)).toEqual(before);
    expect(await listEnvelopes(db, other.id)).toEqual([]);
    expect((await readProject(db, other.id))!.state).toBe('planned');
    expect((await readPlan(db, id))!.cut).toBeNull();
    expect(await cutIt(id)).toHaveProperty('cut');
    expect(await checkData(db)).toEqual([]);
  });

  test('marks a trial’s envelopes', async () => {
    const one = { blanks: [{ project: project.id, copies: 1, missing: 3 }], parts: [] };
    await cutIt(await found(one, { trial: true }));
    expect((await listEnvelopes(db, project.id)).map(({ trial }) => trial)).toEqual([true]);
  });

  test('is refused the second time', async () => {
    const id = await found();
    await cutIt(id);
    const rows = await rowCounts(db);
    expect(await cutIt(id)).toEqual({ refused: 'cut already' });
    expect(await rowCounts(db)).toEqual(rows);
  });

  test('has nothing to cut without a plan', async () => {
    expect(await cutIt(99)).toBeUndefined();
    expect(await cutIt(await addPlan(db, await asked(), later(1)))).toBeUndefined();
  });
});

describe('once something has changed nothing is written', () => {
  const refusal = async (id: number) => {
    const [rows, lies] = [await rowCounts(db), await shelf(db)];
    const answer = await cutIt(id);
    expect(answer).toMatchObject({ refused: 'changed' });
    expect(await rowCounts(db)).toEqual(rows);
    expect(await shelf(db)).toEqual(lies);
    expect((await readPlan(db, id))!.cut).toBeNull();
    const { changes } = answer as Extract<PlanCut, { refused: 'changed' }>;
    expect(await planChanges(db, (await readPlan(db, id))!)).toEqual(changes);
    return changes;
  };

  test('sheets are gone', async () => {
    const id = await found({ paper: { of: 'design', design: cast.fern.id } });
    await countSheets(db, cast.fern.id, { sheets: 0, at: later(2) });
    const piece = { design: cast.fern.id, offcut: null };
    expect(await refusal(id)).toMatchObject([{ kind: 'fewer', piece, left: 0 }]);
  });

  test('an offcut was put right', async () => {
    const id = await found({ paper: { of: 'design', design: cast.fern.id } });
    const piece = { design: cast.fern.id, offcut: cast.corner.id };
    await editOffcut(db, cast.corner.id, scrap(8.25, 8.5));
    expect(await refusal(id)).toEqual([{ kind: 'other piece', piece }]);
  });

  test('the trial asked for a larger square', async () => {
    const id = await found();
    const recipe = { ...RECIPE, blank: size(8.5, 8.5) };
    await editProject(db, project.id, { recipe }, later(2));
    expect(await refusal(id)).toMatchObject([{ kind: 'other blank', project: project.id }]);
  });

  test('a blank came from elsewhere', async () => {
    const id = await found();
    const piece = { design: cast.white.id, offcut: null };
    await takePiece(db, { piece, wanted: BLANK, copies: 1, project: other.id, at: later(2) });
    expect(await refusal(id)).toEqual([{ kind: 'fewer missing', project: other.id, was: 1, now: 0 }]);
  });
});

test('ticks stay until they are taken back, each once', async () => {
  const id = await found();
  for (const step of [2, 0, 2]) await tickStep(db, id, step);
  expect((await readPlan(db, id))!.ticks).toEqual([0, 2]);
  await untickStep(db, id, 0);
  await untickStep(db, id, 7);
  expect((await readPlan(db, id))!.ticks).toEqual([2]);
});

test('spoiled parts are written down in their order', async () => {
  const id = await found();
  await spoilPart(db, id, { part: 'Front', wrong: 'glue on the print' }, later(4));
  await spoilPart(db, id, { part: 'Front', wrong: 'cut short' }, later(5));
  expect((await readPlan(db, id))!.spoiled.map(({ wrong }) => wrong)).toEqual([
    'glue on the print',
    'cut short',
  ]);
});

describe('the database itself refuses', () => {
  const change = (id: number, set: string) => sql.raw(`UPDATE plans SET ${set} WHERE id = ${id}`).execute(db);

  test.each([
    ['another plan', `plan = '{}'`],
    ['another order', `cutting = '{}'`],
    ['another batch', `batch = '{}'`],
    ['another project', 'project_id = 2'],
    ['a fault beside a plan', `fault = 'x'`],
    ['a cut that never was', 'cut_id = 99'],
    ['to stand in for a later one', 'instead_of = 99'],
    ['text that is no JSON', `plan = 'nonsense'`],
  ])('%s', async (_, set) => {
    await expect(change(await found(), set)).rejects.toThrow();
  });

  test('the cut of another project', async () => {
    const id = await found();
    const piece = { design: cast.white.id, offcut: null };
    const taken = await takePiece(db, { piece, wanted: BLANK, copies: 1, project: other.id, at: later(2) });
    const { cut } = taken as { cut: number };
    await expect(change(id, `cut_id = ${cut}`)).rejects.toThrow('another project');
  });

  test('a step before the first, and a spoiled part without a word', async () => {
    const id = await found();
    await expect(tickStep(db, id, -1)).rejects.toThrow();
    await expect(spoilPart(db, id, { part: 'Front', wrong: ' ' }, later(2))).rejects.toThrow();
  });
});

test('verify finds a plan that its own judge would refuse', async () => {
  const plan = await asked();
  const id = await addPlan(db, plan, later(1));
  const cuts = planCuts(plan.order, plan.pieces, { work: 40, seed: 1 });
  await finishPlan(db, id, { ...cuts, placed: cuts.placed + 1 });
  expect(await checkData(db)).toEqual([expect.stringContaining(`plan ${id}: placed`)]);
});
