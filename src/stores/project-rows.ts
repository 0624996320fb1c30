/** Projects between their rows and their values, with the series they belong to. Writes nothing. */
import { type Selectable, type SqlBool, sql } from 'kysely';
import type { NewProject, Project } from '#core/project/journal.ts';
import type { Database } from './database.ts';
import type { Tables } from './tables.ts';

export const projectRows = (db: Database) =>
  db
    .selectFrom('projects')
    .leftJoin('series', 'series.id', 'projects.series_id')
    .selectAll('projects')
    .select(['series.name as series_name', 'series.note as series_note']);

export const mentions = (text: string) =>
  sql<SqlBool>`instr(lower(projects.title || char(10) || projects.notes || char(10) || projects.lesson), lower(${text})) > 0`;

type Row = Selectable<Tables['projects']> & { series_name: string | null; series_note: string | null };

export const toProject = (row: Row): Project => ({
  id: row.id,
  title: row.title,
  state: row.state,
  card:
    row.card_width === null
      ? null
      : { width: row.card_width, height: row.card_height!, bulk: row.card_bulk! },
  quantity: row.quantity,
  recipe: row.recipe === null ? null : JSON.parse(row.recipe),
  look: row.look === null ? null : JSON.parse(row.look),
  start: row.start,
  notcher: row.notcher_id,
  series:
    row.series_id === null ? null : { id: row.series_id, name: row.series_name!, note: row.series_note! },
  notes: row.notes,
  lesson: row.lesson,
  createdAt: row.created_at,
  changedAt: row.changed_at,
  finishedAt: row.finished_at,
});

export const NEW_ROW = {
  quantity: 1,
  recipe: null,
  look: null,
  start: null,
  notcher_id: null,
  series_id: null,
  notes: '',
  lesson: '',
  card_width: null,
  card_height: null,
  card_bulk: null,
  finished_at: null,
  made_again_from: null,
};

/** The columns of what is named; what is not stays out of the row. */
export function toProjectRow({
  title,
  card,
  quantity,
  recipe,
  look,
  notcher,
  series,
  notes,
  lesson,
  madeAgainFrom,
}: Partial<NewProject>) {
  return {
    ...(title !== undefined && { title }),
    ...(card !== undefined && {
      card_width: card?.width ?? null,
      card_height: card?.height ?? null,
      card_bulk: card?.bulk ?? null,
    }),
    ...(quantity !== undefined && { quantity }),
    ...(recipe !== undefined && { recipe: toJson(recipe) }),
    ...(look !== undefined && { look: toJson(look) }),
    ...(notcher !== undefined && { notcher_id: notcher }),
    ...(series !== undefined && { series_id: series }),
    ...(notes !== undefined && { notes }),
    ...(lesson !== undefined && { lesson }),
    ...(madeAgainFrom !== undefined && { made_again_from: madeAgainFrom }),
  };
}

const toJson = (value: unknown): string | null => (value === null ? null : JSON.stringify(value));
