/** One envelope for the card: the answer in a sentence, its drawings, the paper for it, and the rest one tap behind. */
import type { Child, FC } from 'hono/jsx';
import { flatDrawing } from '#core/drawing/flat.ts';
import { foldedDrawing } from '#core/drawing/folded.ts';
import type { Look } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Obstacle } from '#core/envelope/obstacle.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { PostId } from '#core/post/rules.ts';
import type { ReadyMadeJudged } from '#core/stash/ready-made.ts';
import type { Choice, LeftOutHere, Nearest } from '#core/stash/shelf-search.ts';
import type { Design, Piece } from '#core/stash/stash.ts';
import type { Way } from '#core/stash/ways.ts';
import type { Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import type { Entry } from '../common/field.tsx';
import { Picture } from '../diagrams/picture.tsx';
import { LessonsHere, type LessonsShown } from '../lessons/shown.tsx';
import { FittingOnes } from '../ready-made/list.tsx';
import { TemplateLinks } from '../templates/links.tsx';
import { FLAT_CAPTIONS } from './fold-words.ts';
import { Headline, OtherWays } from './headline.tsx';
import { Looks } from './looks.tsx';
import { Behind } from './measures.tsx';
import { measuresOf, type Query } from './query.ts';
import { Shelf } from './shelf.tsx';
import { Named } from './take.tsx';

export interface Answered {
  readonly lessons: LessonsShown;
  readonly units: Units;
  readonly post: PostId;
  /** What is said first: that the card was made before. */
  readonly note: Child;
  readonly query: Query;
  readonly entry: Entry;
  readonly recipe: Recipe;
  /** What keeps it from being made at all, and then the largest card of this shape that goes. */
  readonly obstacle: Obstacle | undefined;
  readonly alike: Size | undefined;
  /** Measures that the maker gave herself, rather than the ones found. */
  readonly tried: boolean;
  readonly others: readonly Recipe[];
  /** What the shelf has for the best envelope of each fold. */
  readonly ways: readonly Way[];
  readonly choices: readonly Choice[];
  /** For an envelope of two pieces, one for each. */
  readonly pieces: readonly Piece[];
  readonly readyMade: ReadyMadeJudged;
  /** Of the paper asked for, what does not become the blank. */
  readonly leftOut: LeftOutHere;
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
    {answered.note}
    <Headline {...answered} />
    <LessonsHere {...answered.lessons} />
    <div class="bench">
      <Named {...answered} />
      <Sheet {...answered} />
      <div class="beside-sheet">
        {answered.obstacle ? null : <Looks {...answered} />}
        <FittingOnes {...answered} />
        {answered.obstacle ? null : <Shelf {...answered} />}
      </div>
      {answered.obstacle ? null : <Folded {...answered} />}
    </div>
    {answered.obstacle ? null : <OtherWays {...answered} />}
    <TemplateLinks
      at="/templates/envelope"
      query={{ ...answered.query, ...measuresOf(answered.recipe, answered.units) }}
    />
    <Behind {...answered} />
  </section>
);

/** Where an answer would stand: what is missing for one. */
export const NoAnswer: FC<{ message: string }> = ({ message }) => (
  <section id="answer" aria-live="polite">
    <h1>{message}</h1>
  </section>
);

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
