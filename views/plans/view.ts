/** What the pages of one plan are told. Types only. */
import type { Change } from '#core/batch/changes.ts';
import type { FoundPlan } from '#core/batch/planned.ts';
import type { CutRecord, Project } from '#core/project/journal.ts';
import type { Design, Offcut } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import type { Entry } from '../common/field.tsx';
import type { LessonsShown } from '../lessons/shown.tsx';

export interface PlanView {
  readonly plan: FoundPlan;
  readonly project: Project;
  /** Titles of the projects that it has blanks for. */
  readonly titles: ReadonlyMap<number, string>;
  /** What speaks against cutting it now. */
  readonly changes: readonly Change[];
  /** The plan that it was asked in place of, and what has changed since that one. */
  readonly before: { readonly plan: FoundPlan; readonly changes: readonly Change[] } | undefined;
  /** Its taking from the shelf, once it is cut. */
  readonly cut: CutRecord | undefined;
  readonly designs: ReadonlyMap<number, Design>;
  /** Those of which anything is left. */
  readonly onShelf: readonly Design[];
  /** Those that the plan uses or left. */
  readonly offcuts: ReadonlyMap<number, Offcut>;
  /** What to mind at the blade, while nothing is cut. */
  readonly lessons: LessonsShown | undefined;
  readonly units: Units;
  readonly entry: Entry;
  readonly token: string;
}
