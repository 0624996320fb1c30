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
import { byShortfall, shortfall, type Unsuited, unsuited, unsuitedDesign } from '#core/stash/suits.ts';
import type { Length } from '#shared/length.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { Database } from './database.ts';
import { designsAway, listDesigns, listSheetKinds, type SheetKind } from './designs.ts';
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

/** What is read of a shelf before it is searched: the kinds of sheet on it; designs come to it as pieces of them are found. */
export interface Shelf {
  readonly kinds: readonly SheetKind[];
  readonly designs: Map<number, Design>;
  readonly keepAtLeast: Length;
}

export interface Choices {
  /** Offcuts before sheets, in each the least regretted first. */
  readonly choices: readonly Choice[];
  /** There are more offcuts that would do. */
  readonly more: boolean;
  /** Of how many designs a sheet would do. */
  readonly sheets: number;
}

export interface Found extends Choices {
  /** Where nothing will do: the piece that lacks least. Null when there is no paper of the kind at all. */
  readonly nearest: Nearest | null;
}

export const readShelf = async (db: Database, keepAtLeast: Length): Promise<Shelf> => ({
  kinds: await listSheetKinds(db),
  designs: new Map(),
  keepAtLeast,
});

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

/** For each blank in turn, in two queries however many are asked for; no more than `limit` offcuts and as many sheets. */
export async function findChoices(
  db: Database,
  shelf: Shelf,
  wanted: readonly BlankWanted[],
  { limit = MANY }: { limit?: number } = {},
): Promise<readonly Choices[]> {
  const different = new Map(wanted.map((blank) => [JSON.stringify(blank), blank]));
  const blanks = [...different.values()];
  const ranked = await rankOffcuts(db, shelf, blanks, limit + 1);
  const sheets = blanks.map((blank) => rankSheets(shelf, blank));
  const first = sheets.map((ids) => ids.slice(0, limit));
  const offcuts = ranked.map((rows) => rows.slice(0, limit));
  await readDesigns(db, shelf, [...offcuts.flat().map((row) => row.design_id), ...first.flat()]);
  const found = new Map(
    [...different].map(([key, blank], index) => {
      const pieces = [
        ...offcuts[index]!.map((row) => pieceOfOffcut(toOffcut(row, shelf.designs))),
        ...first[index]!.map((id) => pieceOfSheet(shelf.designs.get(id)!)),
      ];
      const choices = pieces.flatMap((piece) => chooseFrom(piece, blank, shelf.keepAtLeast) ?? []);
      return [key, { choices, more: ranked[index]!.length > limit, sheets: sheets[index]!.length }];
    }),
  );
  return wanted.map((blank) => found.get(JSON.stringify(blank))!);
}

/** Of each design asked for the two best offcuts that will do, then its sheet. */
export async function findInEach(
  db: Database,
  shelf: Shelf,
  wanted: BlankWanted & { readonly designs: readonly number[] },
): Promise<readonly Piece[]> {
  const { keepAtLeast } = shelf;
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
  const ids = rankSheets(shelf, wanted);
  await readDesigns(db, shelf, [...rows.map((row) => row.design_id), ...ids]);
  return [
    ...rows.map((row) => pieceOfOffcut(toOffcut(row, shelf.designs))),
    ...ids.toSorted((one, other) => one - other).map((id) => pieceOfSheet(shelf.designs.get(id)!)),
  ];
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
  const sheets = kindsThatSuit(shelf, wanted).map(({ first, ids }) => ({
    id: ids[0]!,
    short: shortfall(pieceOfSheet(first), wanted),
  }));
  const [sheet] = sheets.sort((one, other) => byShortfall(one.short, other.short) || one.id - other.id);
  await readDesigns(db, shelf, [...rows.map((row) => row.design_id), ...(sheet ? [sheet.id] : [])]);
  const near = [
    ...rows.map((row) => pieceOfOffcut(toOffcut(row, shelf.designs))),
    ...(sheet ? [pieceOfSheet(shelf.designs.get(sheet.id)!)] : []),
  ].map((piece) => ({ piece, short: shortfall(piece, wanted) }));
  return near.sort((a, b) => byShortfall(a.short, b.short))[0] ?? null;
}

/** More of each reason are only counted. */
const NAMED = 4;

/** Of the paper asked for, what does not become the blank, and how many kinds of offcut do. */
export async function findLeftOut(db: Database, shelf: Shelf, wanted: BlankWanted): Promise<LeftOutHere> {
  const whys = new Map<string, { why: Unsuited; ids: number[] }>();
  for (const { first, ids } of kindsThatSuit(shelf, wanted)) {
    const why = unsuited(wanted, pieceOfSheet(first));
    if (!why) continue;
    const alike = whys.get(JSON.stringify(why))?.ids ?? [];
    whys.set(JSON.stringify(why), { why, ids: [...alike, ...ids].sort((one, other) => one - other) });
  }
  const named = [...whys.values()].map(({ why, ids }) => ({ why, ids, first: ids.slice(0, NAMED) }));
  await readDesigns(
    db,
    shelf,
    named.flatMap(({ first }) => first),
  );
  const fits = anyWay(wanted, fitsIn(roomOf(wanted)));
  const { all, fitting } = await suitableOffcuts(db, wanted)
    .select(({ fn }) => fn.countAll<number>().as('all'))
    .select(sql<number>`coalesce(sum(${fits}), 0)`.as('fitting'))
    .executeTakeFirstOrThrow();
  return {
    sheets: named.map(({ why, ids, first }) => ({
      why,
      count: ids.length,
      names: first.map((id) => shelf.designs.get(id)!.name),
    })),
    offcuts: all - fitting,
    fitting,
  };
}

/** What is not there yet, in one query. */
async function readDesigns(db: Database, { designs }: Shelf, wanted: readonly number[]): Promise<void> {
  const missing = [...new Set(wanted)].filter((id) => !designs.has(id));
  for (const design of await listDesigns(db, { ids: missing })) designs.set(design.id, design);
}

/** For each blank the offcuts that will do; among equals the one that has lain longest. */
async function rankOffcuts(
  db: Database,
  { keepAtLeast }: Shelf,
  wanted: readonly BlankWanted[],
  limit: number,
) {
  const [first, ...rest] = wanted.map((blank, asked) => ranked(db, blank, { asked, keepAtLeast, limit }));
  if (!first) return [];
  const rows = await rest.reduce((all, one) => all.unionAll(one), first).execute();
  rows.sort((a, b) => a.regret - b.regret || a.id - b.id);
  return wanted.map((_, asked) => rows.filter((row) => row.asked === asked));
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

/** The designs a sheet of which will do, the least regretted first; among equals the one added first. */
function rankSheets(shelf: Shelf, wanted: BlankWanted): readonly number[] {
  const fitting = kindsThatSuit(shelf, wanted).flatMap(({ first, ids }) => {
    const choice = chooseFrom(pieceOfSheet(first), wanted, shelf.keepAtLeast);
    return choice ? ids.map((id) => ({ id, regret: choice.regret })) : [];
  });
  return fitting.sort((a, b) => a.regret - b.regret || a.id - b.id).map(({ id }) => id);
}

/** Of the paper asked for, whatever their size. */
const kindsThatSuit = ({ kinds }: Shelf, wanted: BlankWanted): SheetKind[] =>
  kinds.flatMap(({ first, ids }) => {
    const asked = wanted.designs ? ids.filter((id) => wanted.designs!.includes(id)) : ids;
    const like = wanted.designs ? { ...first, id: asked[0] ?? first.id } : first;
    return asked.length === 0 || unsuitedDesign(wanted, like) ? [] : [{ first: like, ids: asked }];
  });

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
