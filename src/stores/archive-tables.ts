/**
 * What an archive holds of a book: its tables in an order in which each names only rows before it, what they name, and what
 * is worked out from others and so left out. A test compares this with the schema, so that no table is forgotten.
 */

export interface ArchivedTable {
  readonly name: string;
  /** Columns that name a row, by the table whose number they hold. */
  readonly names: Readonly<Record<string, string>>;
  /** By what a row is known where it has no number of its own. */
  readonly key?: readonly string[];
  /** A row with the same of this is the same row, whichever book it comes from. */
  readonly alike?: string;
  /** Sums of movements, which the movements bring with them. */
  readonly summed?: readonly string[];
  /** Columns of JSON that name rows. */
  readonly json?: readonly string[];
  /** A ledger: its lines tell in which order things happened. */
  readonly inOrder?: boolean;
  /** By what a reader knows a row. */
  readonly called?: string;
}

export const ARCHIVED: readonly ArchivedTable[] = [
  { name: 'notchers', names: {}, called: 'name' },
  { name: 'settings', names: { notcher_id: 'notchers' }, key: ['id'] },
  { name: 'card_sizes', names: {}, called: 'name' },
  { name: 'bulks', names: {} },
  { name: 'pads', names: {}, called: 'name' },
  { name: 'designs', names: { pad_id: 'pads' }, summed: ['sheets'], called: 'name' },
  { name: 'offcuts', names: { design_id: 'designs' }, summed: ['count'], called: 'code' },
  { name: 'series', names: {}, alike: 'name', called: 'name' },
  { name: 'tags', names: {}, alike: 'name', called: 'name' },
  {
    name: 'projects',
    names: { notcher_id: 'notchers', series_id: 'series', made_again_from: 'projects' },
    called: 'title',
  },
  { name: 'project_tags', names: { project_id: 'projects', tag_id: 'tags' }, key: ['project_id', 'tag_id'] },
  { name: 'cuts', names: { project_id: 'projects' }, json: ['pieces'] },
  { name: 'envelopes', names: { project_id: 'projects', cut_id: 'cuts', design_id: 'designs' } },
  {
    name: 'outcomes',
    names: { envelope_id: 'envelopes', notcher_id: 'notchers' },
    key: ['envelope_id'],
  },
  {
    name: 'movements',
    names: {
      design_id: 'designs',
      offcut_id: 'offcuts',
      project_id: 'projects',
      cut_id: 'cuts',
      reverses: 'movements',
    },
    inOrder: true,
  },
  {
    name: 'plans',
    names: { project_id: 'projects', instead_of: 'plans', cut_id: 'cuts' },
    json: ['batch', 'cutting', 'plan'],
  },
  { name: 'plan_ticks', names: { plan_id: 'plans' }, key: ['plan_id', 'step'] },
  { name: 'spoiled_parts', names: { plan_id: 'plans' } },
  { name: 'ready_made', names: {}, summed: ['count'], called: 'name' },
  {
    name: 'ready_made_movements',
    names: { ready_made_id: 'ready_made', project_id: 'projects' },
    inOrder: true,
  },
  {
    name: 'lessons',
    names: { project_id: 'projects', envelope_id: 'envelopes', notcher_id: 'notchers', design_id: 'designs' },
  },
  { name: 'lessons_not_here', names: { lesson_id: 'lessons', project_id: 'projects' } },
];

/** Forms already sent, what the search works out, and whose number a row had: each book has its own. */
export const NOT_ARCHIVED = /^(submissions|finds?_\w+|finds|book|origins|kysely_\w+|sqlite_\w+)$/;
