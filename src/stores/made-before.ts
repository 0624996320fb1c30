/**
 * Which projects made an envelope for much the same card, and which were made again from which. Verbs:
 * `findMadeBefore(db, card, except?)`, `kinOf(db, project)`.
 */
import { sql } from 'kysely';
import type { Card } from '#core/envelope/recipe.ts';
import type { ProjectSoFar } from '#core/project/journal.ts';
import { chooseMadeBefore, type MadeBefore, SAME_CARD } from '#core/project/made-before.ts';
import { longer, shorter } from '#shared/size.ts';
import type { Database } from './database.ts';
import { listSoFar } from './journal.ts';

/** More made for one card than are worth weighing against each other. */
const WEIGHED = 8;

interface Named {
  readonly id: number;
  readonly title: string;
}

/** The best of the newest projects in which an envelope was made for a card of this size, lying either way. */
export async function findMadeBefore(
  db: Database,
  card: Card,
  except?: number,
): Promise<MadeBefore | undefined> {
  const within = (one: string, side: number) =>
    sql<boolean>`${sql.raw(one)} BETWEEN ${side - SAME_CARD.side} AND ${side + SAME_CARD.side}`;
  const rows = await db
    .selectFrom('projects')
    .select('id')
    .where('card_width', 'is not', null)
    .where(within('min(card_width, card_height)', shorter(card)))
    .where(within('max(card_width, card_height)', longer(card)))
    .where('card_bulk', '>=', (card.bulk - SAME_CARD.bulk) as Card['bulk'])
    .where('card_bulk', '<=', (card.bulk + SAME_CARD.bulk) as Card['bulk'])
    .where('put_away_at', 'is', null)
    .$if(except !== undefined, (query) => query.where('id', '<>', except!))
    .where(({ exists, selectFrom }) =>
      exists(
        selectFrom('envelopes')
          .select('envelopes.id')
          .whereRef('project_id', '=', 'projects.id')
          .where('envelopes.state', '=', 'made'),
      ),
    )
    .orderBy('changed_at', 'desc')
    .limit(WEIGHED)
    .execute();
  return chooseMadeBefore(card, rows.length === 0 ? [] : await soFarOf(db, rows));
}

const soFarOf = (db: Database, rows: readonly { id: number }[]): Promise<ProjectSoFar[]> =>
  listSoFar(db, { ids: rows.map(({ id }) => id) });

/** What it was made again from, and the newest that were made again from it. */
export async function kinOf(
  db: Database,
  project: number,
): Promise<{ readonly origin: Named | undefined; readonly again: readonly Named[] }> {
  const rows = await db
    .selectFrom('projects')
    .select(['id', 'title', 'made_again_from'])
    .where((by) =>
      by.or([
        by.and([by('made_again_from', '=', project), by('put_away_at', 'is', null)]),
        by(
          'id',
          '=',
          by.selectFrom('projects as own').select('made_again_from').where('own.id', '=', project),
        ),
      ]),
    )
    .orderBy('id', 'desc')
    .execute();
  const named = ({ id, title }: Named): Named => ({ id, title });
  const again = rows.filter((one) => one.made_again_from === project);
  const origin = rows.find((one) => one.made_again_from !== project);
  return { origin: origin && named(origin), again: again.slice(0, MOST_SHOWN).map(named) };
}

const MOST_SHOWN = 5;
