/** How far a project has come, worked out from what has been done. Knows no dates and no database. */
import type { ProjectState } from './journal.ts';

interface SoFar {
  readonly hasRecipe: boolean;
  /** Cuts that were not undone. */
  readonly cuts: number;
  readonly blanks: number;
  readonly made: number;
  readonly quantity: number;
  /** The maker said that nothing more is to come. */
  readonly finished: boolean;
}

export function projectState({ hasRecipe, cuts, blanks, made, quantity, finished }: SoFar): ProjectState {
  if (finished || made >= quantity) return 'made';
  if (cuts + blanks + made > 0) return 'cut';
  return hasRecipe ? 'planned' : 'idea';
}
