/** The form that keeps an envelope's measures: what must be known in sight, the rest one tap behind. Knows no solver. */
import type { FC } from 'hono/jsx';
import { THIN_BULK } from '#core/envelope/fit.ts';
import type { Project } from '#core/project/journal.ts';
import type { Tool } from '#core/project/learning.ts';
import { FOLD_NAMES, type FoldName } from '#shared/fold.ts';
import { typedLength, type Units } from '#shared/length.ts';
import { FITS } from '#shared/outcome.ts';
import { Choice, type Entry, Field, FormProblems, Labelled, TextArea } from '../common/field.tsx';
import { Once } from '../common/once.tsx';

interface Props {
  /** The idea that the measures are for. */
  readonly project: Project | undefined;
  readonly tools: readonly Tool[];
  readonly today: string;
  readonly units: Units;
  readonly entry: Entry;
  readonly token: string;
}

const SEEN = ['card', 'fold', 'blank', 'start', 'came', 'day', 'felt', 'notes'];
const BEHIND = ['title', 'copies', 'bulk', 'pocket', 'tool'];
/** What the envelopes page had been asked, so that this very envelope is found again. */
const CARRIED = ['project', 'fit', 'boxWidth', 'boxHeight', 'front', 'look'].concat(
  ['c', 'd'].flatMap((flap) => [`${flap}Shape`, `${flap}Depth`, `${flap}More`]),
);

export const KeepPage: FC<Props> = ({ project, tools, today, units, entry, token }) => (
  <article>
    <h1>Keep these measures</h1>
    <p class="lead">
      {project ? <>For “{project.title}”. </> : null}No paper is taken from the shelf. What you made before
      comes first whenever the same card comes up.
    </p>
    <form method="post" action="/kept" class="sheet">
      <Once token={token} />
      {CARRIED.filter((name) => entry.typed[name]).map((name) => (
        <input type="hidden" name={name} value={entry.typed[name]} />
      ))}
      <FormProblems entry={entry} fields={[...SEEN, ...BEHIND]} />
      <Envelope entry={entry} />
      <Came entry={entry} today={today} />
      <TextArea name="notes" label="Words, if you like" entry={entry} />
      <Behind project={project} tools={tools} units={units} entry={entry} />
      <button type="submit" class="last">
        Keep them
      </button>
    </form>
  </article>
);

const FOLDS: Record<FoldName, string> = {
  diagonal: 'diagonal, from a square',
  'side-seam': 'side seams, from one rectangle',
  'two-piece': 'two pieces joined',
};

const Envelope: FC<{ entry: Entry }> = ({ entry }) => (
  <div class="fields">
    <Field name="card" label="Card, folded" kind="size" entry={entry} hint="such as 5 1/2 x 4 1/4" />
    <Choice
      name="fold"
      label="Fold"
      entry={entry}
      value="diagonal"
      choices={FOLD_NAMES.map((value) => ({ value, label: FOLDS[value] }))}
    />
    <Field
      name="blank"
      label="Square or blank"
      kind="size"
      entry={entry}
      hint="one side of a square; 8 x 10 for others"
    />
    <Field
      name="start"
      label="Start"
      kind="length"
      entry={entry}
      hint="the first notch; diagonal fold only"
    />
  </div>
);

const Came: FC<{ entry: Entry; today: string }> = ({ entry, today }) => {
  const came = entry.typed.came || 'made';
  return (
    <>
      <fieldset class="choices">
        <legend>Is it made?</legend>
        <label>
          <input type="radio" name="came" value="made" checked={came === 'made'} />I made it
        </label>
        <label>
          <input type="radio" name="came" value="not yet" checked={came === 'not yet'} />
          not yet, or I saw it elsewhere
        </label>
      </fieldset>
      <div class="if-made">
        <Labelled name="day" label="Made on" entry={entry}>
          <input
            id="day"
            name="day"
            type="date"
            max={today}
            value={entry.typed.day ?? today}
            aria-describedby="day-note"
          />
        </Labelled>
        <fieldset class="choices felt">
          <legend>How did the card sit?</legend>
          {[...FITS, ''].map((fit) => (
            <label>
              <input type="radio" name="felt" value={fit} checked={fit === (entry.typed.felt ?? '')} />
              {fit === '' ? 'not tried' : fit.replace("'", '’')}
            </label>
          ))}
        </fieldset>
      </div>
    </>
  );
};

const Behind: FC<Pick<Props, 'project' | 'tools' | 'units' | 'entry'>> = ({
  project,
  tools,
  units,
  entry,
}) => (
  <details open={entry.problems.some(({ field }) => BEHIND.includes(field))}>
    <summary>More, if you know it</summary>
    <div class="fields">
      {project ? null : (
        <Field name="title" label="What it was for" entry={entry} hint="empty: named by its card" />
      )}
      <Field name="copies" label="How many" kind="count" entry={entry} value="1" />
      <Field
        name="bulk"
        label="Card’s thickness"
        kind="length"
        entry={entry}
        value={typedLength(THIN_BULK, units)}
      />
      <Field
        name="pocket"
        label="Pocket, measured inside"
        kind="size"
        entry={entry}
        hint="width x height; teaches the tool"
      />
      <Choice
        name="tool"
        label="Made on"
        entry={entry}
        value={`${tools.find(({ chosen }) => chosen)?.id ?? ''}`}
        choices={[
          ...tools.map(({ id, name }) => ({ value: `${id}`, label: name })),
          { value: '', label: 'something else, or I don’t know' },
        ]}
      />
    </div>
  </details>
);
