/** All that is put away or deleted, the last one first, each with its way back. */
import type { FC } from 'hono/jsx';
import { isDeletable, type Standing } from '#shared/put-away.ts';
import { BringBack, homeOf, THING } from '../common/away.tsx';
import { Pages, type PagesProps } from '../common/pages.tsx';
import { When } from '../common/when.tsx';

export interface AwayProps {
  readonly away: readonly Standing[];
  readonly pages: PagesProps;
}

export const AwayPage: FC<AwayProps> = ({ away, pages }) => (
  <>
    <h1>Put away</h1>
    <p class="lead">
      {away.length === 0 ? 'Nothing is put away.' : 'In no list and no choice until you bring it back.'}
    </p>
    <ul class="list">
      {away.map((one) => (
        <li class="spread">
          <span>
            <a href={homeOf(one)}>{one.name}</a>, {THING[one.kind]}{' '}
            <span class="quiet">
              {isDeletable(one) ? 'deleted' : 'put away'} on <When at={one.at!} />
            </span>
          </span>
          <BringBack standing={one} words="Bring it back" />
        </li>
      ))}
    </ul>
    <Pages {...pages} />
  </>
);

/** The tool in use can't leave. */
export const StillInUse: FC<{ id: number }> = ({ id }) => (
  <section>
    <h1>This tool is in use.</h1>
    <p class="lead">
      Every envelope is worked out for it. Choose another tool first, then put this one away.
    </p>
    <p class="row">
      <a class="button" href="/tools">
        Choose another
      </a>
      <a href={`/tools/notchers/${id}`}>Back to it</a>
    </p>
  </section>
);
