/** What stands under an answer: the drawing to work from, and the one place beside it that is gone to. Works nothing out. */
import type { FC } from 'hono/jsx';
import { flatDrawing } from '#core/drawing/flat.ts';
import { foldedDrawing } from '#core/drawing/folded.ts';
import { foldOf } from '#core/envelope/folds.ts';
import { Picture } from '../diagrams/picture.tsx';
import { PostBehind } from '../post/post.tsx';
import { FittingOnes } from '../ready-made/list.tsx';
import { SetLinks } from '../sets/links.tsx';
import type { Answered } from './answer.tsx';
import { FLAT_CAPTIONS } from './fold-words.ts';
import { Looks } from './looks.tsx';
import { Behind, EveryMeasure, OtherEnvelopes } from './measures.tsx';
import { Places } from './places.tsx';
import { Shelf } from './shelf.tsx';

/** Drawings and measures are there whatever is shown, since paper shows them all. */
export const More: FC<Answered> = (answered) => (
  <div id="more" class="more" data-shown={answered.shown}>
    <Places {...answered} />
    <Sheet {...answered} />
    <div class="place">
      <PlaceShown {...answered} />
      <EveryMeasure {...answered} />
    </div>
    {answered.obstacle ? null : <Folded {...answered} />}
  </div>
);

const PlaceShown: FC<Answered> = (answered) => {
  switch (answered.shown) {
    case 'paper':
      return (
        <>
          <Shelf {...answered} />
          <FittingOnes {...answered} />
        </>
      );
    case 'look':
      return <Looks {...answered} />;
    case 'post':
      return (
        <>
          <PostBehind {...answered} />
          <SetLinks {...answered} />
          <p>
            The other way round: <a href="/holding">what would a piece of paper hold?</a>
          </p>
        </>
      );
    case 'others':
      return <OtherEnvelopes {...answered} />;
    default:
      return <Behind {...answered} />;
  }
};

/** The drawing to work from: every measure that is set or cut stands on it. */
const Sheet: FC<Pick<Answered, 'recipe' | 'units'>> = ({ recipe, units }) => (
  <figure class="sheet flat">
    {foldOf(recipe)
      .flat(recipe)
      .map((layout, index) => (
        <Picture drawing={flatDrawing(recipe, layout, units)} id={`flat-${index}`} grows />
      ))}
    <figcaption>{FLAT_CAPTIONS[recipe.fold]}</figcaption>
  </figure>
);

const Folded: FC<Pick<Answered, 'recipe' | 'units'>> = ({ recipe, units }) => {
  const folded = foldOf(recipe).folded(recipe);
  return (
    <div class="folded">
      {(['front', 'back'] as const).map((face) => (
        <figure class="sheet">
          <Picture drawing={foldedDrawing(recipe, folded, face, units)} id={`folded-${face}`} grows />
          <figcaption>Folded, from the {face}</figcaption>
        </figure>
      ))}
    </div>
  );
};
