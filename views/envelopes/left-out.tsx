/** What on the shelf does not become this blank, and why, in one line. Works nothing out. */
import type { FC } from 'hono/jsx';
import type { LeftOutHere } from '#core/stash/shelf-search.ts';
import { howMany, listed } from '#views/common/words.ts';
import { sayWhy } from '../common/unsuited.ts';
import { tally } from '../plans/words.ts';

/** More names than these are only counted. */
const MOST_NAMED = 4;

export const LeftOut: FC<{ leftOut: LeftOutHere }> = ({ leftOut: { sheets, offcuts } }) => {
  const whys = [...tally(sheets.map(({ why }) => sayWhy(why))).keys()].map((why) => {
    const names = sheets.filter((one) => sayWhy(one.why) === why).map(({ piece }) => piece.design.name);
    const more = names.length - MOST_NAMED;
    const named = more > 0 ? [...names.slice(0, MOST_NAMED), `${more} more`] : names;
    return `sheets of ${listed(named)} (${why})`;
  });
  const all = [...whys, ...(offcuts > 0 ? [`${howMany(offcuts, 'offcut')} (too small)`] : [])];
  return all.length === 0 ? null : <p class="quiet">Left out: {all.join('; ')}.</p>;
};
