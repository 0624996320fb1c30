/** The journal's invariants: cuts against the ledger and their own trees, envelopes, outcomes, states, JSON columns. */
import type { RecordedPiece } from '#core/project/journal.ts';
import { problemsOfCut } from '#core/stash/replay.ts';
import { ENVELOPE_PART } from '#core/stash/stash.ts';
import { unreadable } from '#shared/schemas/stored.ts';
import { projectsOf } from './cuts.ts';
import type { Database } from './database.ts';
import { progressRows, stateOf } from './progress.ts';

export async function checkJournal(db: Database): Promise<string[]> {
  return [...(await checkProjects(db)), ...(await checkCuts(db)), ...(await checkEnvelopes(db))];
}

async function checkProjects(db: Database): Promise<string[]> {
  const rows = await db.selectFrom('projects').select(['id', 'recipe', 'look']).execute();
  const progress = await progressRows(db).execute();
  return [
    ...rows.flatMap(({ id, recipe, look }) => [
      ...cannotRead('recipe', recipe, `project ${id}`),
      ...cannotRead('look', look, `project ${id}`),
    ]),
    ...progress
      .filter((row) => row.state !== stateOf(row))
      .map((row) => `project ${row.id} is called ${row.state} but is ${stateOf(row)}`),
  ];
}

async function checkCuts(db: Database): Promise<string[]> {
  const cuts = await db.selectFrom('cuts').selectAll().execute();
  const failures: string[] = [];
  for (const { id, pieces, undone_at } of cuts) {
    const broken = cannotRead('pieces', pieces, `cut ${id}`);
    failures.push(...broken);
    if (broken.length > 0) continue;
    const recorded: RecordedPiece[] = JSON.parse(pieces);
    failures.push(...recorded.flatMap(problemsOfCut).map((problem) => `cut ${id}: ${problem}`));
    if (!same(await ledgerOf(db, id), tallyOf(recorded)))
      failures.push(`cut ${id} is not what the ledger says`);
    const blanks = recorded.flatMap(({ parts }) => parts).filter(({ part }) => part === ENVELOPE_PART).length;
    const standing = await envelopesOf(db, id);
    if (standing !== (undone_at === null ? blanks : 0)) failures.push(`cut ${id} has ${standing} envelopes`);
  }
  return failures;
}

async function checkEnvelopes(db: Database): Promise<string[]> {
  const rows = await db
    .selectFrom('envelopes')
    .leftJoin('cuts', 'cuts.id', 'envelopes.cut_id')
    .leftJoin('outcomes', 'outcomes.envelope_id', 'envelopes.id')
    .select([
      'envelopes.id',
      'state',
      'envelopes.project_id',
      'cuts.project_id as cut_for',
      'cuts.pieces',
      'outcomes.at',
      'finishes',
    ])
    .execute();
  return rows.flatMap(({ id, state, project_id, cut_for, pieces, at, finishes }) => [
    ...(cut_for !== null && !projectsOf(cut_for, JSON.parse(pieces!)).includes(project_id)
      ? [`envelope ${id} comes from a cut of another project`]
      : []),
    ...(state === 'blank' && at !== null ? [`envelope ${id} is a blank with an outcome`] : []),
    ...(state === 'spoiled' && at === null ? [`envelope ${id} is spoiled without a word why`] : []),
    ...cannotRead('finishes', finishes, `envelope ${id}`),
  ]);
}

/** Each piece that the lines of a cut move, with how much, without what undoes them. */
async function ledgerOf(db: Database, cut: number): Promise<Map<string, number>> {
  const lines = await db
    .selectFrom('movements')
    .select(['design_id', 'offcut_id', 'delta'])
    .where('cut_id', '=', cut)
    .where('reverses', 'is', null)
    .execute();
  return tally(lines.map(({ design_id, offcut_id, delta }) => [`${design_id}/${offcut_id}`, delta]));
}

const tallyOf = (pieces: readonly RecordedPiece[]): Map<string, number> =>
  tally(
    pieces.flatMap(({ piece, leftovers }) => [
      [`${piece.design}/${piece.offcut}`, -1] as const,
      ...leftovers.map(({ offcut }) => [`${piece.design}/${offcut}`, 1] as const),
    ]),
  );

function tally(entries: readonly (readonly [string, number])[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const [key, amount] of entries) sums.set(key, (sums.get(key) ?? 0) + amount);
  return sums;
}

const same = (one: Map<string, number>, other: Map<string, number>): boolean =>
  one.size === other.size && [...one].every(([key, amount]) => other.get(key) === amount);

async function envelopesOf(db: Database, cut: number): Promise<number> {
  const rows = await db.selectFrom('envelopes').select('id').where('cut_id', '=', cut).execute();
  return rows.length;
}

function cannotRead(
  kind: 'recipe' | 'look' | 'pieces' | 'finishes',
  json: string | null,
  owner: string,
): string[] {
  const why = unreadable(kind, json);
  return why === undefined ? [] : [`the ${kind} of ${owner} cannot be read: ${why}`];
}
