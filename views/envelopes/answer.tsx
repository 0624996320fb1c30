/** One envelope for the card: the answer in a sentence, the paper to take, what would do instead, and the places beside it. */
import type { Child, FC } from 'hono/jsx';
import type { Look } from '#core/envelope/fold.ts';
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
import { LessonsHere, type LessonsShown } from '../lessons/shown.tsx';
import { Headline } from './headline.tsx';
import { Instead } from './instead.tsx';
import { More } from './more.tsx';
import type { Place } from './places.tsx';
import type { Query } from './query.ts';
import { NothingFits } from './shelf.tsx';
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
  /** The one to take, then those shown of the others. */
  readonly choices: readonly Choice[];
  /** For an envelope of two pieces, one for each. */
  readonly pieces: readonly Piece[];
  readonly readyMade: ReadyMadeJudged;
  /** Where paper is looked at: what does not become the blank, how many pieces would, and which of them come first. */
  readonly shelf: ShelfShown | undefined;
  readonly shown: Place;
  readonly places: readonly Place[];
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

export interface ShelfShown {
  readonly leftOut: LeftOutHere;
  readonly count: number;
  /** The number, in the order of what they cost the shelf, of the first of the others that are shown. */
  readonly from: number;
}

export const Answer: FC<Answered> = (answered) => (
  <section id="answer">
    {answered.note}
    <Headline {...answered} />
    <div class="bench">
      <div class="told">
        <Named {...answered} />
        {!answered.obstacle && answered.choices.length === 0 && <NothingFits {...answered} />}
        <LessonsHere {...answered.lessons} />
        {answered.obstacle ? null : <Instead {...answered} />}
      </div>
      <More {...answered} />
    </div>
  </section>
);

/** Where an answer would stand: what is missing for one. */
export const NoAnswer: FC<{ message: string }> = ({ message }) => (
  <section id="answer">
    <h1>{message}</h1>
  </section>
);
