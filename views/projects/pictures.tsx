/** A project in pictures: the envelope with its print, and the flat sheet with every measure on it. */
import type { FC } from 'hono/jsx';
import { flatDrawing } from '#core/drawing/flat.ts';
import { foldedDrawing } from '#core/drawing/folded.ts';
import { lookDrawing } from '#core/drawing/looks.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { paperInUse, turningOf } from '#core/project/in-use.ts';
import type { Design } from '#core/stash/stash.ts';
import { Picture } from '../diagrams/picture.tsx';
import type { ProjectView } from './view.ts';

type Props = Pick<ProjectView, 'full' | 'designs' | 'units'> & { readonly recipe: Recipe };

export const Flat: FC<Pick<Props, 'recipe' | 'units'>> = ({ recipe, units }) => (
  <figure class="flat">
    {foldOf(recipe)
      .flat(recipe, turningOf(recipe))
      .map((layout, index) => (
        <Picture drawing={flatDrawing(recipe, layout, units)} id={`flat-${index}`} grows />
      ))}
    <figcaption class="quiet">The sheet as it lies on the tool, inside up.</figcaption>
  </figure>
);

/** One small front and back for each paper in use. */
export const Fronts: FC<Props> = (props) => (
  <div class="fronts">
    {papersOf(props).map((paper) => (
      <Front {...props} paper={paper} />
    ))}
  </div>
);

/** Both faces with every measure, one tap away. */
export const Folded: FC<Pick<Props, 'recipe' | 'units'>> = ({ recipe, units }) => (
  <details class="no-print">
    <summary>Folded, with the card inside</summary>
    {(['front', 'back'] as const).map((face) => (
      <Picture
        drawing={foldedDrawing(recipe, foldOf(recipe).folded(recipe), face, units)}
        id={`folded-${face}`}
        grows
      />
    ))}
  </details>
);

const Front: FC<Props & { paper: Design }> = ({ full, recipe, paper }) => {
  const used = paperInUse(full.project, recipe, paper);
  return used ? (
    <figure>
      <Picture
        drawing={lookDrawing(used.look, foldOf(recipe).folded(recipe), used.piece)}
        id={`look-${paper.id}`}
      />
      <figcaption class="quiet">{paper.name}</figcaption>
    </figure>
  ) : null;
};

const papersOf = ({ full, designs }: Props): Design[] => {
  const used = new Set(
    full.envelopes.flatMap(({ design, state }) => (design === null || state === 'spoiled' ? [] : [design])),
  );
  return [...used].slice(0, 3).flatMap((id) => designs.get(id) ?? []);
};
