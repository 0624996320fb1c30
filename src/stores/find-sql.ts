/**
 * A reading of the search box as SQL: an expression for the index of words, and ranges of lengths. Knows the numbers
 * and the made-up words of migration 0012; runs no query.
 */
import { type RawBuilder, sql } from 'kysely';
import type { AskedMeasure, AskedWord, Reading } from '#core/finding/read-query.ts';
import type { Facet, FindKind } from '#core/finding/vocabulary.ts';
import { PER_INCH } from '#shared/length.ts';

const ROOM = 2 ** 40;
const NUMBER: Record<FindKind, number> = {
  project: 1,
  lesson: 2,
  outcome: 3,
  part: 4,
  offcut: 5,
  design: 6,
  pad: 7,
  series: 8,
  place: 9,
  card: 10,
  'ready-made': 11,
};

export const idOf = (kind: FindKind, row: number): number => NUMBER[kind] * ROOM + row;

const ALONE: readonly FindKind[] = ['project', 'lesson', 'outcome', 'part', 'offcut'];
const OURS = '\uE000';
const SIXTEENTH = PER_INCH / 16;

/** No row has more words or measures than these that match and are looked at, the newest first. */
export interface Reach {
  readonly words: number;
  readonly measures: number;
}

export interface Matching {
  readonly reading: Reading;
  /** Where this reading stands among those of the question. */
  readonly at: number;
  readonly facets: readonly Facet[];
  /** Only of projects under this tag. */
  readonly tag: string | undefined;
  readonly reach: Reach;
}

type Rows = RawBuilder<{ id: number; reading: number; off: number }>;

/** What of one kind answers a reading: its number, and how far its measures are off. */
export function matches(kind: FindKind, asked: Matching): Rows {
  const { words, measures } = asked.reading;
  const [first, ...others] = measures;
  const alone = words.length + others.length + asked.facets.length === 0 && asked.tag === undefined;
  if (first && alone) return nearest(kind, first, asked);
  return first ? wordsAndMeasures(kind, asked) : newestOf(kind, asked);
}

/** The newest of one kind that have all words and facets; nothing that is typed can break out of a word. */
function newestOf(kind: FindKind, asked: Matching): Rows {
  const { at, reach } = asked;
  return sql`SELECT rowid AS id, ${sql.lit(at)} AS reading, 0 AS off FROM ${matching(kind, asked)} ORDER BY rowid DESC LIMIT ${reach.words}`;
}

/** Among the newest that have the words and about the measures, those that are nearest. */
function wordsAndMeasures(kind: FindKind, asked: Matching): Rows {
  const { reading, at, reach } = asked;
  const off = sql.join(
    reading.measures.map(
      (one) =>
        sql`(SELECT min(${offOf(one)}) FROM find_measures WHERE find_id = newest.id AND ${isNear(one)})`,
    ),
    sql` + `,
  );
  return sql`SELECT id, ${sql.lit(at)} AS reading, off FROM (SELECT id, ${off} AS off FROM (
      SELECT rowid AS id FROM ${matching(kind, asked)} ORDER BY rowid DESC LIMIT ${reach.measures}
    ) AS newest) WHERE off IS NOT NULL ORDER BY off, id DESC LIMIT ${reach.words}`;
}

/** From the index of lengths alone, outwards from the length asked for. */
function nearest(kind: FindKind, asked: AskedMeasure, { at, reach }: Matching): Rows {
  const { length, other, within } = asked;
  const rows = (from: number, to: number, order: RawBuilder<unknown>): RawBuilder<unknown> =>
    sql`SELECT * FROM (SELECT find_id AS id, ${offOf(asked)} AS off FROM find_measures
      WHERE kind = ${NUMBER[kind]} AND length BETWEEN ${from} AND ${to} ${other === null ? sql`` : sql`AND ${otherIsNear(asked)}`}
      ORDER BY ${order} LIMIT ${2 * reach.words})`;
  const ranges =
    other === null
      ? [
          rows(length, length, sql`find_id DESC`),
          rows(length + 1, length + within, sql`length, find_id`),
          rows(length - within, length - 1, sql`length DESC, find_id DESC`),
        ]
      : [rows(length - within, length + within, sql`off, find_id DESC`)];
  return sql`SELECT id, ${sql.lit(at)} AS reading, min(off) AS off FROM (${sql.join(ranges, sql` UNION ALL `)})
    GROUP BY id ORDER BY 3, id DESC LIMIT ${reach.words}`;
}

const offOf = ({ length, other }: AskedMeasure): RawBuilder<number> =>
  other === null ? sql`abs(length - ${length})` : sql`max(abs(length - ${length}), abs(other - ${other}))`;

const isNear = (asked: AskedMeasure): RawBuilder<boolean> => {
  const { length, other, within } = asked;
  const near = sql<boolean>`length BETWEEN ${length - within} AND ${length + within}`;
  return other === null ? near : sql`${near} AND ${otherIsNear(asked)}`;
};

const otherIsNear = ({ other, within }: AskedMeasure): RawBuilder<boolean> =>
  sql`other BETWEEN ${other! - within} AND ${other! + within}`;

/** The rows of one kind that have it all; every row where nothing but the kind is asked for. */
function matching(kind: FindKind, { reading, facets, tag }: Matching): RawBuilder<unknown> {
  const match = expression(kind, reading, facets);
  const [first, last] = [NUMBER[kind] * ROOM, (NUMBER[kind] + 1) * ROOM - 1];
  const tagged = tag === undefined ? sql`` : sql`AND +rowid IN (${underTag(kind, tag)})`;
  if (match === '') return sql`finds WHERE id BETWEEN ${first} AND ${last} ${tagged}`;
  const alone = ALONE.includes(kind);
  const index = sql.ref(`find_words_${alone ? kind : 'other'}`);
  const words = sql`${index} WHERE ${index} MATCH ${match} ${tagged}`;
  return alone ? words : sql`${words} AND rowid BETWEEN ${first} AND ${last}`;
}

/** Kinds that belong to a project. */
export const TAGGED: readonly FindKind[] = ['project', 'lesson', 'outcome'];

function underTag(kind: FindKind, tag: string): RawBuilder<unknown> {
  const projects = sql`SELECT project_id FROM project_tags JOIN tags ON tags.id = tag_id WHERE tags.name = ${tag}`;
  const first = NUMBER[kind] * ROOM;
  return kind === 'outcome'
    ? sql`SELECT ${first} + envelopes.id FROM envelopes WHERE project_id IN (${projects})`
    : sql`SELECT ${first} + project_id FROM (${projects})`;
}

/** `("striped"* OR "printxstripes") AND "hare"*`; a word that names the kind itself asks for nothing more. */
function expression(kind: FindKind, { words, measures }: Reading, facets: readonly Facet[]): string {
  const groups = [
    ...words.filter(({ kinds }) => !kinds.includes(kind)).map(eitherWay),
    ...[...byName(facets).values()].map((alike) => anyOf(alike.map(facetWord))),
    ...measures.flatMap(({ length, other, within }) =>
      [length, ...(other === null ? [] : [other])].map((one) => anyOf(sixteenths(one, within))),
    ),
  ];
  return groups.join(' AND ');
}

const eitherWay = ({ word, facets }: AskedWord): string =>
  anyOf([`${quoted(word)}*`, ...facets.map(facetWord)]);

const anyOf = (terms: readonly string[]): string => `(${terms.join(' OR ')})`;
const quoted = (term: string): string => `"${term.replaceAll('"', '""')}"`;

const facetWord = ({ name, value }: Facet): string => quoted(`${OURS}${name}x${value.replace(/[ '-]/g, '')}`);

function byName(facets: readonly Facet[]): Map<string, Facet[]> {
  const names = [...new Set(facets.map(({ name }) => name))];
  return new Map(names.map((name) => [name, facets.filter((one) => one.name === name)]));
}

function sixteenths(length: number, within: number): string[] {
  const [first, last] = [length - within, length + within].map((one) =>
    Math.max(0, Math.floor(one / SIXTEENTH)),
  );
  return Array.from({ length: last! - first! + 1 }, (_, one) => quoted(`${OURS}lenx${first! + one}`));
}
