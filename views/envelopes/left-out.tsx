/** What on the shelf does not become this blank, and why, in one line. Works nothing out. */
import type { FC } from 'hono/jsx';
import type { LeftOutHere } from '#core/stash/shelf-search.ts';
import { howMany, listed } from '#views/common/words.ts';
import { sayWhy } from '../common/unsuited.ts';

export const LeftOut: FC<{ leftOut: LeftOutHere }> = ({ leftOut: { sheets, offcuts } }) => {
  const whys = sheets.map(({ why, names, count }) => {
    const more = count - names.length;
    return `sheets of ${listed(more > 0 ? [...names, `${more} more`] : names)} (${sayWhy(why)})`;
  });
  const all = [...whys, ...(offcuts > 0 ? [`${howMany(offcuts, 'offcut')} (too small)`] : [])];
  return all.length === 0 ? null : <p class="quiet">Left out: {all.join('; ')}.</p>;
};
