/** Which of the projects for much the same card to begin another with, and what that other begins with. Knows no paper. */
import type { Card } from '#core/envelope/recipe.ts';
import { inches, type Length } from '#shared/length.ts';
import type { NewProject, Project, ProjectSoFar } from './journal.ts';
import { didWork, type WorkingMeasures, workingMeasures } from './working-measures.ts';

/**
 * A card counts as the same within these of it, each way: as far as a card cut again at a trimmer, or measured with a
 * ruler, may differ. More bulk than that takes another pocket.
 */
export const SAME_CARD: { readonly side: Length; readonly bulk: Length } = {
  side: inches(1 / 32),
  bulk: inches(1 / 32),
};

export interface MadeBefore {
  readonly project: Project;
  readonly working: WorkingMeasures;
  /** When it was finished, else when anything was last written about it. */
  readonly at: string;
}

/**
 * Of projects with the newest first: one that worked before one that did not, the very card before one a little off, then
 * the newest.
 */
export function chooseMadeBefore(card: Card, projects: readonly ProjectSoFar[]): MadeBefore | undefined {
  const made = projects.flatMap((one): MadeBefore[] => {
    const working = workingMeasures(one);
    const at = one.project.finishedAt ?? one.project.changedAt;
    return working && working.known !== 'worked out' ? [{ project: one.project, working, at }] : [];
  });
  const marks = ({ project, working }: MadeBefore): number =>
    (didWork(working) ? 0 : 2) + (isVeryCard(project.card!, card) ? 0 : 1);
  return made.sort((one, other) => marks(one) - marks(other))[0];
}

/** The same card again, to the measures that worked; undefined while there is no recipe. */
export function madeAgain(soFar: ProjectSoFar): NewProject | undefined {
  const working = workingMeasures(soFar);
  if (!working) return undefined;
  const { id, title, card, quantity, look, notcher } = soFar.project;
  return { title, card, quantity, look, notcher, recipe: working.recipe, madeAgainFrom: id };
}

const isVeryCard = (one: Card, other: Card): boolean =>
  one.bulk === other.bulk &&
  ((one.width === other.width && one.height === other.height) ||
    (one.width === other.height && one.height === other.width));
