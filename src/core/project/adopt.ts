/** What becomes of a project's envelope when paper is taken for another. Knows no paper. */
import { sameMeasures } from './fitting.ts';
import type { NewProject, ProjectSoFar } from './journal.ts';
import { recipeToMake } from './working-measures.ts';

/**
 * An idea gets the envelope that paper was taken for, and as many as were cut where those are more; so does a project
 * whose square or start was chosen afresh, as many as it had. Undefined where it has this very envelope, by its recipe
 * or by what its next one is made to.
 */
export function adopted(
  soFar: ProjectSoFar,
  { title: _, ...opened }: NewProject,
): Partial<NewProject> | undefined {
  const { recipe: known, quantity } = soFar.project;
  const own = [known, recipeToMake(soFar)];
  if (own.some((one) => one && sameMeasures(one, opened.recipe!))) return undefined;
  return { ...opened, quantity: known ? quantity : Math.max(quantity, opened.quantity!) };
}
