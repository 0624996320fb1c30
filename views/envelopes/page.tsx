/** The envelopes page: the card in hand on top, its envelope below, which follows as she types. Works nothing out. */
import type { Child, FC } from 'hono/jsx';
import type { CardSize } from '#core/project/journal.ts';
import type { Units } from '#shared/length.ts';
import { WANTED_FITS, type WantedFit } from '#shared/outcome.ts';
import { Choice, type Entry, Field, FormProblems, fieldNote } from '../parts/field.tsx';
import { CardStrip } from '../table/table.tsx';
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
  <>
    {project && (
      <p class="done">
        This takes paper for <a href={`/projects/${project.id}`}>{project.title}</a>.
      </p>
    )}
    <section class="no-print">
      <CardStrip cards={cards} units={units} longest={entry.typed.width ? 64 : 120} />
      <StandardCards units={units} />
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
        {project && <input type="hidden" name="project" value={project.id} />}
        <div class="fields">
          <Field name="width" label="Card width" kind="length" entry={entry} autofocus={!entry.typed.width} />
          <Field name="height" label="Card height" kind="length" entry={entry} />
          <Field
            name="bulk"
            label="Its bulk"
            kind="length"
            entry={entry}
            value={bulk}
            hint="how thick it is"
          />
          <Field name="copies" label="How many" kind="count" entry={entry} value="1" />
          <FitChoice chosen={fit} />
        </div>
        <details
          open={Boolean(
            entry.typed.boxWidth || entry.typed.boxHeight || (entry.typed.front ?? 'any') !== 'any',
          )}
        >
          <summary>It has to go into something, or the print has to lie just so</summary>
          <div class="fields">
            <Field name="boxWidth" label="At most this wide" kind="length" entry={entry} hint="outside" />
            <Field
              name="boxHeight"
              label="At most this high"
              kind="length"
              entry={entry}
              hint="either alone will do"
            />
            <Choice name="front" label="Print on the front" entry={entry} choices={FRONTS} />
          </div>
          <p>
            Or start from <a href="/holders">a box, a tin, a pocket</a>, and see what goes in.
          </p>
        </details>
        <noscript>
          <button type="submit">Find its envelope</button>
        </noscript>
      </form>
    </section>
    {answer}
  </>
);

const LIVE_FIELDS = ['width', 'height', 'bulk', 'copies', 'boxWidth', 'boxHeight'] as const;

/** The notes under the fields, to follow as she types. */
export const LiveNotes: FC<{ entry: Entry }> = ({ entry }) => (
  <>{LIVE_FIELDS.map((name) => fieldNote(name, entry, HINTS[name], true))}</>
);

const FRONTS = [
  { value: 'any', label: 'as the fold lays it' },
  { value: 'across', label: 'straight, across the longer side' },
  { value: 'along', label: 'straight, along the longer side' },
  { value: 'diagonal', label: 'at 45°' },
];

const HINTS: Partial<Record<(typeof LIVE_FIELDS)[number], string>> = {
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
