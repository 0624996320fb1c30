/** One envelope for the card: the answer in a sentence, its drawings, the paper for it, and the rest one tap behind. */
import type { FC } from 'hono/jsx';
import { flatDrawing } from '#core/drawing/flat.ts';
import { foldedDrawing } from '#core/drawing/folded.ts';
import type { Look } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import type { PostId } from '#core/post/rules.ts';
import type { FittingReadyMade } from '#core/project/ready-made.ts';
import type { Choice, Nearest } from '#core/project/search.ts';
import type { Design } from '#core/project/stash.ts';
import { printLength, printSize, type Units } from '#shared/length.ts';
import { Picture } from '../diagrams/picture.tsx';
import type { Entry } from '../parts/field.tsx';
import { SAY_FIT, sayClearance } from '../parts/fit.ts';
import { FittingOnes } from '../ready-made/list.tsx';
import { Looks } from './looks.tsx';
import { Behind } from './measures.tsx';
import type { Query } from './query.ts';
import { Shelf } from './shelf.tsx';

export interface Answered {
  readonly units: Units;
  readonly post: PostId;
  readonly query: Query;
  readonly entry: Entry;
  readonly recipe: Recipe;
  /** Measures that the maker gave herself, rather than the ones found. */
  readonly tried: boolean;
  readonly others: readonly Recipe[];
  readonly choices: readonly Choice[];
  readonly fitting: readonly FittingReadyMade[];
  readonly nearest: Nearest | null;
  /** Where nothing on the shelf will do: smaller envelopes that something there would do for. */
  readonly smaller: readonly { readonly recipe: Recipe; readonly choice: Choice }[];
  /** Whose looks are shown: the one she chose, or that of the first piece. */
  readonly design: Design | undefined;
  readonly chosen: boolean;
  readonly looks: readonly Look[];
  readonly look: Look | undefined;
  readonly copies: number;
  readonly token: string;
}

export const Answer: FC<Answered> = (answered) => (
  <section id="answer" aria-live="polite">
    <Headline {...answered} />
    <div class="bench">
      <Drawings {...answered} />
      <div>
        <FittingOnes {...answered} />
        <Shelf {...answered} />
        <Looks {...answered} />
      </div>
    </div>
    <Behind {...answered} />
  </section>
);

/** Where an answer would stand: what is missing for one. */
export const NoAnswer: FC<{ message: string }> = ({ message }) => (
  <section id="answer" aria-live="polite">
    <p class="lead quiet">{message}</p>
  </section>
);

const Headline: FC<Answered> = ({ recipe, units, tried }) => (
  <>
    <h1 class="answer">
      Square <strong>{printLength(recipe.blank.width, units)}</strong>, first notch at{' '}
      <strong>{printLength(recipe.starts[0], units)}</strong>.
    </h1>
    <p class="lead">
      {tried ? 'With these measures your' : 'Your'} {printSize(recipe.card, units)} card{' '}
      <span class="fit">{SAY_FIT[recipe.fit]}</span>: {sayClearance(recipe.clearance.width, units)} across,{' '}
      {sayClearance(recipe.clearance.height, units)} up and down.
    </p>
    <Warnings recipe={recipe} units={units} />
  </>
);

const Warnings: FC<{ recipe: Recipe; units: Units }> = ({ recipe, units }) =>
  recipe.warnings.length === 0 ? null : (
    <ul class="warnings">
      {recipe.warnings.map((warning) => (
        <li>{describeWarning(warning, units)}</li>
      ))}
    </ul>
  );

const Drawings: FC<Answered> = ({ recipe, units }) => {
  const fold = foldOf(recipe);
  const folded = fold.folded(recipe);
  return (
    <div class="drawings">
      <figure class="sheet flat">
        {fold.flat(recipe).map((layout, index) => (
          <Picture drawing={flatDrawing(recipe, layout, units)} id={`flat-${index}`} grows />
        ))}
        <figcaption>The sheet on the tool, inside up</figcaption>
      </figure>
      {(['front', 'back'] as const).map((face) => (
        <figure class="sheet">
          <Picture drawing={foldedDrawing(recipe, folded, face, units)} id={`folded-${face}`} grows />
          <figcaption>Folded, from the {face}</figcaption>
        </figure>
      ))}
    </div>
  );
};
