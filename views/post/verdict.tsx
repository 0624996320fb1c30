/** What each post would call an envelope: the maker's own large, with why and what would change it; the rest behind. */
import type { FC } from 'hono/jsx';
import { addressDrawing } from '#core/drawing/address.ts';
import { addressPlaces } from '#core/post/address.ts';
import { classifyAll, type Posted, type Verdict } from '#core/post/classify.ts';
import type { PostId } from '#core/post/rules.ts';
import type { Units } from '#shared/length.ts';
import { Picture } from '../diagrams/picture.tsx';

interface Props {
  readonly posted: Posted;
  readonly post: PostId;
  readonly units: Units;
}

export const PostAnswer: FC<Props> = ({ posted, post, units }) => {
  const verdicts = classifyAll(posted);
  const own = verdicts.find((one) => one.post === post)!;
  return (
    <div id="post-answer" aria-live="polite" class="post">
      <div class="columns">
        <Own {...own} />
        <Address posted={posted} units={units} />
      </div>
      <details class="others">
        <summary>The other posts</summary>
        <ul class="list">
          {verdicts
            .filter((one) => one !== own)
            .map((one) => (
              <Other {...one} />
            ))}
        </ul>
      </details>
      <p class="quiet">
        {own.asOf}, from {own.source}. {own.check} Prices aren’t kept here. Your own post is set under{' '}
        <a href="/tools">Tools</a>.
      </p>
    </div>
  );
};

/** Where the answer would stand. */
export const NoPostAnswer: FC<{ message: string }> = ({ message }) => (
  <div id="post-answer" aria-live="polite" class="post">
    <p class="lead quiet">{message}</p>
  </div>
);

const Own: FC<Verdict> = ({ postName, sizeClass, isLetter, why, changes, until, notes }) => (
  <div>
    <p class="answer">
      {postName}: <strong>{sizeClass}</strong>.
    </p>
    <p class={isLetter ? 'lead' : 'lead caution'}>{why.join(' ')}</p>
    {changes.length > 0 ? (
      <>
        <h3>What would change it</h3>
        <ul>
          {changes.map((change) => (
            <li>{change}</li>
          ))}
        </ul>
      </>
    ) : null}
    {notes.map((note) => (
      <p>{note}</p>
    ))}
    {until.length > 0 ? <p class="quiet">It stays so up to a point: {until.join('; ')}.</p> : null}
  </div>
);

const Address: FC<{ posted: Posted; units: Units }> = ({ posted, units }) => {
  const places = addressPlaces(posted.size, posted.address);
  return places ? (
    <figure class="sheet">
      <Picture drawing={addressDrawing(places, units)} id="address" grows />
      <figcaption>Where the address goes ({places.source})</figcaption>
    </figure>
  ) : (
    <p>It is too small for an address that a machine could read.</p>
  );
};

const Other: FC<Verdict> = ({ postName, sizeClass, why, changes, source }) => (
  <li>
    <p>
      {postName}: <strong>{sizeClass}</strong>. {why.join(' ')} {changes.join(' ')}
    </p>
    <p class="quiet">{source}</p>
  </li>
);
