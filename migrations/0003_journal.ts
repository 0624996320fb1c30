/** Projects and what came of them: cuts, envelopes, outcomes, series. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [series, projects, cuts, envelopes, outcomes, ...indexes])
    await statement.execute(db);
}

const series = sql`CREATE TABLE series (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL UNIQUE CHECK (length(trim(name)) > 0),
  note TEXT NOT NULL
) STRICT`;

/** `start` replaces the recipe's for what is still to be made, once a trial piece has said so. */
const projects = sql`CREATE TABLE projects (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  title TEXT NOT NULL CHECK (length(trim(title)) > 0),
  state TEXT NOT NULL DEFAULT 'idea' CHECK (state IN ('idea', 'planned', 'cut', 'made')),
  card_width INTEGER CHECK (card_width BETWEEN 1 AND 400000000),
  card_height INTEGER CHECK (card_height BETWEEN 1 AND 400000000),
  card_bulk INTEGER CHECK (card_bulk BETWEEN 0 AND 400000000),
  quantity INTEGER NOT NULL CHECK (quantity BETWEEN 1 AND 10000),
  recipe TEXT CHECK (json_valid(recipe)),
  look TEXT CHECK (json_valid(look)),
  start INTEGER CHECK (start > 0),
  notcher_id INTEGER REFERENCES notchers (id),
  series_id INTEGER REFERENCES series (id),
  notes TEXT NOT NULL,
  lesson TEXT NOT NULL,
  created_at TEXT NOT NULL CHECK (created_at LIKE '____-__-__T__:__:%Z'),
  changed_at TEXT NOT NULL CHECK (changed_at LIKE '____-__-__T__:__:%Z'),
  finished_at TEXT CHECK (finished_at LIKE '____-__-__T__:__:%Z'),
  CHECK ((card_width IS NULL) = (card_height IS NULL) AND (card_width IS NULL) = (card_bulk IS NULL)),
  CHECK (start IS NULL OR recipe IS NOT NULL)
) STRICT`;

const cuts = sql`CREATE TABLE cuts (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES projects (id),
  at TEXT NOT NULL CHECK (at LIKE '____-__-__T__:__:%Z'),
  undone_at TEXT CHECK (undone_at LIKE '____-__-__T__:__:%Z'),
  pieces TEXT NOT NULL CHECK (json_valid(pieces))
) STRICT`;

/** A trial folded from scrap has no cut and no design. */
const envelopes = sql`CREATE TABLE envelopes (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES projects (id),
  number INTEGER NOT NULL CHECK (number > 0),
  cut_id INTEGER REFERENCES cuts (id),
  design_id INTEGER REFERENCES designs (id),
  state TEXT NOT NULL CHECK (state IN ('blank', 'made', 'spoiled')),
  trial INTEGER NOT NULL CHECK (trial IN (0, 1)),
  UNIQUE (project_id, number),
  CHECK ((cut_id IS NULL) = (design_id IS NULL)),
  CHECK (cut_id IS NOT NULL OR trial = 1)
) STRICT`;

/** `start` is what the ruler read; `twin` says that it was measured from the other corner. */
const outcomes = sql`CREATE TABLE outcomes (
  envelope_id INTEGER PRIMARY KEY REFERENCES envelopes (id),
  at TEXT NOT NULL CHECK (at LIKE '____-__-__T__:__:%Z'),
  notcher_id INTEGER REFERENCES notchers (id),
  felt TEXT CHECK (felt IN ('won''t go', 'tight', 'snug', 'easy', 'loose')),
  pocket_width INTEGER CHECK (pocket_width BETWEEN 1 AND 400000000),
  pocket_height INTEGER CHECK (pocket_height BETWEEN 1 AND 400000000),
  square INTEGER CHECK (square BETWEEN 1 AND 400000000),
  start INTEGER CHECK (start BETWEEN 1 AND 400000000),
  twin INTEGER NOT NULL CHECK (twin IN (0, 1)),
  finishes TEXT CHECK (json_valid(finishes)),
  wrong TEXT NOT NULL,
  saved_by TEXT NOT NULL,
  CHECK ((pocket_width IS NULL) = (pocket_height IS NULL)),
  CHECK ((square IS NULL) = (start IS NULL))
) STRICT`;

const indexes = [
  sql`CREATE INDEX projects_by_change ON projects (changed_at)`,
  sql`CREATE INDEX projects_of_series ON projects (series_id)`,
  sql`CREATE INDEX cuts_of_project ON cuts (project_id)`,
  sql`CREATE INDEX envelopes_of_cut ON envelopes (cut_id)`,
  sql`CREATE INDEX outcomes_of_notcher ON outcomes (notcher_id)`,
];
