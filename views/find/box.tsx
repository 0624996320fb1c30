/** The search box in the head of every page, with its answers below it as she types. Knows nothing that is found. */
import type { FC } from 'hono/jsx';

interface Props {
  /** What stands in it, on the page that answers it; elsewhere answers open below the head. */
  readonly sought: string | undefined;
}

export const FindBox: FC<Props> = ({ sought }) => (
  <>
    <search class="finder no-print">
      <form
        id="finder"
        action="/find"
        hx-get="/find"
        hx-trigger={`input changed delay:200ms from:#find-box${sought === undefined ? '' : ', change from:.find-filters'}`}
        hx-target="#finds"
        hx-sync="this:replace"
        hx-replace-url={sought === undefined ? undefined : 'true'}
      >
        <label class="out-of-sight" for="find-box">
          Find anything in this book
        </label>
        <input
          id="find-box"
          name="q"
          type="search"
          value={sought}
          placeholder="Find: hare, 5 3/8, K7"
          autocomplete="off"
          maxlength={200}
        />
        <button type="submit" class="plain small">
          Look up
        </button>
      </form>
    </search>
    {sought === undefined ? <div id="finds" class="finds-below no-print" /> : null}
  </>
);
