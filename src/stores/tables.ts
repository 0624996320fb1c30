/** The rows as they lie in the data file, one interface a table. The migrations say what may be in them. */
import type { Generated } from 'kysely';
import type { Turning } from '#core/envelope/recipe.ts';
import type { FindKind } from '#core/finding/vocabulary.ts';
import type { PostId } from '#core/post/rules.ts';
import type { EnvelopeState, ProjectState } from '#core/project/journal.ts';
import type { LessonPart, SizeClass } from '#core/project/lessons.ts';
import type { ReadyMadeKind } from '#core/stash/ready-made.ts';
import type { MovementKind } from '#core/stash/stash.ts';
import type { FoldName } from '#shared/fold.ts';
import type { Length } from '#shared/length.ts';
import type { LessonStep } from '#shared/lesson.ts';
import type { Fit, WantedFit } from '#shared/outcome.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { PrintDirection } from '#shared/print.ts';
import type { SheetEdge } from '#shared/sheet.ts';

/** JSON text. */
type Json = string;
type Flag = 0 | 1;
/** When it was put away; null is where everything begins. */
type Away = Generated<string | null>;

export interface Tables {
  notchers: NotcherRow;
  settings: SettingsRow;
  bulks: { id: Generated<number>; at: string; least: Length; most: Length; measured: Length };
  card_sizes: CardSizeRow;
  submissions: { token: string; at: string; location: string };
  pads: PadRow;
  designs: DesignRow;
  offcuts: OffcutRow;
  series: { id: Generated<number>; name: string; note: string; put_away_at: Away };
  projects: ProjectRow;
  cuts: { id: Generated<number>; project_id: number; at: string; undone_at: string | null; pieces: Json };
  envelopes: EnvelopeRow;
  outcomes: OutcomeRow;
  movements: MovementRow;
  plans: PlanRow;
  plan_ticks: { plan_id: number; step: number };
  spoiled_parts: { id: Generated<number>; plan_id: number; part: string; at: string; wrong: string };
  ready_made: ReadyMadeRow;
  lessons: LessonRow;
  lessons_not_here: {
    id: Generated<number>;
    lesson_id: number;
    project_id: number | null;
    place: string | null;
  };
  tags: { id: Generated<number>; name: string };
  project_tags: { project_id: number; tag_id: number };
  ready_made_movements: ReadyMadeMovementRow;
  finds: FindRow;
  find_measures: FindMeasureRow;
  book: { id: 1; uid: string };
  origins: { of: string; row: number; book: string; number: number };
}

interface NotcherRow {
  id: Generated<number>;
  name: string;
  kind: 'notcher' | 'ruler';
  pinned_inset: Length | null;
  pinned_zero_offset: Length | null;
  learning_since: string | null;
  graduation: Length;
  largest_sheet: Length;
  turning: Turning;
  put_away_at: Away;
}

interface SettingsRow {
  id: 1;
  unit: 'in' | 'mm';
  step: 8 | 16 | 32;
  keep_at_least: Length;
  longest_cut: Length;
  wanted_fit: WantedFit;
  notcher_id: number;
  post: Generated<PostId>;
  currency: Generated<string>;
  bulk_correction: Generated<Length>;
  pinned_snug: Length | null;
  pinned_easy: Length | null;
  pinned_loose: Length | null;
  fits_since: string | null;
}

interface CardSizeRow {
  id: Generated<number>;
  name: string;
  width: Length;
  height: Length;
  bulk: Length;
  put_away_at: Away;
}

interface PadRow {
  id: Generated<number>;
  name: string;
  kind: PaperKind;
  width: Length;
  height: Length;
  grammage: number | null;
  low_mark: number;
  measured_width: Length | null;
  measured_height: Length | null;
  strip_edge: SheetEdge | null;
  strip_depth: Length | null;
  price: number | null;
  price_sheets: number | null;
  source: string;
  note: string;
  put_away_at: Away;
}

interface DesignRow {
  id: Generated<number>;
  pad_id: number;
  name: string;
  direction: PrintDirection;
  border: Length | null;
  double_sided: Flag;
  swatch: Json;
  sheets: Generated<number>;
  put_away_at: Away;
  own_low_mark: number | null;
}

interface OffcutRow {
  id: Generated<number>;
  design_id: number;
  width: Length;
  height: Length;
  border: Flag;
  code: string;
  place: string;
  note: string;
  count: Generated<number>;
}

interface ProjectRow {
  id: Generated<number>;
  title: string;
  state: Generated<ProjectState>;
  card_width: Length | null;
  card_height: Length | null;
  card_bulk: Length | null;
  quantity: number;
  recipe: Json | null;
  look: Json | null;
  start: Length | null;
  notcher_id: number | null;
  series_id: number | null;
  notes: string;
  lesson: string;
  created_at: string;
  changed_at: string;
  finished_at: string | null;
  made_again_from: number | null;
  put_away_at: Away;
}

interface EnvelopeRow {
  id: Generated<number>;
  project_id: number;
  number: number;
  cut_id: number | null;
  design_id: number | null;
  state: EnvelopeState;
  trial: Flag;
  start_in_use: Length | null;
  /** Written down without any paper of hers: it has no cut and counts as made. */
  kept: Generated<Flag>;
}

interface OutcomeRow {
  envelope_id: number;
  at: string;
  notcher_id: number | null;
  felt: Fit | null;
  pocket_width: Length | null;
  pocket_height: Length | null;
  square: Length | null;
  start: Length | null;
  twin: Flag;
  finishes: Json | null;
  wrong: string;
  saved_by: string;
}

interface MovementRow {
  id: Generated<number>;
  at: string;
  kind: MovementKind;
  design_id: number;
  offcut_id: number | null;
  delta: number;
  project_id: number | null;
  cut_id: number | null;
  reverses: number | null;
  note: string;
}

interface PlanRow {
  id: Generated<number>;
  project_id: number;
  instead_of: number | null;
  asked_at: string;
  trial: Flag;
  batch: Json;
  cutting: Json;
  plan: Json | null;
  fault: string | null;
  cut_id: number | null;
}

interface LessonRow {
  id: Generated<number>;
  project_id: number;
  envelope_id: number | null;
  at: string;
  words: string;
  saved_by: string;
  step: LessonStep | null;
  chosen: Generated<Flag>;
  always: Generated<Flag>;
  part: LessonPart;
  notcher_id: number | null;
  design_id: number | null;
  paper_kind: PaperKind | null;
  fold: FoldName | null;
  size_class: SizeClass | null;
}

interface ReadyMadeRow {
  id: Generated<number>;
  name: string;
  width: Length;
  height: Length;
  note: string;
  count: Generated<number>;
}

interface ReadyMadeMovementRow {
  id: Generated<number>;
  at: string;
  kind: ReadyMadeKind;
  ready_made_id: number;
  delta: number;
  project_id: number | null;
}

/** Written by triggers alone. */
export interface FindRow {
  id: number;
  kind: FindKind;
  belongs: number;
  number: number;
  title: string;
  text: string;
  about: string;
  facets: string;
  lengths: string;
}

interface FindMeasureRow {
  kind: number;
  length: Length;
  find_id: number;
  field: string;
  other: Length;
}
