/** A project and what came of it, as values: cuts, envelopes, outcomes, series. Knows no database and no paper sizes. */
import type { Look } from '#core/envelope/fold.ts';
import type { Card, Finishes, Recipe } from '#core/envelope/recipe.ts';
import type { LeftoverCut, PieceCut } from '#core/stash/stash.ts';
import type { Length } from '#shared/length.ts';
import type { Fit } from '#shared/outcome.ts';
import type { Size } from '#shared/size.ts';

export const PROJECT_STATES = ['idea', 'planned', 'cut', 'made'] as const;

export type ProjectState = (typeof PROJECT_STATES)[number];

/** A card that the maker draws again and again. */
export interface CardSize extends Card {
  readonly id: number;
  readonly name: string;
}

export interface Series {
  readonly id: number;
  readonly name: string;
  readonly note: string;
}

/** With how many projects are in it, and envelopes made of paper. */
export interface SeriesTold extends Series {
  readonly projects: number;
  readonly made: number;
}

/** `look` is how the print is to lie on the folded envelope. */
export interface NewProject {
  readonly title: string;
  readonly card?: Card | null;
  readonly quantity?: number;
  readonly recipe?: Recipe | null;
  readonly look?: Look | null;
  readonly notcher?: number | null;
  readonly series?: number | null;
  readonly notes?: string;
  readonly lesson?: string;
  /** The project whose working measures it began with. */
  readonly madeAgainFrom?: number | null;
}

export interface Project {
  readonly id: number;
  readonly title: string;
  readonly state: ProjectState;
  readonly card: Card | null;
  readonly quantity: number;
  readonly recipe: Recipe | null;
  readonly look: Look | null;
  /** Used for what is still to be made instead of the recipe's, once a trial piece has said so. */
  readonly start: Length | null;
  readonly notcher: number | null;
  readonly series: Series | null;
  readonly notes: string;
  readonly lesson: string;
  readonly createdAt: string;
  readonly changedAt: string;
  readonly finishedAt: string | null;
}

export type EnvelopeState = 'blank' | 'made' | 'spoiled';

/**
 * One envelope of a project, from its blank on. `cut` and `design` are null for a trial folded from scrap, and for one that
 * was written down without any paper of the shelf, which is no trial.
 */
export interface Envelope {
  readonly id: number;
  readonly number: number;
  readonly state: EnvelopeState;
  readonly trial: boolean;
  readonly cut: number | null;
  readonly design: number | null;
  /** The project's own start when this one was made; null is the recipe's. */
  readonly start: Length | null;
  readonly outcome: Outcome | null;
}

/** How one envelope came out; what was not noted is null. */
export interface NewOutcome {
  readonly felt?: Fit | null;
  /** Inside of the folded envelope, as the recipe names width and height. */
  readonly pocket?: Size | null;
  /** What the ruler read, with the square it was on; `twin` when measured from the other corner. */
  readonly asMade?: { readonly square: Length; readonly start: Length } | null;
  readonly twin?: boolean;
  /** How flaps were finished where that differs from the recipe. */
  readonly finishes?: Finishes | null;
  readonly wrong?: string;
  readonly savedBy?: string;
}

export interface Outcome extends Required<NewOutcome> {
  readonly at: string;
  readonly notcher: number | null;
}

/** One taking from the shelf. */
export interface CutRecord {
  readonly id: number;
  readonly project: number;
  readonly at: string;
  readonly undoneAt: string | null;
  readonly pieces: readonly RecordedPiece[];
}

/** `offcut` is what the leftover became on the shelf. */
export interface RecordedPiece extends Omit<PieceCut, 'leftovers'> {
  readonly leftovers: readonly (LeftoverCut & { readonly offcut: number })[];
}

/** How far it has come: what is missing follows from this. */
export type ProjectSoFar = Pick<ProjectInFull, 'project' | 'envelopes'>;

export interface ProjectInFull {
  readonly project: Project;
  readonly envelopes: readonly Envelope[];
  readonly cuts: readonly CutRecord[];
}
