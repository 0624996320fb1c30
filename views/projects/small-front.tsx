/** A project's picture in the journal: its envelope's front with the print, or an empty outline until it has one. */
import type { FC } from 'hono/jsx';
import { frontDrawing } from '#core/drawing/front.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { paperInUse } from '#core/project/in-use.ts';
import type { Project } from '#core/project/journal.ts';
import type { Design } from '#core/stash/stash.ts';
import { Picture } from '../diagrams/picture.tsx';

interface Props {
  readonly project: Pick<Project, 'id' | 'title' | 'look'>;
  /** Undefined until its envelope is worked out. */
  readonly recipe: Recipe | undefined;
  readonly design: Design | undefined;
}

export const SmallFront: FC<Props> = ({ project, recipe, design }) => {
  if (!recipe) return <IdeaMark />;
  const paper = design && paperInUse(project, recipe, design);
  const drawing = frontDrawing(project.title, foldOf(recipe).folded(recipe), paper);
  return <Picture drawing={drawing} id={`front-${project.id}`} />;
};

/** Nothing is known but a title. */
const IdeaMark: FC = () => (
  <svg class="d-picture idea-mark" viewBox="0 0 120 84" width="120" height="84" aria-hidden="true">
    <path d="M2 2h116v80H2z" />
  </svg>
);
