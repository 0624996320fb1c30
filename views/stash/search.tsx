/** The shelf of offcuts and the line it is searched by: at least so large, of which paper, where, in which order. */
import type { FC } from 'hono/jsx';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import { SHELF_ORDERS, type ShelfOrder } from '#shared/shelf-order.ts';
import { Choice, type Entry, Field, fieldNote } from '#views/common/field.tsx';
import { howMany } from '#views/common/words.ts';
import { DesignChoice } from '#views/offcuts/design-choice.tsx';
import { Shelf, type ShelfProps } from '#views/offcuts/tile.tsx';
import { OffcutRows } from './rows.tsx';

export interface FoundProps {
  readonly shelf: ShelfProps;
  readonly asked: 'nothing' | 'something' | 'unclear';
  /** How many are passed over, and how many there are; no more than `countedAtMost` are counted. */
  readonly from: number;
  readonly counted: number;
  readonly countedAtMost: number;
  readonly view: 'list' | 'pictures';
  /** The same search with those before, those after, and as the other view. */
  readonly back: string | undefined;
  readonly next: string | undefined;
  readonly otherView: string;
}

export interface ShelfSearchProps {
  readonly entry: Entry;
  readonly designs: readonly string[];
  readonly places: readonly string[];
  readonly found: FoundProps;
}

export const ShelfSearch: FC<ShelfSearchProps> = ({ entry, designs, places, found }) => (
  <>
    <search class="stays no-print">
      <form
        class="fields"
        action="/stash"
        hx-get="/stash"
        hx-trigger="input delay:250ms, submit"
        hx-target="#found"
        hx-replace-url="true"
        hx-sync="this:replace"
      >
        {found.view === 'list' ? <input type="hidden" name="view" value="list" /> : null}
        <Field name="width" label="At least" kind="length" entry={entry} hint={HINTS.width} />
        <Field name="height" label="by" kind="length" entry={entry} hint={HINTS.height} />
        <DesignChoice label="Design" entry={entry} likely={designs} placeholder="any" />
        <Choice name="sort" label="In order" entry={entry} value="" choices={ORDERS} />
        <details open={['kind', 'place'].some((name) => (entry.typed[name] ?? '') !== '')}>
          <summary>Kind and place</summary>
          <div class="fields">
            <Choice
              name="kind"
              label="Paper"
              entry={entry}
              choices={[
                { value: '', label: 'any' },
                ...PAPER_KINDS.map((kind) => ({ value: kind, label: kind })),
              ]}
            />
            <Field
              name="place"
              label="Place"
              entry={entry}
              placeholder="anywhere"
              hint={HINTS.place}
              likely={{ from: '/likely/places', first: places }}
            />
          </div>
        </details>
        <p class="field press">
          <button type="submit" class="plain">
            Search
          </button>
        </p>
      </form>
    </search>
    <Found {...found} />
  </>
);

/** For the piece in her hand. */
export const CodeSearch: FC<{ entry: Entry }> = ({ entry }) => (
  <form class="fields no-print" action="/stash">
    <Field name="code" label="Code on its back" kind="code" entry={entry} />
    <p class="field press">
      <button type="submit" class="plain">
        Find it
      </button>
    </p>
  </form>
);

/** Stands for no place in an address, where an empty word asks for any. */
export const NOWHERE = '—';

const SAY_ORDER: Record<ShelfOrder, string> = {
  newest: 'newest first',
  largest: 'largest first',
  smallest: 'smallest first',
  place: 'by place',
  design: 'by design',
};

/** Nothing chosen is the order that suits what is asked. */
const ORDERS = [
  { value: '', label: 'as suits' },
  ...SHELF_ORDERS.map((order) => ({ value: order, label: SAY_ORDER[order] })),
];

/** What a search changes. */
export const Found: FC<FoundProps> = (props) => {
  const { shelf, asked, view, otherView } = props;
  return (
    <div id="found">
      <p class="no-print spread">
        <span role="status">{sayFound(props)}</span>
        <span>
          {asked !== 'nothing' ? (
            <a href="/stash">Show everything</a>
          ) : (
            <a href="/offcuts/new">{shelf.alike.length === 0 ? 'Add the first' : 'Add more'}</a>
          )}
          {shelf.alike.length > 0 ? (
            <>
              {' · '}
              <a href={otherView}>{view === 'list' ? 'As pictures' : 'As a list'}</a>
            </>
          ) : null}
        </span>
      </p>
      {view === 'list' ? <OffcutRows {...shelf} /> : <Shelf {...shelf} />}
      <Paging {...props} />
    </div>
  );
};

const Paging: FC<FoundProps> = ({ back, next }) =>
  back === undefined && next === undefined ? null : (
    <nav class="row no-print" aria-label="Pages of the shelf">
      {back === undefined ? null : (
        <a class="button plain" href={back} rel="prev">
          Those before
        </a>
      )}
      {next === undefined ? null : (
        <a class="button plain" href={next} rel="next">
          Those after
        </a>
      )}
    </nav>
  );

/** The problems of a search being typed, beside their fields, out of band. */
export const FoundNotes: FC<{ entry: Entry }> = ({ entry }) => (
  <>{(['width', 'height', 'design', 'place'] as const).map((name) => fieldNote(name, entry, HINTS[name]))}</>
);

const HINTS = {
  width: 'wide',
  height: 'high, along the print',
  design: '',
  place: '“—” finds what has none',
};

function sayFound({ shelf, asked, from, counted, countedAtMost, view }: FoundProps): string {
  if (asked === 'unclear') return 'Nothing is searched yet: a field above needs another look.';
  const shown = shelf.alike.length;
  if (shown === 0) {
    if (from > 0) return 'There are no more.';
    return asked === 'nothing' ? 'No offcuts yet.' : 'Nothing on the shelf is like that.';
  }
  const all =
    counted < countedAtMost
      ? howMany(counted, 'kind of offcut', 'kinds of offcut')
      : `more than ${countedAtMost.toLocaleString('en')}`;
  const part = shown < counted ? `${from + 1}–${from + shown} of ${all}` : all;
  return `${part}${view === 'list' ? '' : ', drawn to one scale'}.`;
}
