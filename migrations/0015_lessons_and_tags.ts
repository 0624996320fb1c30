/**
 * Lessons with the features they belong to, where they are not to come up, and tags. What stands in outcomes and projects
 * becomes lessons under the steps that its words tell of; the text stays where it was. Frozen once landed.
 */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [lessons, notHere, tags, projectTags, ...indexes]) await statement.execute(db);
  const { rows } = await told.execute(db);
  for (const row of rows) await keep(row).execute(db);
}

/**
 * Of an envelope, the first of its project that was told in these words; without one, of the project itself. `chosen`: the
 * maker said which step it belongs to. The features are those of the day it was told.
 */
const lessons = sql`CREATE TABLE lessons (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES projects (id) ON DELETE CASCADE,
  envelope_id INTEGER UNIQUE REFERENCES outcomes (envelope_id) ON DELETE CASCADE,
  at TEXT NOT NULL CHECK (at LIKE '____-__-__T__:__:%Z'),
  words TEXT NOT NULL CHECK (length(trim(words)) > 0),
  saved_by TEXT NOT NULL,
  step TEXT CHECK (step IN ('paper', 'fit', 'cut', 'notch', 'score', 'fold', 'glue')),
  chosen INTEGER NOT NULL DEFAULT 0 CHECK (chosen IN (0, 1)),
  always INTEGER NOT NULL DEFAULT 0 CHECK (always IN (0, 1)),
  part TEXT NOT NULL CHECK (length(part) > 0),
  notcher_id INTEGER REFERENCES notchers (id) ON DELETE SET NULL,
  design_id INTEGER REFERENCES designs (id) ON DELETE SET NULL,
  paper_kind TEXT CHECK (length(paper_kind) > 0),
  fold TEXT CHECK (length(fold) > 0),
  size_class TEXT CHECK (size_class IN ('small', 'medium', 'large'))
) STRICT`;

/** Never again for this project, or never again in this place where no project is at stake. */
const notHere = sql`CREATE TABLE lessons_not_here (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  lesson_id INTEGER NOT NULL REFERENCES lessons (id) ON DELETE CASCADE,
  project_id INTEGER REFERENCES projects (id) ON DELETE CASCADE,
  place TEXT CHECK (length(place) > 0),
  CHECK ((project_id IS NULL) <> (place IS NULL))
) STRICT`;

const tags = sql`CREATE TABLE tags (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(trim(name)) > 0 AND instr(name, ',') = 0)
) STRICT`;

const projectTags = sql`CREATE TABLE project_tags (
  project_id INTEGER NOT NULL REFERENCES projects (id) ON DELETE CASCADE,
  tag_id INTEGER NOT NULL REFERENCES tags (id) ON DELETE CASCADE,
  PRIMARY KEY (project_id, tag_id)
) STRICT`;

/** One for each feature by which a step's lessons are looked for, the newest last. */
const indexes = [
  sql`CREATE UNIQUE INDEX lessons_of_project ON lessons (project_id, coalesce(envelope_id, 0))`,
  sql`CREATE INDEX lessons_always ON lessons (step, id) WHERE always = 1`,
  sql`CREATE INDEX lessons_of_tool ON lessons (step, notcher_id, id)`,
  sql`CREATE INDEX lessons_of_design ON lessons (step, design_id, id)`,
  sql`CREATE INDEX lessons_of_kind ON lessons (step, paper_kind, id)`,
  sql`CREATE INDEX lessons_of_fold ON lessons (step, fold, id)`,
  sql`CREATE INDEX lessons_of_size ON lessons (step, size_class, id)`,
  sql`CREATE INDEX lessons_of_part ON lessons (part, id)`,
  sql`CREATE UNIQUE INDEX lessons_not_here_once
    ON lessons_not_here (lesson_id, coalesce(project_id, 0), coalesce(place, ''))`,
  sql`CREATE INDEX projects_of_tag ON project_tags (tag_id, project_id)`,
];

interface Told {
  readonly project: number;
  readonly envelope: number | null;
  readonly at: string;
  readonly words: string;
  readonly saved_by: string;
  readonly notcher: number | null;
  readonly design: number | null;
  readonly kind: string | null;
  readonly fold: string | null;
  readonly side: number | null;
}

/** Each wording once a project, with its first envelope; a project's own lesson with its first paper. The oldest first. */
const told = sql<Told>`
  WITH worded AS (
    SELECT envelopes.project_id AS project, envelope_id AS envelope, number, at, notcher_id AS notcher, design_id AS design,
      CASE WHEN trim(wrong) = '' THEN saved_by ELSE wrong END AS words,
      CASE WHEN trim(wrong) = '' THEN '' ELSE saved_by END AS saved_by
    FROM outcomes JOIN envelopes ON envelopes.id = outcomes.envelope_id
    WHERE trim(wrong) <> '' OR trim(saved_by) <> ''
    UNION ALL
    SELECT id, NULL, 0, coalesce(finished_at, changed_at), notcher_id,
      (SELECT design_id FROM envelopes WHERE project_id = projects.id AND design_id IS NOT NULL ORDER BY number LIMIT 1),
      lesson, ''
    FROM projects WHERE trim(lesson) <> ''
  ), numbered AS (
    SELECT *, row_number() OVER (PARTITION BY project, envelope IS NULL, words, saved_by ORDER BY number) AS nth FROM worded
  )
  SELECT project, envelope, at, words, saved_by, notcher, design, pads.kind AS kind,
    json_extract(projects.recipe, '$.fold') AS fold, max(projects.card_width, projects.card_height) AS side
  FROM numbered JOIN projects ON projects.id = project
    LEFT JOIN designs ON designs.id = design LEFT JOIN pads ON pads.id = designs.pad_id
  WHERE nth = 1 ORDER BY at, project, envelope`;

const keep = ({ project, envelope, at, words, saved_by, notcher, design, kind, fold, side }: Told) =>
  sql`INSERT INTO lessons
    (project_id, envelope_id, at, words, saved_by, step, part, notcher_id, design_id, paper_kind, fold, size_class)
    VALUES (${project}, ${envelope}, ${at}, ${words}, ${saved_by}, ${mostToldOf(STEPS, `${words} ${saved_by}`)},
      ${mostToldOf(PARTS, words) ?? 'envelope'}, ${notcher}, ${design}, ${kind}, ${fold}, ${sizeClass(side)})`;

/** The bounds lie at 3½ and 6 in. */
const sizeClass = (side: number | null): string | null =>
  side === null ? null : side <= 3_556_000 ? 'small' : side <= 6_096_000 ? 'medium' : 'large';

/** The key of which most words begin so; the first of several, null where none does. */
function mostToldOf(beginnings: Readonly<Record<string, string>>, text: string): string | null {
  const spoken = text.toLowerCase().match(/\p{L}+/gu) ?? [];
  const counts = Object.entries(beginnings).map(([key, list]) => ({
    key,
    count: spoken.filter((word) => list.split(' ').some((begins) => word.startsWith(begins))).length,
  }));
  const most = Math.max(...counts.map(({ count }) => count));
  return most === 0 ? null : counts.find(({ count }) => count === most)!.key;
}

const STEPS = {
  glue: 'glu adhesive tape taping sticky stuck paste seam dry seal brush ripple',
  score: 'scor crack split grain bend bent bone',
  notch: 'notch start inset mark punch',
  cut: 'cut blade trim knife sliver slip offcut',
  fold: 'fold creas flap overlap gap',
  paper: 'paper cardstock print pattern border lean upright design sheet vellum kraft thick thin fade',
  fit: 'tight loose snug pocket card fit bow room rub narrow wide tall bulk',
};

const PARTS = {
  liner: 'liner lining',
  wrap: 'band wrap ribbon closing',
  box: 'box lid',
  tag: 'tag',
  insert: 'insert',
  base: 'base',
};
