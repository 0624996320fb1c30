/**
 * Which pieces can become a blank, least regret first, over a shelf of any length, and which cannot. Verbs:
 * `readShelf(db, keepAtLeast)`, `findChoices(db, shelf, wanted, { limit? })` for many blanks at once, `findNearest(db, shelf, wanted)`,
 * `findLeftOut(db, shelf, wanted)`, `findPieces(db, wanted, { limit? })` for one blank alone. The regret is worked out in
 * SQL by the very expression of the core (worth.ts), to the last bit.
 */
import { sql } from 'kysely';
import {
  type BlankWanted,
  type Choice,
  chooseFrom,
  type LeftOutHere,
  type Nearest,
} from '#core/stash/shelf-search.ts';
import { type Design, type Piece, pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import { byShortfall, shortfall, unsuited, unsuitedDesign } from '#core/stash/suits.ts';
import type { Length } from '#shared/length.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { Database } from './database.ts';
import { designsAway, listDesigns } from './designs.ts';
import { toOffcut } from './offcuts.ts';
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

/** What is read of a shelf before it is searched: every design of which anything is left. */
export interface Shelf {
  readonly designs: ReadonlyMap<number, Design>;
  readonly keepAtLeast: Length;
}

export interface Choices {
  /** Offcuts before sheets, in each the least regretted first. */
  readonly choices: readonly Choice[];
  /** There are more offcuts that would do. */
  readonly more: boolean;
}

export interface Found extends Choices {
  /** Where nothing will do: the piece that lacks least. Null when there is no paper of the kind at all. */
  readonly nearest: Nearest | null;
}

export async function readShelf(db: Database, keepAtLeast: Length): Promise<Shelf> {
  const designs = await listDesigns(db, { onShelf: true });
  return { designs: new Map(designs.map((design) => [design.id, design])), keepAtLeast };
}

export async function findPieces(
  db: Database,
  wanted: BlankWanted,
  { limit = MANY }: { limit?: number } = {},
): Promise<Found> {
  const { keepAtLeast } = await readSettings(db);
  const shelf = await readShelf(db, keepAtLeast);
  const [found] = await findChoices(db, shelf, [wanted], { limit });
  const nearest = found!.choices.length > 0 ? null : await findNearest(db, shelf, wanted);
  return { ...found!, nearest };
}

/** More than these are not shown. */
const MANY = 24;

/** For each blank in turn, in one query however many are asked for. */
export async function findChoices(
  db: Database,
  shelf: Shelf,
  wanted: readonly BlankWanted[],
  { limit = MANY }: { limit?: number } = {},
): Promise<readonly Choices[]> {
  const different = new Map(wanted.map((blank) => [JSON.stringify(blank), blank]));
  const offcuts = await rankOffcuts(db, shelf, [...different.values()], limit + 1);
  const found = new Map(
    [...different].map(([key, blank], index) => {
      const ranks = offcuts[index]!;
      const choices = [
        ...choose(ranks.slice(0, limit), blank, shelf.keepAtLeast),
        ...choose(sheetsThatSuit(shelf, blank), blank, shelf.keepAtLeast).sort((a, b) => a.regret - b.regret),
      ];
      return [key, { choices, more: ranks.length > limit }];
    }),
  );
  return wanted.map((blank) => found.get(JSON.stringify(blank))!);
}

/** Of each design asked for the two best offcuts that will do, then its sheet, in one query. */
export async function findInEach(
  db: Database,
  { designs, keepAtLeast }: Shelf,
  wanted: BlankWanted & { readonly designs: readonly number[] },
): Promise<readonly Piece[]> {
  const regret = leastOf(wanted, (blank) => regretOf(blank, keepAtLeast, roomOf(wanted)));
  const placed = suitableOffcuts(db, wanted)
    .selectAll('offcuts')
    .select(
      sql<number>`row_number() OVER (PARTITION BY design_id ORDER BY ${regret}, offcuts.id)`.as('place_in'),
    )
    .where(anyWay(wanted, fitsIn(roomOf(wanted))));
  const rows = await db
    .selectFrom(placed.as('placed'))
    .selectAll('placed')
    .where('place_in', '<=', 2)
    .orderBy('place_in')
    .execute();
  const pieces = rows.map((row) => pieceOfOffcut(toOffcut(row, designs)));
  const sheets = sheetsThatSuit({ designs, keepAtLeast }, wanted);
  return [...pieces, ...sheets.filter((piece) => chooseFrom(piece, wanted, keepAtLeast))];
}

/** The piece that lacks least; null when there is no paper of the kind at all. */
export async function findNearest(db: Database, shelf: Shelf, wanted: BlankWanted): Promise<Nearest | null> {
  const rows = await suitableOffcuts(db, wanted)
    .selectAll('offcuts')
    .orderBy(leastOf(wanted, worseLack(roomOf(wanted))))
    .orderBy(leastOf(wanted, wholeLack(roomOf(wanted))))
    .orderBy('offcuts.id')
    .limit(1)
    .execute();
  const offcuts = rows.map((row) => pieceOfOffcut(toOffcut(row, shelf.designs)));
  const near = [...offcuts, ...sheetsThatSuit(shelf, wanted)].map((piece) => ({
    piece,
    short: shortfall(piece, wanted),
  }));
  return near.sort((a, b) => byShortfall(a.short, b.short))[0] ?? null;
}

/** Of the paper asked for, what does not become the blank. */
export async function findLeftOut(db: Database, shelf: Shelf, wanted: BlankWanted): Promise<LeftOutHere> {
  const sheets = sheetsThatSuit(shelf, wanted).flatMap((piece) => {
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

/** For each blank the offcuts that will do; among equals the one that has lain longest. */
async function rankOffcuts(
  db: Database,
  { designs, keepAtLeast }: Shelf,
  wanted: readonly BlankWanted[],
  limit: number,
): Promise<readonly (readonly Piece[])[]> {
  const [first, ...rest] = wanted.map((blank, asked) => ranked(db, blank, { asked, keepAtLeast, limit }));
  if (!first) return [];
  const rows = await rest.reduce((all, one) => all.unionAll(one), first).execute();
  rows.sort((a, b) => a.regret - b.regret || a.id - b.id);
  return wanted.map((_, asked) =>
    rows.filter((row) => row.asked === asked).map((row) => pieceOfOffcut(toOffcut(row, designs))),
  );
}

interface Ranking {
  readonly asked: number;
  readonly keepAtLeast: Length;
  readonly limit: number;
}

function ranked(db: Database, wanted: BlankWanted, { asked, keepAtLeast, limit }: Ranking) {
  const regret = leastOf(wanted, (blank) => regretOf(blank, keepAtLeast, roomOf(wanted)));
  const best = suitableOffcuts(db, wanted)
    .selectAll('offcuts')
    .select(regret.as('regret'))
    .where(anyWay(wanted, fitsIn(roomOf(wanted))))
    .where(SHORTER, '<=', widestToAsk(db, wanted, { regret, keepAtLeast, limit }))
    .orderBy(regret)
    .orderBy('offcuts.id')
    .limit(limit);
  return db.selectFrom(best.as('best')).selectAll('best').select(sql.lit(asked).as('asked'));
}

const PROBED = 400;
const SLACK = 1 + 1e-9;

/**
 * The shorter side beyond which no piece can be among the best. Leftovers are no thicker than their piece and lack the
 * blank's area, so regret ≥ shorter side · blank's area; the thinnest pieces that fit say what regret is to be beaten.
 * Those under the keeping size are worth nothing to start with and always asked.
 */
function widestToAsk(
  db: Database,
  wanted: BlankWanted,
  { regret, keepAtLeast, limit }: Omit<Ranking, 'asked'> & { readonly regret: Amount },
): Amount {
  const thinnest = suitableOffcuts(db, wanted)
    .select(regret.as('regret'))
    .where(anyWay(wanted, fitsIn(roomOf(wanted))))
    .orderBy(SHORTER)
    .limit(PROBED);
  const area = wanted.width * wanted.height;
  const widest = db
    .selectFrom(thinnest.as('thinnest'))
    .select(sql<number>`max(${keepAtLeast}, regret * ${SLACK} / ${area})`.as('widest'))
    .orderBy('regret')
    .limit(1)
    .offset(limit - 1);
  return sql`coalesce((${widest}), ${Number.MAX_SAFE_INTEGER})`;
}

/** Whatever their size. */
const sheetsThatSuit = ({ designs }: Shelf, wanted: BlankWanted): Piece[] =>
  [...designs.values()]
    .filter((design) => design.sheets > 0 && !unsuitedDesign(wanted, design))
    .map(pieceOfSheet);

/** On the shelf and of the paper asked for; its design stands beside it only where the print decides. */
function suitableOffcuts(db: Database, { kinds, designs, border, ...blank }: BlankWanted) {
  return db
    .selectFrom('offcuts')
    .where('count', '>', 0)
    .where('design_id', 'not in', designsAway(db))
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
