/**
 * What the search box finds, over a book of any size. Verbs: `find(db, asked, { facets, kinds, tag, limit })`,
 * `measuresOf(db, finds)`. Of each kind only the newest that have all words, or the nearest by measure, are looked at
 * and ranked, so that a word which is everywhere costs no more than a rare one. Writes nothing: triggers keep the index.
 */
import { type RawBuilder, sql } from 'kysely';
import { type Candidate, type FoundKind, rank } from '#core/finding/rank.ts';
import type { Asked } from '#core/finding/read-query.ts';
import { type Facet, FIND_KINDS, type FindKind } from '#core/finding/vocabulary.ts';
import type { Length } from '#shared/length.ts';
import type { Database } from './database.ts';
import { idOf, matches, type Reach, TAGGED } from './find-sql.ts';
import type { FindRow } from './tables.ts';

export interface Sought {
  readonly facets?: readonly Facet[];
  readonly kinds?: readonly FindKind[];
  /** Only of projects under this tag. */
  readonly tag?: string | undefined;
  /** So many of each kind at most. */
  readonly limit?: number;
}

/** A length that a thing has, and what it is of. */
export interface FoundMeasure {
  readonly field: string;
  readonly length: Length;
  /** The rectangle's other side; null where there is none. */
  readonly other: Length | null;
}

const AT_MOST = 24;
/** With words and measures together, as many of the newest with the words are measured. */
const MEASURED_AT_MOST = 600;

/** The kinds of which something is found, those that answer best first. */
export async function find(
  db: Database,
  asked: Asked,
  { facets = [], kinds = FIND_KINDS, tag, limit = AT_MOST }: Sought = {},
): Promise<FoundKind[]> {
  const reach: Reach = { words: limit + 1, measures: MEASURED_AT_MOST };
  const readings =
    asked.readings.length === 0 && (facets.length > 0 || tag !== undefined)
      ? [{ words: [], measures: [] }]
      : asked.readings;
  const wanted = readings.flatMap((reading, at) =>
    kinds
      .filter((kind) => tag === undefined || TAGGED.includes(kind))
      .map((kind) => matches(kind, { reading, at, facets, tag, reach })),
  );
  const candidates = [
    ...(wanted.length > 0 ? await candidatesOf(db, wanted) : []),
    ...(tag === undefined ? await coded(db, asked, kinds) : []),
  ];
  const ranked = rank({ ...asked, readings }, candidates);
  return [...new Set(ranked.map(({ kind }) => kind))].map((kind) => {
    const finds = ranked.filter((one) => one.kind === kind);
    return { kind, finds: finds.slice(0, limit), more: finds.length > limit };
  });
}

/** Every length of these, by their number. */
export async function measuresOf(
  db: Database,
  finds: readonly number[],
): Promise<ReadonlyMap<number, readonly FoundMeasure[]>> {
  if (finds.length === 0) return new Map();
  const rows = await db
    .selectFrom('find_measures')
    .select(['find_id', 'field', 'length', 'other'])
    .where('find_id', 'in', finds)
    .execute();
  return new Map(
    finds.map((id) => [
      id,
      rows
        .filter(({ find_id }) => find_id === id)
        .map(({ field, length, other }) => ({ field, length, other: other === 0 ? null : other })),
    ]),
  );
}

async function candidatesOf(
  db: Database,
  wanted: readonly ReturnType<typeof matches>[],
): Promise<Candidate[]> {
  const union = sql.join(
    wanted.map((one) => sql`SELECT * FROM (${one})`),
    sql` UNION ALL `,
  );
  const { rows } = await sql<FindRow & { reading: number; off: number }>`
    SELECT finds.*, found.reading, found.off FROM (${union}) AS found
    JOIN finds ON finds.id = found.id WHERE NOT ${isAway}`.execute(db);
  return rows;
}

const away = (table: string): RawBuilder<unknown> =>
  sql`(SELECT id FROM ${sql.table(table)} WHERE put_away_at IS NOT NULL)`;

/** What is put away is on no list; what belongs to it goes with it. */
const isAway = sql`CASE
  WHEN kind IN ('project', 'lesson', 'outcome') THEN belongs IN ${away('projects')}
  WHEN kind = 'part' THEN (SELECT project_id FROM plans WHERE plans.id = belongs) IN ${away('projects')}
  WHEN kind = 'design' THEN belongs IN ${away('designs')}
    OR (SELECT pad_id FROM designs WHERE designs.id = belongs) IN ${away('pads')}
  WHEN kind = 'pad' THEN belongs IN ${away('pads')}
  WHEN kind = 'series' THEN belongs IN ${away('series')}
  WHEN kind = 'card' THEN belongs IN ${away('card_sizes')}
  ELSE FALSE END`;

/** What is pencilled on the back of an offcut, also when it is gone; it stands before all readings. */
async function coded(db: Database, { code }: Asked, kinds: readonly FindKind[]): Promise<Candidate[]> {
  if (code === undefined || !kinds.includes('offcut')) return [];
  const row = await db
    .selectFrom('offcuts')
    .innerJoin('designs', 'designs.id', 'offcuts.design_id')
    .select(['offcuts.id', 'code', 'designs.name', 'place', 'note', 'count'])
    .where('code', '=', code)
    .executeTakeFirst();
  if (!row) return [];
  return [
    {
      id: idOf('offcut', row.id),
      kind: 'offcut',
      belongs: row.id,
      number: 0,
      title: `${row.code} ${row.name}`,
      text: row.note,
      about: row.count === 0 ? 'gone' : row.place,
      reading: -1,
      off: 0,
    },
  ];
}
