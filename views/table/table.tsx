/** The start: her drawn cards to tap or a size to type; beside them what runs low and the latest projects. */
import type { FC } from 'hono/jsx';
import type { CardSize, Project } from '#core/project/journal.ts';
import type { LowList } from '#core/stash/low.ts';
import type { Units } from '#shared/length.ts';
import { CardField, CardStrip } from '#views/envelopes/card-line.tsx';
import { RunsLow } from '#views/stash/low.tsx';
import { BLANK_ENTRY } from '../common/field.tsx';
import { Once } from '../common/once.tsx';

export interface TableProps {
  readonly units: Units;
  readonly cards: readonly CardSize[];
  readonly low: LowList;
  readonly latest: readonly Project[];
  /** Nothing was ever written here: the demo is offered. */
  readonly empty: boolean;
  readonly token: string;
}

export const Table: FC<TableProps> = ({ units, cards, low, latest, empty, token }) => (
  <>
    {empty && <FirstEvening token={token} />}
    <h1>Which card is in your hand?</h1>
    <section class="card-line">
      <CardStrip cards={cards} units={units} longest={110} />
      <form
        action="/envelopes"
        method="get"
        class="sheet"
        hx-get="/made-before"
        hx-trigger="input delay:200ms"
        hx-target="#made-before"
        hx-swap="innerHTML"
        hx-sync="this:replace"
      >
        <CardField units={units} entry={BLANK_ENTRY} others={cards.length > 0} />
        <button type="submit">Find its envelope</button>
      </form>
    </section>
    <div id="made-before" aria-live="polite"></div>
    <div class="columns">
      <Latest projects={latest} />
      <RunsLow {...low} />
    </div>
  </>
);

const FirstEvening: FC<{ token: string }> = ({ token }) => (
  <section class="sheet">
    <h2>Nothing is written here yet.</h2>
    <p class="lead">
      Type a card below and you have its envelope. To see what a year of use looks like, look round the demo
      first; to begin your own, say <a href="/tools">how you measure</a> and put{' '}
      <a href="/pads/new">a pad on the shelf</a>.
    </p>
    <form action="/demo" method="post">
      <Once token={token} />
      <button type="submit" class="plain">
        Fill this book with the demo
      </button>
    </form>
  </section>
);

const Latest: FC<{ projects: readonly Project[] }> = ({ projects }) => (
  <section>
    <h2>Latest in the journal</h2>
    {projects.length === 0 ? (
      <p class="quiet">Projects appear here as soon as you take paper for one.</p>
    ) : (
      <ul class="list">
        {projects.map((project) => (
          <li class="spread">
            <a href={`/projects/${project.id}`}>{project.title}</a>
            <span class="quiet">{project.state}</span>
          </li>
        ))}
      </ul>
    )}
  </section>
);
