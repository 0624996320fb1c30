/** How a thing leaves the lists and comes back: what becomes of it, said before and after, and the button. Knows no page. */
import type { FC } from 'hono/jsx';
import { type AwayKind, isDeletable, type NamedBy, type Standing } from '#shared/put-away.ts';
import { When } from './when.tsx';
import { listed } from './words.ts';

export const THING: Record<AwayKind, string> = {
  projects: 'project',
  pads: 'pad',
  designs: 'design',
  cards: 'card',
  tools: 'tool',
  series: 'series',
};

export const homeOf = ({ kind, id }: Pick<Standing, 'kind' | 'id'>): string => `${ADDRESS[kind]}/${id}`;

/** On top of its page while it is away: since when, why it is still there, and the way back. */
export const AwayNote: FC<{ standing: Standing | undefined }> = ({ standing }) =>
  standing?.at ? (
    <div class="done no-print" role="status">
      <p>
        {isDeletable(standing) ? 'Deleted' : 'Put away'} on <When at={standing.at} />: “{standing.name}” is in
        no list and no choice.
        {isDeletable(standing) ? '' : ` ${sayKept(standing)}`}
      </p>
      <div class="row">
        <BringBack
          standing={standing}
          words={isDeletable(standing) ? 'Undo, bring it back' : 'Bring it back'}
        />
        <a href="/put-away">All that is put away</a>
      </div>
    </div>
  ) : null;

/** At the end of its page: what would become of it, and the button. Nothing while it is away. */
export const PutAway: FC<{ standing: Standing | undefined }> = ({ standing }) =>
  standing && !standing.at ? (
    <details class="no-print">
      <summary>{isDeletable(standing) ? `Delete this ${THING[standing.kind]}` : 'Put it away'}</summary>
      <p>
        {isDeletable(standing)
          ? 'Nothing else names it, so it is deleted; you can undo that.'
          : `${sayNamed(standing)}, so it is put away: it leaves every list and choice, nothing is lost, and you can bring it back.`}
      </p>
      <form method="post" action="/put-away">
        <input type="hidden" name="kind" value={standing.kind} />
        <input type="hidden" name="id" value={`${standing.id}`} />
        <button type="submit" class="plain small">
          {isDeletable(standing) ? 'Delete it' : 'Put it away'}
        </button>
      </form>
    </details>
  ) : null;

export const BringBack: FC<{ standing: Standing; words: string }> = ({ standing, words }) => (
  <form method="post" action={`/put-away/${standing.kind}/${standing.id}`}>
    <input type="hidden" name="_method" value="DELETE" />
    <button type="submit" class="plain small">
      {words}
      <span class="hidden"> ({standing.name})</span>
    </button>
  </form>
);

const ADDRESS: Record<AwayKind, string> = {
  projects: '/projects',
  pads: '/pads',
  designs: '/designs',
  cards: '/tools/cards',
  tools: '/tools/notchers',
  series: '/series',
};

const NAMES: Record<NamedBy, string> = {
  ledger: 'the ledger',
  designs: 'its designs',
  offcuts: 'offcuts',
  envelopes: 'envelopes',
  plans: 'plans',
  projects: 'projects',
  outcomes: 'outcomes',
};

/** `The ledger and offcuts name it` */
function sayNamed({ namedBy }: Standing): string {
  const names = listed(namedBy.map((by) => NAMES[by]));
  const several = namedBy.length > 1 || namedBy[0] !== 'ledger';
  return `${names.charAt(0).toUpperCase()}${names.slice(1)} ${several ? 'name' : 'names'} it`;
}

const sayKept = (standing: Standing): string => `${sayNamed(standing)}, so nothing of it is lost.`;
