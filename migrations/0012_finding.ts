/**
 * What the search box finds: one row for each thing that can be found, its words under FTS5, its measures by length.
 * Triggers keep them after every write, whoever writes; what they should hold is worked out again by the views
 * `due_finds` and `due_measures`. A migration that rebuilds a table named here must bring its triggers back. Frozen once landed.
 */
import { type Kysely, sql } from 'kysely';
import {
  COLUMNS,
  findsOf,
  firstOf,
  idIn,
  type Kind,
  measuresOf,
  NUMBER,
  OURS,
  ROOM,
  SOURCES,
} from './finding-sources.ts';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [...tables, ...views, ...kept, ...written, ...followed]) {
    await sql.raw(statement).execute(db);
  }
  for (const kind of Object.keys(SOURCES) as Kind[]) {
    for (const statement of filled(kind, 'TRUE')) await sql.raw(statement).execute(db);
  }
  await sql.raw(placesDue).execute(db);
}

/** A kind of which there may be very many has an index of words to itself, so that no other search reads past it. */
const ALONE = ['project', 'lesson', 'outcome', 'part', 'offcut'];
const INDEXES = [...ALONE, 'other'];
const isIn = (index: string, kind: string): string =>
  index === 'other' ? `${kind} NOT IN ('${ALONE.join("', '")}')` : `${kind} = '${index}'`;

/** `other` is the rectangle's other side, 0 where there is none. */
const measures = `CREATE TABLE find_measures (
    kind INTEGER NOT NULL,
    length INTEGER NOT NULL CHECK (length > 0),
    find_id INTEGER NOT NULL,
    field TEXT NOT NULL,
    other INTEGER NOT NULL,
    PRIMARY KEY (kind, length, find_id, field, other)
  ) STRICT, WITHOUT ROWID`;

/** `belongs` and `number` say which page shows it; `facets` are words made of a name, an x and what is so called. */
const tables = [
  `CREATE TABLE finds (
    id INTEGER PRIMARY KEY,
    kind TEXT NOT NULL CHECK (kind IN ('${Object.keys(NUMBER).join("', '")}')),
    belongs INTEGER NOT NULL,
    number INTEGER NOT NULL,
    title TEXT NOT NULL,
    text TEXT NOT NULL,
    about TEXT NOT NULL,
    facets TEXT NOT NULL,
    lengths TEXT NOT NULL
  ) STRICT`,
  `CREATE UNIQUE INDEX finds_of_places ON finds (title) WHERE kind = 'place'`,
  measures,
  `CREATE INDEX find_measures_of_one ON find_measures (find_id)`,
  `CREATE INDEX offcuts_of_place ON offcuts (place) WHERE count > 0 AND place <> ''`,
  `CREATE INDEX plans_asked_instead ON plans (instead_of) WHERE instead_of IS NOT NULL`,
  `CREATE INDEX envelopes_of_design ON envelopes (design_id) WHERE design_id IS NOT NULL`,
  ...INDEXES.flatMap((index) => [
    `CREATE VIEW finds_in_${index} AS SELECT id, title, text, about, facets, lengths FROM finds WHERE ${isIn(index, 'kind')}`,
    `CREATE VIRTUAL TABLE find_words_${index} USING fts5 (title, text, about, facets, lengths,
      content = 'finds_in_${index}', content_rowid = 'id', tokenize = 'unicode61 remove_diacritics 2',
      prefix = '1 2 3 4 5 6')`,
  ]),
];

const kept = INDEXES.flatMap((index) => [
  `CREATE TRIGGER finds_are_indexed_in_${index} AFTER INSERT ON finds WHEN ${isIn(index, 'NEW.kind')} BEGIN
    INSERT INTO find_words_${index} (rowid, title, text, about, facets, lengths)
      VALUES (NEW.id, NEW.title, NEW.text, NEW.about, NEW.facets, NEW.lengths);
  END`,
  `CREATE TRIGGER finds_leave_${index} AFTER DELETE ON finds WHEN ${isIn(index, 'OLD.kind')} BEGIN
    INSERT INTO find_words_${index} (find_words_${index}, rowid, title, text, about, facets, lengths)
      VALUES ('delete', OLD.id, OLD.title, OLD.text, OLD.about, OLD.facets, OLD.lengths);
    DELETE FROM find_measures WHERE find_id = OLD.id;
  END`,
]);

/** Sixteenths of an inch, so that a length and words can be asked for together. */
const lengthsOf = (
  find: string,
): string => `coalesce((SELECT group_concat(DISTINCT '${OURS}lenx' || (length / 63500))
  FROM find_measures WHERE find_id = ${find}), '')`;

const hasMeasures = (kind: Kind): boolean => 'measures' in SOURCES[kind];

function filled(kind: Kind, where: string): string[] {
  return [
    ...(hasMeasures(kind)
      ? [`INSERT INTO find_measures (kind, length, find_id, field, other) ${measuresOf(kind, where)}`]
      : []),
    `INSERT INTO finds (${COLUMNS}, lengths)
      SELECT ${COLUMNS}, ${lengthsOf('due.id')} FROM (${findsOf(kind, where)}) AS due`,
  ];
}

const cleared = (kind: Kind, where: string): string =>
  `DELETE FROM finds WHERE id IN (SELECT ${idIn(kind)} FROM ${SOURCES[kind].from} WHERE ${where})`;

const placesDue = `INSERT INTO finds (${COLUMNS}, lengths)
  SELECT ${firstOf('place')} + row_number() OVER (ORDER BY place), 'place', 0, 0, place, '', '', '', ''
  FROM (SELECT DISTINCT place FROM offcuts WHERE count > 0 AND place <> '')`;

const all = Object.keys(SOURCES) as Kind[];

const views = [
  `CREATE VIEW due_finds AS ${all.map((kind) => findsOf(kind, 'TRUE')).join(' UNION ALL ')}`,
  `CREATE VIEW due_measures AS ${all
    .filter(hasMeasures)
    .map((kind) => measuresOf(kind, 'TRUE'))
    .join(' UNION ALL ')}`,
];

const trigger = (name: string, when: string, statements: readonly string[]): string =>
  `CREATE TRIGGER ${name} ${when} BEGIN ${statements.map((one) => `${one};`).join(' ')} END`;

const anew = (kinds: readonly Kind[], where: string): string[] =>
  kinds.flatMap((kind) => [cleared(kind, where), ...filled(kind, where)]);

const gone = (kind: Kind, owner: string): string =>
  `DELETE FROM finds WHERE id = ${firstOf(kind)} + ${owner}`;

/** What a row's own writing changes. */
const written = [
  ...own(
    'projects',
    ['project', 'lesson'],
    'title, notes, lesson, card_width, card_height, recipe, start, created_at, finished_at',
  ),
  ...own('card_sizes', ['card'], 'name, width, height'),
  ...own('ready_made', ['ready-made'], 'name, width, height, note'),
  ...own('series', ['series'], 'name, note'),
  ...own('pads', ['pad'], 'name, kind, width, height, measured_width, measured_height, source, note'),
  ...own('designs', ['design'], 'pad_id, name, direction, border, swatch'),
  ...own('offcuts', ['offcut'], 'width, height, code, place, note'),
  trigger(
    'offcuts_are_found_while_there',
    'AFTER UPDATE OF count ON offcuts WHEN (OLD.count > 0) <> (NEW.count > 0)',
    [...anew(['offcut'], 'offcuts.id = NEW.id')],
  ),
  trigger(
    'outcomes_are_found',
    'AFTER INSERT ON outcomes',
    filled('outcome', 'outcomes.envelope_id = NEW.envelope_id'),
  ),
  trigger(
    'outcomes_are_found_anew',
    'AFTER UPDATE ON outcomes',
    anew(['outcome'], 'outcomes.envelope_id = NEW.envelope_id'),
  ),
  trigger('outcomes_are_found_no_more', 'AFTER DELETE ON outcomes', [gone('outcome', 'OLD.envelope_id')]),
  trigger('plans_are_found', 'AFTER INSERT ON plans', anew(['part'], 'plans.id IN (NEW.id, NEW.instead_of)')),
  trigger('plans_are_found_no_more', 'AFTER DELETE ON plans', [
    `DELETE FROM finds WHERE id BETWEEN ${firstOf('part')} + OLD.id * 1000 AND ${firstOf('part')} + OLD.id * 1000 + 999`,
    ...anew(['part'], 'plans.id = OLD.instead_of'),
  ]),
];

function own(table: string, kinds: readonly Kind[], columns: string): string[] {
  return [
    trigger(
      `${table}_are_found`,
      `AFTER INSERT ON ${table}`,
      kinds.flatMap((kind) => filled(kind, `${table}.id = NEW.id`)),
    ),
    trigger(
      `${table}_are_found_anew`,
      `AFTER UPDATE OF ${columns} ON ${table}`,
      anew(kinds, `${table}.id = NEW.id`),
    ),
    trigger(
      `${table}_are_found_no_more`,
      `AFTER DELETE ON ${table}`,
      kinds.map((kind) => gone(kind, 'OLD.id')),
    ),
  ];
}

const usesDesign = (designs: string): string =>
  `projects.id IN (SELECT project_id FROM envelopes WHERE design_id IN (${designs}))`;

const leavePlace = `DELETE FROM finds WHERE kind = 'place' AND title = OLD.place
  AND NOT EXISTS (SELECT 1 FROM offcuts WHERE place = OLD.place AND count > 0 AND place <> '')`;
const takePlace = `INSERT INTO finds (${COLUMNS}, lengths)
  SELECT 1 + coalesce((SELECT max(id) FROM finds WHERE id BETWEEN ${firstOf('place')} AND ${firstOf('place') + ROOM - 1}),
    ${firstOf('place')}), 'place', 0, 0, NEW.place, '', '', '', ''
  WHERE NEW.count > 0 AND NEW.place <> ''
    AND NOT EXISTS (SELECT 1 FROM finds WHERE kind = 'place' AND title = NEW.place)`;

/** What is found differently because something it belongs to was written. */
const followed = [
  trigger(
    'projects_rename_what_is_theirs',
    'AFTER UPDATE OF title, recipe, card_width, card_height ON projects',
    [...anew(['outcome'], 'envelopes.project_id = NEW.id'), ...anew(['part'], 'plans.project_id = NEW.id')],
  ),
  trigger(
    'projects_join_series',
    'AFTER UPDATE OF series_id ON projects WHEN NEW.series_id IS NOT OLD.series_id',
    [...anew(['project'], 'projects.id = NEW.id')],
  ),
  trigger('series_rename_their_projects', 'AFTER UPDATE OF name ON series WHEN NEW.name <> OLD.name', [
    ...anew(['project'], 'projects.series_id = NEW.id'),
  ]),
  trigger('envelopes_show_their_paper', 'AFTER INSERT ON envelopes WHEN NEW.design_id IS NOT NULL', [
    ...anew(['project', 'lesson'], 'projects.id = NEW.project_id'),
  ]),
  trigger('envelopes_change_their_paper', 'AFTER UPDATE OF project_id, number, design_id ON envelopes', [
    ...anew(['project', 'lesson'], 'projects.id IN (OLD.project_id, NEW.project_id)'),
    ...anew(['outcome'], 'outcomes.envelope_id = NEW.id'),
  ]),
  trigger('envelopes_take_their_paper_away', 'AFTER DELETE ON envelopes WHEN OLD.design_id IS NOT NULL', [
    ...anew(['project', 'lesson'], 'projects.id = OLD.project_id'),
  ]),
  trigger('designs_rename_what_is_of_them', 'AFTER UPDATE OF pad_id, name, direction, swatch ON designs', [
    ...anew(['offcut'], 'offcuts.design_id = NEW.id'),
    ...anew(['outcome'], 'envelopes.design_id = NEW.id'),
    ...anew(['project', 'lesson'], usesDesign('NEW.id')),
  ]),
  trigger('pads_rename_what_is_of_them', 'AFTER UPDATE OF name, kind, width, height ON pads', [
    ...anew(['design'], 'designs.pad_id = NEW.id'),
    ...anew(['offcut'], 'designs.pad_id = NEW.id'),
    ...anew(['outcome'], 'designs.pad_id = NEW.id'),
    ...anew(['project', 'lesson'], usesDesign('SELECT id FROM designs WHERE pad_id = NEW.id')),
  ]),
  trigger(
    'spoiled_parts_are_found',
    'AFTER INSERT ON spoiled_parts',
    anew(['part'], 'plans.id = NEW.plan_id'),
  ),
  trigger(
    'spoiled_parts_are_found_no_more',
    'AFTER DELETE ON spoiled_parts',
    anew(['part'], 'plans.id = OLD.plan_id'),
  ),
  trigger('offcuts_take_a_place', 'AFTER INSERT ON offcuts', [takePlace]),
  trigger(
    'offcuts_change_their_place',
    'AFTER UPDATE OF place, count ON offcuts WHEN OLD.place <> NEW.place OR (OLD.count > 0) <> (NEW.count > 0)',
    [leavePlace, takePlace],
  ),
  trigger('offcuts_leave_their_place', 'AFTER DELETE ON offcuts', [leavePlace]),
];
