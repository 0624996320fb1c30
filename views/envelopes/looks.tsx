/** How the chosen paper's print can lie on the envelope: small fronts and backs, one tap picks. */
import type { FC } from 'hono/jsx';
import { lookDrawing } from '#core/drawing/looks.ts';
import { foldOf } from '#core/envelope/folds.ts';
import { placementWords } from '#core/envelope/placement.ts';
import { Picture } from '../diagrams/picture.tsx';
import type { Answered } from './answer.tsx';
import { asking } from './query.ts';

export const Looks: FC<Pick<Answered, 'recipe' | 'design' | 'looks' | 'look' | 'query'>> = ({
  recipe,
  design,
  looks,
  look,
  query,
}) => {
  if (!design || looks.length === 0) return null;
  const layout = foldOf(recipe).folded(recipe);
  const paper = {
    blank: recipe.blank,
    print: design.print,
    swatch: design.swatch,
    doubleSided: design.doubleSided,
  };
  return (
    <section id="looks">
      <h2>How {design.name} can lie</h2>
      <ul class="looks">
        {looks.map((one) => (
          <li>
            <a
              href={`${asking(query, { design: `${design.id}`, look: one.id })}#more`}
              aria-current={one.id === look?.id ? 'true' : undefined}
            >
              <Picture drawing={lookDrawing(one, layout, paper)} id={`look-${one.id}`} />
              <span>{one.words}</span>
            </a>
          </li>
        ))}
      </ul>
      {!look && (
        <p class="quiet">Until you pick one, the envelope is cut from the part without the border.</p>
      )}
      {look && <p class="quiet">On the tool: {placementWords(look.placement)}.</p>}
    </section>
  );
};
