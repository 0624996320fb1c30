/** A project's picture in the journal: its envelope's front with the print, or an empty outline until it has one. */
import type { FC } from 'hono/jsx';
import { type FrontPaper, frontDrawing } from '#core/drawing/front.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { lookInUse, printOnBlank, recipeInUse } from '#core/project/in-use.ts';
import type { Project } from '#core/project/journal.ts';
import { Picture } from '../diagrams/picture.tsx';
import type { JournalEntry } from './journal.tsx';

export const SmallFront: FC<JournalEntry> = ({ project, paper }) => {
  const recipe = recipeInUse(project);
  if (!recipe) return <IdeaMark />;
  const printed = paper && frontPaper(project, recipe, paper);
  const drawing = frontDrawing(project.title, foldOf(recipe).folded(recipe), printed);
  return <Picture drawing={drawing} id={`front-${project.id}`} />;
};

function frontPaper(
  project: Project,
  recipe: Recipe,
  { design, cut }: NonNullable<JournalEntry['paper']>,
): FrontPaper | undefined {
  const print = printOnBlank(design, cut);
  const look = lookInUse(project, recipe, { ...design, print });
  return look && { look, piece: { blank: recipe.blank, print, swatch: design.swatch } };
}

/** Nothing is known but a title. */
const IdeaMark: FC = () => (
  <svg class="d-picture idea-mark" viewBox="0 0 120 84" width="120" height="84" aria-hidden="true">
    <path d="M2 2h116v80H2z" />
  </svg>
);
