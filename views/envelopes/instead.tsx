/** What would do instead, in one row: other folds with what the shelf has for them, bought envelopes, other measures. */
import type { FC } from 'hono/jsx';
import { opensSheet, type Way } from '#core/stash/ways.ts';
import { howMany } from '../common/words.ts';
import { takingOf } from '../ready-made/list.tsx';
import type { Answered } from './answer.tsx';
import { SAY_WAY } from './fold-words.ts';
import { ToPlace } from './places.tsx';
import { asking, measuresOf, UNCHOSEN } from './query.ts';

export const Instead: FC<Answered> = ({
  ways,
  recipe,
  units,
  query,
  readyMade: { fitting },
  others,
  copies,
}) => (
  <nav class="instead no-print" aria-label="What would do instead">
    {ways
      .filter((way) => way.recipe.fold !== recipe.fold)
      .map((way) => (
        <span>
          Or{' '}
          <a href={asking(query, { ...UNCHOSEN, ...measuresOf(way.recipe, units) })}>
            {SAY_WAY[way.recipe.fold]}
          </a>
          {sayShelf(way.pieces)}
        </span>
      ))}
    {fitting.slice(0, 1).map(({ readyMade: bought }) => (
      <span>
        Or{' '}
        <a href={takingOf(bought, query, copies)}>
          {bought.count} {bought.name}
        </a>
        , bought.
      </span>
    ))}
    {others.length > 0 && (
      <span>
        Or{' '}
        <ToPlace query={{ ...query, from: '', show: 'others' }}>
          {howMany(others.length, 'other envelope')}
        </ToPlace>
        .
      </span>
    )}
  </nav>
);

function sayShelf(pieces: Way['pieces']): string {
  if (pieces.length === 0) return ', but nothing on the shelf will do.';
  const [{ design }] = pieces as [Way['pieces'][number]];
  return opensSheet(pieces)
    ? `, from a new sheet of ${design.name}.`
    : `, from ${design.name}: nothing opened.`;
}
