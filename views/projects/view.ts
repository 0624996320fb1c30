/** What the pages of one project are told. Types only. */
import type { SetRow } from '#core/batch/set-parts.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { PostId } from '#core/post/rules.ts';
import type { ProjectInFull, Series } from '#core/project/journal.ts';
import type { OwnLesson } from '#core/project/lessons.ts';
import type { MadeBefore } from '#core/project/made-before.ts';
import type { Next } from '#core/project/next.ts';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import type { ReadyMade } from '#core/stash/ready-made.ts';
import type { Design, Offcut, Overtaken } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import type { Standing } from '#shared/put-away.ts';
import type { Tag } from '#shared/tags.ts';
import type { Entry } from '../common/field.tsx';

export interface ProjectView {
  readonly full: ProjectInFull;
  /** What the next envelope is made to. */
  readonly recipe: Recipe | null;
  /** What the project is known by; undefined while it has no recipe. */
  readonly working: WorkingMeasures | undefined;
  readonly next: Next;
  /** Every design and offcut that the project's cuts name. */
  readonly designs: ReadonlyMap<number, Design>;
  readonly offcuts: ReadonlyMap<number, Offcut>;
  readonly units: Units;
  readonly post: PostId;
  /** Ready-made envelopes taken for it. */
  readonly taken: readonly { readonly readyMade: ReadyMade; readonly count: number }[];
}

/** What a project's own page tells besides: the parts of its set, and other projects for the same card. */
export interface ProjectAround {
  readonly parts: readonly SetRow[];
  /** The one it was made again from, and those made again from it. */
  readonly origin: { readonly id: number; readonly title: string } | undefined;
  readonly again: readonly { readonly id: number; readonly title: string }[];
  /** Told as long as nothing is made and it was not made again from another. */
  readonly madeBefore: MadeBefore | undefined;
}

export interface ProjectForms {
  /** Whether it is put away, and what would become of it. */
  readonly standing: Standing | undefined;
  readonly series: readonly Series[];
  readonly tags: readonly Tag[];
  /** All that she uses, the most used first. */
  readonly usedTags: readonly Tag[];
  readonly lessons: readonly OwnLesson[];
  readonly entry: Entry;
  readonly token: string;
  /** For making it again, and for making another again into it. */
  readonly tokens: { readonly again: string; readonly before: string };
  /** Why an undo was refused. */
  readonly overtaken?: Overtaken | undefined;
}
