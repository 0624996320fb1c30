/** The shelf of offcuts and the line it is searched by: at least so large, of which paper, where. */
import type { FC } from 'hono/jsx';
import type { Design, Offcut } from '#core/project/stash.ts';
import { PAPER_KINDS } from '#core/project/stash.ts';
import type { Units } from '#shared/length.ts';
import { DesignChoice } from '#views/offcuts/design-choice.tsx';
import { PutBack, Shelf } from '#views/offcuts/tile.tsx';
import { Choice, type Entry, Field, fieldNote } from '#views/parts/field.tsx';
import { howMany } from './words.ts';

export interface FoundProps {
  readonly offcuts: readonly Offcut[];
  /** One of them, or more, just went. */
  readonly went: Offcut | undefined;
  /** Anything was asked for. */
  readonly searched: boolean;
  /** The same search with the next ones shown too. */
  readonly more: string | undefined;
  readonly units: Units;
  readonly back: string;
  readonly token: string;
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
              ...places.map((place) => ({ value: place, label: place })),
            ]}
          />
        )}
        <p class="field">
          <button type="submit" class="plain">
            Search
          </button>
        </p>
      </form>
      <form class="fields" action="/stash#offcuts">
        <Field name="code" label="Code on its back" kind="count" entry={entry} />
        <p class="field">
          <button type="submit" class="plain">
            Find it
          </button>
        </p>
      </form>
    </search>
    <Found {...found} />
  </>
);

/** What a search changes. */
export const Found: FC<FoundProps> = ({ offcuts, went, searched, more, ...shelf }) => (
  <div id="found">
    {went === undefined ? null : <Went offcut={went} back={shelf.back} token={shelf.token} />}
    <p class="no-print" role="status">
      {sayFound(offcuts.length, searched, more !== undefined)}{' '}
      {searched ? (
        <a href="/stash#offcuts">Show everything</a>
      ) : (
        <a href="/offcuts/new">{offcuts.length === 0 ? 'Add the first' : 'Add more'}</a>
      )}
    </p>
    <Shelf offcuts={offcuts} {...shelf} />
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

/** Where the page comes back without script, what went and the way to put it back. */
export const Went: FC<{ offcut: Offcut; back: string; token: string }> = ({ offcut, back, token }) => (
  <div class="done">
    <a class="code" href={`/offcuts/${offcut.id}`}>
      {offcut.code}
    </a>
    <PutBack offcut={offcut} back={back} token={`${token}-back`} whole />
  </div>
);

function sayFound(count: number, searched: boolean, more: boolean): string {
  if (count === 0) return searched ? 'Nothing on the shelf is like that.' : 'No offcuts yet.';
  if (!searched) return more ? 'The newest first, drawn to one scale.' : 'Drawn to one scale.';
  return `${howMany(count, 'kind')}${more ? ' and more' : ''}, the smallest first.`;
}
