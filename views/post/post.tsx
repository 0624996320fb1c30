/** The post as it stands beside a recipe: one tap behind the envelope, one line in a project. Works nothing out itself. */
import type { FC } from 'hono/jsx';
import type { Recipe } from '#core/envelope/recipe.ts';
import { printPaperWeight } from '#core/paper/read.ts';
import { classify } from '#core/post/classify.ts';
import type { PostId } from '#core/post/rules.ts';
import { type Reckoned, reckonPosted } from '#core/sets/posting.ts';
import type { Design } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import { printMass, readMass } from '#shared/mass.ts';
import { massUnit } from '#shared/schemas/post.ts';
import type { Query } from '../envelopes/query.ts';
import { PostFields } from './fields.tsx';
import { askPost, postFields } from './query.ts';
import { PostAnswer } from './verdict.tsx';

interface Props {
  readonly recipe: Recipe;
  readonly design: Design | undefined;
  readonly post: PostId;
  readonly units: Units;
}

/** Behind the envelope: asked with what is reckoned of it, to be bettered by what she weighs. */
export const PostBehind: FC<Props & { query: Query }> = ({ recipe, design, post, units, query }) => {
  const weighed = readMass(query.cardMass ?? '', massUnit(units));
  const reckoned = reckonPosted(recipe, design, weighed.ok ? weighed.value : undefined);
  const fields = postFields(reckoned.posted, units);
  const verdict = classify(reckoned.posted, post);
  return (
    <section>
      <h2>
        Can it be posted? {verdict.postName}: {verdict.sizeClass}
      </h2>
      <form
        action="/post"
        method="get"
        hx-get="/post"
        hx-trigger="input delay:200ms, change"
        hx-target="#post-answer"
        hx-swap="outerHTML"
        hx-sync="this:replace"
      >
        <p>{sayReckoned(reckoned, units)}</p>
        <input type="hidden" name="width" value={fields.width} />
        <input type="hidden" name="height" value={fields.height} />
        <PostFields
          entry={{ typed: fields, problems: [] }}
          units={units}
          reckoned="weighed and measured is better"
        />
        <noscript>
          <button type="submit" class="plain">
            Ask again
          </button>
        </noscript>
      </form>
      <PostAnswer posted={reckoned.posted} post={post} units={units} />
    </section>
  );
};

/** One line in a project. */
export const PostLine: FC<Props> = ({ recipe, design, post, units }) => {
  const { posted } = reckonPosted(recipe, design);
  const { postName, sizeClass } = classify(posted, post);
  return (
    <p class="no-print">
      <a href={askPost(postFields(posted, units))}>By post</a> ({postName}), as reckoned:{' '}
      <strong>{sizeClass}</strong>.
    </p>
  );
};

function sayReckoned({ card, envelope }: Reckoned, units: Units): string {
  const inside =
    typeof card === 'number'
      ? `your card of ${printMass(card, massUnit(units))}`
      : `a folded card of ${printPaperWeight(card)} with one layer on it`;
  return `Reckoned with ${inside}, in paper of ${printPaperWeight(envelope)}.`;
}
