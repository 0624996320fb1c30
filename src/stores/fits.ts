/** How cards sat for the maker, and where her fits begin. Verb: `readFits(db, habits)`, from the newest outcomes. */
import { sql } from 'kysely';
import type { FeltFit } from '#core/project/fit-limits.ts';
import {
  FELT_AT_MOST,
  type FitHabits,
  feltIn,
  type HerFits,
  learnFits,
  type PlannedPocket,
} from '#core/project/fits.ts';
import type { Database } from './database.ts';
import { remembered } from './remembered.ts';

export const readFits = (db: Database, habits: FitHabits): Promise<HerFits> =>
  remembered(db, `fits ${JSON.stringify(habits)}`, async () =>
    learnFits(await feltSince(db, habits.since), habits),
  );

/** Oldest first. What was written for several at once was felt once. */
async function feltSince(db: Database, since: string | null): Promise<FeltFit[]> {
  const rows = await db
    .selectFrom('outcomes')
    .innerJoin('envelopes', 'envelopes.id', 'outcomes.envelope_id')
    .innerJoin('projects', 'projects.id', 'envelopes.project_id')
    .select([
      'outcomes.at',
      'felt',
      'pocket_width',
      'pocket_height',
      'square',
      'outcomes.start',
      'twin',
      'start_in_use',
      'projects.id as project',
      PLANNED.as('planned'),
    ])
    .where('felt', 'is not', null)
    .where('recipe', 'is not', null)
    .$if(since !== null, (query) => query.where('outcomes.at', '>', since!))
    .orderBy('outcomes.at', 'desc')
    .orderBy('outcomes.envelope_id', 'desc')
    .limit(FELT_AT_MOST)
    .execute();
  const told = new Map(rows.map((row) => [JSON.stringify(row), row]));
  return [...told.values()].reverse().map((row) =>
    feltIn(toPlanned(row.planned), {
      felt: row.felt!,
      pocket: row.pocket_width === null ? null : { width: row.pocket_width, height: row.pocket_height! },
      asMade: row.square === null ? null : { square: row.square, start: row.start! },
      twin: row.twin === 1,
      start: row.start_in_use,
    }),
  );
}

/** Of the whole recipe only what says how the pocket was to come out, as a JSON array. */
const PLANNED = sql<string>`json_extract(recipe, '$.card', '$.cardTurned', '$.fold', '$.pocket', '$.blank',
  '$.starts', '$.notcher')`;

function toPlanned(json: string): PlannedPocket {
  const [card, cardTurned, fold, pocket, blank, starts, notcher] = JSON.parse(json);
  return { card, cardTurned, fold, pocket, blank, starts, notcher };
}
