/** Before the first envelope: a trial piece, from scrap or the first of the batch. */
import type { FC } from 'hono/jsx';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { Envelope, Project } from '#core/project/journal.ts';
import { printExact, printExactSize, type Units } from '#shared/length.ts';
import { Once } from '../common/once.tsx';

interface Props {
  readonly project: Project;
  readonly recipe: Recipe;
  /** The first blank of the batch, where there is paper for it already. */
  readonly blank: Envelope | undefined;
  readonly units: Units;
  readonly token: string;
}

export const Trial: FC<Props> = ({ project, recipe, blank, units, token }) => (
  <article id="making" class="making">
    <p class="making-heading">
      <a href={`/projects/${project.id}`}>{project.title}</a>
    </p>
    <h1 class="instruction">First a trial piece.</h1>
    <p class="how">
      Paper, tool and hands all add a little. One folded first shows whether the card goes in, while the start
      can still be changed for the rest. From scrap it has to be {sizeOf(recipe, units)}, of much the same
      thickness.
    </p>
    <div class="answers">
      <form method="post" action={`/projects/${project.id}/trials`}>
        <Once token={token} />
        <button type="submit">Make it from scrap</button>
      </form>
      {blank ? (
        <a class="button plain" href={`/projects/${project.id}/make?envelope=${blank.number}&step=1`}>
          Use the first of the batch
        </a>
      ) : (
        <a class="button plain" href={`/envelopes?project=${project.id}`}>
          Take paper for it
        </a>
      )}
    </div>
  </article>
);

const sizeOf = (recipe: Recipe, units: Units): string =>
  foldOf(recipe)
    .blanks(recipe)
    .map((blank) =>
      blank.width === blank.height
        ? `a square of ${printExact(blank.width, units)}`
        : `a piece of ${printExactSize(blank, units)}`,
    )
    .join(' and ');
