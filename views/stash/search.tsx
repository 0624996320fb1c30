/** The shelf of offcuts and the line it is searched by: at least so large, of which paper, where. */
import type { FC } from 'hono/jsx';
import type { Design } from '#core/stash/stash.ts';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import { Choice, type Entry, Field, fieldNote } from '#views/common/field.tsx';
import { howMany } from '#views/common/words.ts';
import { DesignChoice } from '#views/offcuts/design-choice.tsx';
import { Shelf, type ShelfProps } from '#views/offcuts/tile.tsx';

export interface FoundProps {
  readonly shelf: ShelfProps;
  readonly asked: 'nothing' | 'something' | 'unclear';
  /** The same search with the next ones shown too. */
  readonly more: string | undefined;
}

export interface ShelfSearchProps {
  readonly entry: Entry;
  readonly designs: readonly Design[];
  readonly places: readonly string[];
  readonly found: FoundProps;
}

export const ShelfSearch: FC<ShelfSearchProps> = ({ entry, designs, places, found }) => (
  <>
    <search class="no-print">
      <form
        class="fields"
        action="/stash#offcuts"
        hx-get="/stash"
        hx-trigger="input delay:250ms, submit"
        hx-target="#found"
        hx-replace-url="true"
        hx-sync="this:replace"
      >
        <Field name="width" label="At least" kind="length" entry={entry} hint={HINTS.width} />
        <Field name="height" label="by" kind="length" entry={entry} hint={HINTS.height} />
        <DesignChoice label="Design" entry={entry} designs={designs} none="any" />
        <Choice
          name="kind"
          label="Paper"
          entry={entry}
          choices={[
            { value: '', label: 'any' },
            ...PAPER_KINDS.map((kind) => ({ value: kind, label: kind })),
          ]}
        />
        {places.length === 0 ? null : (
          <Choice
            name="place"
            label="Place"
            entry={entry}
            choices={[
              { value: '', label: 'anywhere' },
              { value: NOWHERE, label: 'no place yet' },
              ...places.map((place) => ({ value: place, label: place })),
            ]}
          />
        )}
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
  <form class="fields no-print" action="/stash#offcuts">
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

/** What a search changes. */
export const Found: FC<FoundProps> = ({ shelf, asked, more }) => (
  <div id="found">
    <p class="no-print" role="status">
      {sayFound(shelf.offcuts.length, asked, more !== undefined)}{' '}
      {asked !== 'nothing' ? (
        <a href="/stash#offcuts">Show everything</a>
      ) : (
        <a href="/offcuts/new">{shelf.offcuts.length === 0 ? 'Add the first' : 'Add more'}</a>
      )}
    </p>
    <Shelf {...shelf} />
    {more === undefined ? null : (
      <p>
        <a class="button plain" href={more}>
          Show more
        </a>
      </p>
    )}
  </div>
);

/** The problems of a search being typed, beside their fields, out of band. */
export const FoundNotes: FC<{ entry: Entry }> = ({ entry }) => (
  <>
    {fieldNote('width', entry, HINTS.width, true)}
    {fieldNote('height', entry, HINTS.height, true)}
  </>
);

const HINTS = { width: 'wide', height: 'high, along the print' };

function sayFound(count: number, asked: FoundProps['asked'], more: boolean): string {
  if (asked === 'unclear') return 'Nothing is searched yet: a field above needs another look.';
  if (asked === 'nothing')
    return count === 0 ? 'No offcuts yet.' : `Drawn to one scale${more ? ', the newest first' : ''}.`;
  if (count === 0) return 'Nothing on the shelf is like that.';
  return `${howMany(count, 'find')}${more ? ' and more' : ''}, drawn to one scale.`;
}
