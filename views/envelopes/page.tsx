/** The envelopes page: the card in hand on top, its envelope below, which follows as she types. Works nothing out. */
import type { Child, FC } from 'hono/jsx';
import type { CardSize } from '#core/project/journal.ts';
import type { Units } from '#shared/length.ts';
import { WANTED_FITS, type WantedFit } from '#shared/outcome.ts';
import { Choice, type Entry, Field, FormProblems, fieldNote } from '../common/field.tsx';
import { CardField, CardStrip, cardHint } from './card-line.tsx';
import { ShownField } from './places.tsx';
import { UNCHOSEN } from './query.ts';
import { StandardCards } from './standard.tsx';

interface Props {
  readonly units: Units;
  readonly cards: readonly CardSize[];
  readonly entry: Entry;
  readonly fit: WantedFit;
  readonly bulk: string;
  readonly project?: { readonly id: number; readonly title: string } | undefined;
  /** The answer, or what to do when there is none yet. */
  readonly answer: Child;
}

export const EnvelopesPage: FC<Props> = ({ units, cards, entry, fit, bulk, project, answer }) => (
  <div class={entry.typed.card ? 'answered' : undefined}>
    {project && (
      <p class="done">
        This takes paper for <a href={`/projects/${project.id}`}>{project.title}</a>.
      </p>
    )}
    <section class="card-line no-print">
      <CardStrip cards={cards} units={units} longest={entry.typed.card ? 56 : 120} typed={entry.typed} />
      <form
        action="/envelopes"
        method="get"
        class="sheet"
        hx-get="/envelopes"
        hx-trigger="input delay:200ms, change"
        hx-target="#answer"
        hx-swap="outerHTML"
        hx-replace-url="true"
        hx-sync="this:replace"
      >
        <FormProblems entry={entry} fields={[...LIVE_FIELDS, ...Object.keys(UNCHOSEN)]} />
        <ShownField shown={entry.typed.show ?? ''} />
        {project && <input type="hidden" name="project" value={project.id} />}
        <div class="fields">
          <CardField
            units={units}
            entry={entry}
            others={cards.length > 0}
            autofocus={!entry.typed.card && cards.length === 0}
          />
          <Field name="copies" label="How many" kind="count" entry={entry} value="1" />
        </div>
        <noscript>
          <button type="submit">Find its envelope</button>
        </noscript>
        <MoreAsked units={units} entry={entry} fit={fit} bulk={bulk} />
      </form>
    </section>
    <p id="told" class="unseen" role="status"></p>
    {answer}
  </div>
);

/** Said once for each answer as she types, and nothing else of it. */
export const Told: FC<{ answer: string }> = ({ answer }) => (
  <p id="told" hx-swap-oob="innerHTML">
    {answer}
  </p>
);

/** What is as usual until she says otherwise. */
const MoreAsked: FC<Pick<Props, 'units' | 'entry' | 'fit' | 'bulk'>> = ({ units, entry, fit, bulk }) => (
  <details open={saysMore(entry)}>
    <summary>Its bulk, its fit, where it has to go</summary>
    <div class="fields">
      <Field name="bulk" label="Its bulk" kind="length" entry={entry} value={bulk} hint={HINTS.bulk} />
      <FitChoice chosen={fit} />
      <Field name="boxWidth" label="At most this wide" kind="length" entry={entry} hint={HINTS.boxWidth} />
      <Field name="boxHeight" label="At most this high" kind="length" entry={entry} hint={HINTS.boxHeight} />
      <Choice name="front" label="Print on the front" entry={entry} choices={FRONTS} />
    </div>
    <p>
      Or start from <a href="/holders">a box, a tin, a pocket</a>, and see what goes in.
    </p>
    <StandardCards units={units} />
  </details>
);

const saysMore = ({ typed: { boxWidth, boxHeight, front = 'any' }, problems }: Entry): boolean =>
  Boolean(boxWidth || boxHeight) || front !== 'any' || problems.some(({ field }) => field in HINTS);

const LIVE_FIELDS = ['card', 'bulk', 'copies', 'boxWidth', 'boxHeight'] as const;

/** The notes under the fields, to follow as she types. */
export const LiveNotes: FC<{ entry: Entry; units: Units }> = ({ entry, units }) => (
  <>{LIVE_FIELDS.map((name) => fieldNote(name, entry, name === 'card' ? cardHint(units) : HINTS[name]))}</>
);

const FRONTS = [
  { value: 'any', label: 'as the fold lays it' },
  { value: 'across', label: 'straight, across the longer side' },
  { value: 'along', label: 'straight, along the longer side' },
  { value: 'diagonal', label: 'at 45°' },
];

const HINTS: Readonly<Record<string, string>> = {
  bulk: 'how thick it is',
  boxWidth: 'outside',
  boxHeight: 'either alone will do',
};

export const FitChoice: FC<{ chosen: WantedFit }> = ({ chosen }) => (
  <div class="field">
    <span class="label" id="fit-label">
      It should sit
    </span>
    <fieldset class="choices" aria-labelledby="fit-label">
      {WANTED_FITS.map((fit) => (
        <label>
          <input type="radio" name="fit" value={fit} checked={fit === chosen} />
          {fit}
        </label>
      ))}
    </fieldset>
  </div>
);
