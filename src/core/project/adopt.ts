/** What becomes of a project's envelope when paper is taken for another. Knows no paper. */
import { sameMeasures } from './fitting.ts';
import type { NewProject, Project } from './journal.ts';

/**
 * An idea gets the envelope that paper was taken for, and as many as were cut where those are more; so does a project
 * whose square or start was chosen afresh, as many as it had. Undefined where it has this very envelope.
 */
export function adopted(
  { recipe: known, quantity }: Project,
  { title: _, ...opened }: NewProject,
): Partial<NewProject> | undefined {
  if (known && sameMeasures(known, opened.recipe!)) return undefined;
  return { ...opened, quantity: known ? quantity : Math.max(quantity, opened.quantity!) };
}
