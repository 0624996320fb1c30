/**
 * Which pieces can become a blank, least regret first, over a shelf of any length, and which cannot. Verbs:
 * `findPieces(db, wanted, { limit? })`, `findLeftOut(db, wanted)`. The regret is worked out in SQL by the very expression of the core (worth.ts), to the last bit.
 */
import { sql } from 'kysely';
import {
  type BlankWanted,
  type Choice,
  chooseFrom,
  type LeftOutHere,
  type Nearest,
} from '#core/stash/shelf-search.ts';
import { type Piece, pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import { byShortfall, shortfall, unsuited, unsuitedDesign } from '#core/stash/suits.ts';
import type { Length } from '#shared/length.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { Database } from './database.ts';
import { listDesigns } from './designs.ts';
import { listOffcuts } from './offcuts.ts';
import {
  type Amount,
  anyWay,
  DEPTH,
  fitsIn,
  leastOf,
  printDecides,
  regretOf,
  roomOf,
  SHORTER,
  wholeLack,
  worseLack,
} from './search-sql.ts';
import { readSettings } from './settings.ts';

export interface Found {
  /** Offcuts before sheets, in each the least regretted first. */
  readonly choices: readonly Choice[];
  /** There are more offcuts that would do. */
  readonly more: boolean;
  /** Where nothing will do: the piece that lacks least. Null when there is no paper of the kind at all. */
  readonly nearest: Nearest | null;
}

export async function findPieces(
  db: Database,
  wanted: BlankWanted,
  { limit = 24 }: { limit?: number } = {},
): Promise<Found> {
  const { keepAtLeast } = await readSettings(db);
  const ids = await rankOffcuts(db, wanted, keepAtLeast, limit + 1);
  const offcuts = await offcutsInOrder(db, ids.slice(0, limit));
  const sheets = await sheetsThatSuit(db, wanted);
  const choices = [...choose(offcuts, wanted, keepAtLeast), ...ranked(choose(sheets, wanted, keepAtLeast))];
  const nearest = choices.length > 0 ? null : await nearestPiece(db, wanted, sheets);
  return { choices, more: ids.length > limit, nearest };
}

/** Of the paper asked for, what does not become the blank. */
export async function findLeftOut(db: Database, wanted: BlankWanted): Promise<LeftOutHere> {
  const sheets = (await sheetsThatSuit(db, wanted)).flatMap((piece) => {
    const why = unsuited(wanted, piece);
    return why ? [{ piece, why }] : [];
  });
  const { offcuts } = await suitableOffcuts(db, wanted)
    .select(({ fn }) => fn.countAll<number>().as('offcuts'))
    .where(sql<boolean>`NOT (${anyWay(wanted, fitsIn(roomOf(wanted)))})`)
    .executeTakeFirstOrThrow();
  return { sheets, offcuts };
}

const choose = (pieces: readonly Piece[], wanted: BlankWanted, keepAtLeast: Length): Choice[] =>
  pieces.flatMap((piece) => chooseFrom(piece, wanted, keepAtLeast) ?? []);

const ranked = (choices: Choice[]): Choice[] => choices.sort((a, b) => a.regret - b.regret);

/** The offcuts that will do, as numbers; among equals the one that has lain longest. */
async function rankOffcuts(
  db: Database,
  wanted: BlankWanted,
  keep: Length,
  limit: number,
): Promise<number[]> {
  const regret = leastOf(wanted, (blank) => regretOf(blank, keep, roomOf(wanted)));
  const rows = await suitableOffcuts(db, wanted)
    .select('offcuts.id')
    .where(anyWay(wanted, fitsIn(roomOf(wanted))))
    .where(SHORTER, '<=', await widestToAsk(db, wanted, regret, { keep, limit }))
    .orderBy(regret)
    .orderBy('offcuts.id')
    .limit(limit)
    .execute();
  return rows.map(({ id }) => id);
}

const PROBED = 400;
const SLACK = 1 + 1e-9;

/**
 * The shorter side beyond which no piece can be among the best. Leftovers are no thicker than their piece and lack the
 * blank's area, so regret ≥ shorter side · blank's area; the thinnest pieces that fit say what regret is to be beaten.
 * Those under the keeping size are worth nothing to start with and always asked.
 */
async function widestToAsk(
  db: Database,
  wanted: BlankWanted,
  regret: Amount,
  { keep, limit }: { readonly keep: Length; readonly limit: number },
): Promise<number> {
  const thinnest = await suitableOffcuts(db, wanted)
    .select(regret.as('regret'))
    .where(anyWay(wanted, fitsIn(roomOf(wanted))))
    .orderBy(SHORTER)
    .limit(PROBED)
    .execute();
  const beaten = thinnest.map((row) => row.regret).sort((a, b) => a - b)[limit - 1];
  if (beaten === undefined) return Number.MAX_SAFE_INTEGER;
  return Math.max(keep, (beaten * SLACK) / (wanted.width * wanted.height));
}

async function offcutsInOrder(db: Database, ids: readonly number[]): Promise<Piece[]> {
  const offcuts = new Map((await listOffcuts(db, { ids })).map((offcut) => [offcut.id, offcut]));
  return ids.flatMap((id) => offcuts.get(id) ?? []).map(pieceOfOffcut);
}

/** Whatever their size. */
async function sheetsThatSuit(db: Database, wanted: BlankWanted): Promise<Piece[]> {
  const { kinds, designs } = wanted;
  const filter = { left: true, ...(kinds && { kinds }), ...(designs && { ids: designs }) };
  const sheets = await listDesigns(db, filter);
  return sheets.filter((design) => !unsuitedDesign(wanted, design)).map(pieceOfSheet);
}

async function nearestPiece(
  db: Database,
  wanted: BlankWanted,
  sheets: readonly Piece[],
): Promise<Nearest | null> {
  const rows = await suitableOffcuts(db, wanted)
    .select('offcuts.id')
    .orderBy(leastOf(wanted, worseLack(roomOf(wanted))))
    .orderBy(leastOf(wanted, wholeLack(roomOf(wanted))))
    .orderBy('offcuts.id')
    .limit(1)
    .execute();
  const offcuts = await offcutsInOrder(
    db,
    rows.map(({ id }) => id),
  );
  const near = [...offcuts, ...sheets].map((piece) => ({ piece, short: shortfall(piece, wanted) }));
  return near.sort((a, b) => byShortfall(a.short, b.short))[0] ?? null;
}

/** On the shelf and of the paper asked for; its design stands beside it only where the print decides. */
function suitableOffcuts(db: Database, { kinds, designs, border, ...blank }: BlankWanted) {
  return db
    .selectFrom('offcuts')
    .where('count', '>', 0)
    .$if(border === true, (query) => query.where('offcuts.border', '=', 1).where(DEPTH, '>', 0))
    .$if(designs !== undefined, (query) => query.where('design_id', 'in', designs!))
    .$if(kinds !== undefined, (query) => query.where('design_id', 'in', ofKinds(db, kinds!)))
    .$if(printDecides(blank), (query) =>
      query.innerJoin('designs', 'designs.id', 'offcuts.design_id').$castTo<object>(),
    );
}

const ofKinds = (db: Database, kinds: readonly PaperKind[]) =>
  db
    .selectFrom('designs')
    .innerJoin('pads', 'pads.id', 'designs.pad_id')
    .where('pads.kind', 'in', kinds)
    .select('designs.id');
