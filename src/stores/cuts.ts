/**
 * Taking paper off the shelf for a project: one transaction that checks, cuts and writes it all down. Verbs:
 * `takePiece(db, { piece, wanted, copies, project, at, trial? })` for blanks of one piece and its like,
 * `cutPieces(db, { pieces, project, at, trial? })` for a whole plan, `listCuts(db, project)`, `readCut(db, id)`.
 */
import type { Selectable } from 'kysely';
import type { CutRecord, NewProject } from '#core/project/journal.ts';
import { type BlankWanted, layOut, yieldOf } from '#core/stash/shelf-search.ts';
import { ENVELOPE_PART, type PieceCut, type PieceRef } from '#core/stash/stash.ts';
import { type Database, transact } from './database.ts';
import { nextNumber } from './envelopes.ts';
import { record } from './ledger.ts';
import { shelveLeftovers } from './leftovers.ts';
import { loadPiece } from './pieces.ts';
import { settle } from './progress.ts';
import { createProject, readProject } from './projects.ts';
import { readSettings } from './settings.ts';
import type { Tables } from './tables.ts';

/** What was done, or which pieces are not there any more as they were thought to be: then nothing was written. */
export type CutOutcome =
  | {
      readonly cut: number;
      readonly project: number;
      readonly envelopes: readonly number[];
      readonly offcuts: readonly number[];
    }
  | { readonly refused: 'gone'; readonly pieces: readonly GonePiece[] };

/** `left` of `wanted` are there; with `changed`, its size was put right since and the cut no longer fits it. */
export interface GonePiece {
  readonly piece: PieceRef;
  readonly wanted: number;
  readonly left: number;
  readonly changed: boolean;
}

interface Taking {
  /** One that is there, or the one to open. */
  readonly project: number | NewProject;
  readonly at: string;
  /** These envelopes try the measures before the rest. */
  readonly trial?: boolean;
}

/** Cuts `copies` blanks from this piece and, where it takes more than one, from those alike. */
export function takePiece(
  db: Database,
  { piece, wanted, copies, ...taking }: Taking & { piece: PieceRef; wanted: BlankWanted; copies: number },
): Promise<CutOutcome | undefined> {
  return transact(db, async (db) => {
    const { keepAtLeast } = await readSettings(db);
    const found = await loadPiece(db, piece);
    const most = found ? yieldOf(found, wanted) : 0;
    const pieces = most > 0 ? Math.ceil(copies / most) : 1;
    const layouts = Array.from({ length: pieces }, (_, one) =>
      found && most > 0 ? layOut(found, wanted, Math.min(most, copies - one * most), keepAtLeast) : undefined,
    );
    if (layouts.some((layout) => layout === undefined)) {
      const left = found?.count ?? 0;
      return { refused: 'gone', pieces: [{ piece, wanted: pieces, left, changed: left > 0 }] };
    }
    return cutPieces(db, { ...taking, pieces: layouts as PieceCut[] });
  });
}

/** Undefined when the project to join is not there; everything else is written whole or not at all. */
export function cutPieces(
  db: Database,
  { pieces, project, at, trial = false }: Taking & { pieces: readonly PieceCut[] },
): Promise<CutOutcome | undefined> {
  return transact(db, async (db) => {
    const gone = await goneOf(db, pieces);
    if (gone.length > 0) return { refused: 'gone', pieces: gone };
    const owner = typeof project === 'number' ? project : (await createProject(db, project, at)).id;
    if (!(await readProject(db, owner))) return undefined;
    const recorded = await shelveLeftovers(db, pieces);
    const { id: cut } = await db
      .insertInto('cuts')
      .values({ project_id: owner, at, undone_at: null, pieces: JSON.stringify(recorded) })
      .returning('id')
      .executeTakeFirstOrThrow();
    const reason = { at, project: owner, cut };
    for (const [piece, used] of tally(pieces.map((one) => one.piece))) {
      await record(db, { ...reason, kind: 'cut', piece, delta: -used });
    }
    const leftovers = recorded.flatMap(({ piece, leftovers }) =>
      leftovers.map(({ offcut }) => ({ design: piece.design, offcut })),
    );
    for (const [piece, left] of tally(leftovers)) {
      await record(db, { ...reason, kind: 'left over', piece, delta: left });
    }
    const envelopes: number[] = [];
    for (const one of projectsOf(owner, pieces)) {
      envelopes.push(...(await startEnvelopes(db, { project: one, owner, cut, pieces, trial })));
      await settle(db, one, at);
    }
    return { cut, project: owner, envelopes, offcuts: [...new Set(leftovers.map(({ offcut }) => offcut))] };
  });
}

/** Of a project, oldest first, those that were undone among them; also others' that its envelopes came from. */
export async function listCuts(db: Database, project: number): Promise<CutRecord[]> {
  const rows = await db
    .selectFrom('cuts')
    .selectAll()
    .where((by) =>
      by.or([
        by('project_id', '=', project),
        by('id', 'in', by.selectFrom('envelopes').select('cut_id').where('project_id', '=', project)),
      ]),
    )
    .orderBy('id')
    .execute();
  return rows.map(toCut);
}

export async function readCut(db: Database, id: number): Promise<CutRecord | undefined> {
  const row = await db.selectFrom('cuts').selectAll().where('id', '=', id).executeTakeFirst();
  return row && toCut(row);
}

async function goneOf(db: Database, pieces: readonly PieceCut[]): Promise<GonePiece[]> {
  const gone: GonePiece[] = [];
  for (const [piece, wanted] of tally(pieces.map((one) => one.piece))) {
    const found = await loadPiece(db, piece);
    const left = found?.count ?? 0;
    const cut = pieces.find((one) => sameRef(one.piece, piece))!;
    const changed = found !== undefined && (found.width !== cut.width || found.height !== cut.height);
    if (left < wanted || changed) gone.push({ piece, wanted, left, changed });
  }
  return gone;
}

/** The cut's own project and every other that it has parts for. */
export const projectsOf = (owner: number, pieces: readonly Pick<PieceCut, 'parts'>[]): number[] => [
  ...new Set([owner, ...pieces.flatMap(({ parts }) => parts.flatMap(({ project = owner }) => project))]),
];

interface Starting {
  readonly project: number;
  /** The project that the cut is of. */
  readonly owner: number;
  readonly cut: number;
  readonly pieces: readonly PieceCut[];
  readonly trial: boolean;
}

async function startEnvelopes(
  db: Database,
  { project, owner, cut, pieces, trial }: Starting,
): Promise<number[]> {
  const designs = pieces.flatMap(({ piece, parts }) =>
    parts
      .filter((one) => one.part === ENVELOPE_PART && (one.project ?? owner) === project)
      .map(() => piece.design),
  );
  if (designs.length === 0) return [];
  const first = await nextNumber(db, project);
  const rows = await db
    .insertInto('envelopes')
    .values(
      designs.map((design, one) => ({
        project_id: project,
        number: first + one,
        cut_id: cut,
        design_id: design,
        state: 'blank' as const,
        start_in_use: null,
        trial: trial ? (1 as const) : (0 as const),
      })),
    )
    .returning('id')
    .execute();
  return rows.map(({ id }) => id);
}

const sameRef = (one: PieceRef, other: PieceRef): boolean =>
  one.design === other.design && one.offcut === other.offcut;

/** Each different piece with how often it occurs. */
function tally(refs: readonly PieceRef[]): [PieceRef, number][] {
  const counts = new Map<string, [PieceRef, number]>();
  for (const ref of refs) {
    const key = `${ref.design}/${ref.offcut}`;
    counts.set(key, [ref, (counts.get(key)?.[1] ?? 0) + 1]);
  }
  return [...counts.values()];
}

const toCut = (row: Selectable<Tables['cuts']>): CutRecord => ({
  id: row.id,
  project: row.project_id,
  at: row.at,
  undoneAt: row.undone_at,
  pieces: JSON.parse(row.pieces),
});
