/**
 * The few names that begin as what is typed does, from the search box's own index. Verbs: `likelyDesigns(db, words,
 * { limit, onShelf? })`, `likelyPlaces(db, words, { limit })`, the newest first; what is put away is not among them.
 */
import { type RawBuilder, sql } from 'kysely';
import { wordsIn } from '#core/finding/fold-text.ts';
import { isCalled } from '#core/finding/named.ts';
import type { FindKind } from '#core/finding/vocabulary.ts';
import type { Design } from '#core/stash/stash.ts';
import type { Database } from './database.ts';
import { listDesigns } from './designs.ts';
import { idOf } from './find-sql.ts';

/** So many of the newest are asked whether they are put away or used up. */
const LOOKED_AT = 60;

export async function likelyDesigns(
  db: Database,
  typed: string,
  { limit, onShelf = false }: { readonly limit: number; readonly onShelf?: boolean },
): Promise<Design[]> {
  const called = typed.split(' · ').at(-1)!.trim();
  const { rows } = await sql<{ id: number }>`
    SELECT id - ${idOf('design', 0)} AS id FROM (${begun('design', typed)})
    UNION SELECT * FROM (SELECT id FROM designs WHERE name = ${called} COLLATE NOCASE LIMIT ${LOOKED_AT})`.execute(
    db,
  );
  const found = await listDesigns(db, { ids: rows.map(({ id }) => id), onShelf, away: false });
  return found
    .sort((one, other) => justSo(other, typed) - justSo(one, typed) || other.id - one.id)
    .slice(0, limit);
}

const justSo = (design: Design, typed: string): number => Number(isCalled(design, typed));

/** Where anything lies, by name; the very one that is typed first. */
export async function likelyPlaces(
  db: Database,
  typed: string,
  { limit }: { readonly limit: number },
): Promise<string[]> {
  const { rows } = await sql<{ title: string }>`
    SELECT title FROM finds WHERE id IN (${begun('place', typed)})
    UNION SELECT title FROM finds WHERE kind = 'place' AND title = ${typed.trim()}`.execute(db);
  const names = rows.map(({ title }) => title);
  const is = (name: string): number => Number(name === typed.trim());
  return names.sort((a, b) => is(b) - is(a) || BY_NUMBER.compare(a, b)).slice(0, limit);
}

const BY_NUMBER = new Intl.Collator('en', { numeric: true });

/** Every row of the kind where no word is typed. */
function begun(kind: FindKind, typed: string): RawBuilder<unknown> {
  const [first, last] = [idOf(kind, 0), idOf(kind, 2 ** 40 - 1)];
  const words = wordsIn(typed).map((word) => `"${word}"*`);
  if (typed.trim() === '')
    return sql`SELECT id FROM finds WHERE id BETWEEN ${first} AND ${last} ORDER BY id DESC LIMIT ${LOOKED_AT}`;
  if (words.length === 0) return sql`SELECT id FROM finds WHERE FALSE`;
  return sql`SELECT rowid AS id FROM find_words_other WHERE find_words_other MATCH ${words.join(' AND ')}
    AND rowid BETWEEN ${first} AND ${last} ORDER BY rowid DESC LIMIT ${LOOKED_AT}`;
}
