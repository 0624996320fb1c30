/** The parts of a set: all of them for one card, or one with its own measures; ticked ones go into a project's order. */
import type { Child, FC } from 'hono/jsx';
import type { DrawnPart } from '#core/drawing/part.ts';
import { type Wrapped, wrapPathDrawing } from '#core/drawing/wrap-path.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { Project } from '#core/project/journal.ts';
import { openingOf } from '#core/sets/wraps.ts';
import type { Units } from '#shared/length.ts';
import { printPocket } from '#shared/pocket.ts';
import { hasCard, PART_KINDS, type PartKind } from '#shared/schemas/parts.ts';
import { Choice, type Entry, FormProblems } from '../common/field.tsx';
import { Picture } from '../diagrams/picture.tsx';
import { LessonsHere, type LessonsShown } from '../lessons/shown.tsx';
import { SAY_CAUTION } from '../making/say.ts';
import { TemplateLinks } from '../templates/links.tsx';
import { CardFields, HowMany, OwnFields } from './fields.tsx';
import { PartShown } from './part.tsx';
import { PART_LEADS, PART_NAMES } from './words.ts';

interface PageProps {
  readonly kind?: PartKind | undefined;
  readonly entry: Entry;
  readonly units: Units;
  readonly answer: Child;
}

/** What is carried along unseen: the envelope's choices and the project. */
const CARRIED = ['project', 'fold', 'square', 'start', 'cutWidth', 'cutHeight', 'fit'] as const;

export const PartsPage: FC<PageProps> = ({ kind, entry, units, answer }) => (
  <>
    <h1>{kind ? PART_NAMES[kind] : 'The parts of a set'}</h1>
    {kind ? (
      <p class="lead">
        {PART_LEADS[kind]} <a href={`/parts?${cardQuery(entry)}`}>All parts</a>
      </p>
    ) : null}
    <form action={kind ? `/parts/${kind}` : '/parts'} method="get" class="sheet">
      <FormProblems entry={entry} fields={fieldsShown(entry)} />
      {CARRIED.map((name) =>
        entry.typed[name] ? <input type="hidden" name={name} value={entry.typed[name]} /> : null,
      )}
      {hasCard(kind) ? <CardFields entry={entry} units={units} /> : null}
      {kind ? (
        <div class="fields">
          <OwnFields kind={kind} entry={entry} units={units} />
          {hasCard(kind) ? null : <HowMany entry={entry} />}
        </div>
      ) : null}
      <button type="submit">Work it out</button>
    </form>
    {answer}
  </>
);

/** A problem beside no field of the page stands above the form. */
const fieldsShown = ({ problems }: Entry): string[] =>
  problems.map(({ field }) => field).filter((field) => field !== '');

const CARD_FIELDS = ['width', 'height', 'bulk', 'foldAt', 'copies', 'upright', ...CARRIED] as const;

const cardQuery = ({ typed }: Pick<Entry, 'typed'>): string =>
  new URLSearchParams(CARD_FIELDS.flatMap((name) => (typed[name] ? [[name, typed[name]]] : []))).toString();

interface AnswerProps {
  readonly lessons: LessonsShown;
  readonly groups: readonly { readonly kind: PartKind; readonly parts: readonly DrawnPart[] }[];
  /** Those that a part could be cut for. */
  readonly projects: readonly Project[];
  /** Of one kind alone, with the way that a strip takes. */
  readonly alone: boolean;
  readonly wrapped?: Wrapped | undefined;
  readonly envelope: Recipe | undefined;
  readonly entry: Entry;
  readonly units: Units;
}

export const PartsAnswer: FC<AnswerProps> = ({
  groups,
  projects,
  alone,
  wrapped,
  envelope,
  entry,
  units,
  lessons,
}) => {
  const numbers = new Map(groups.flatMap(({ parts }) => parts).map((part, index) => [part, index]));
  return (
    <>
      <LessonsHere {...lessons} />
      <form action="/parts/order" method="get" class="shown-in-print">
        {wrapped ? (
          <div class="columns path">
            <figure class="sheet">
              <Picture drawing={wrapPathDrawing(wrapped)} id="path" grows />
              <figcaption>The strip’s way, seen from the card’s edge</figcaption>
            </figure>
            <Opening {...openingOf(wrapped)} />
          </div>
        ) : null}
        {groups.map(({ kind, parts }) => (
          <section>
            {alone ? null : (
              <div class="spread">
                <h2>{PART_NAMES[kind]}</h2>
                <a class="no-print" href={`/parts/${kind}?${cardQuery(entry)}`}>
                  Other measures
                </a>
              </div>
            )}
            {kind === 'liner' && envelope ? <ForEnvelope {...{ envelope, entry, units }} /> : null}
            {parts.map((part) => (
              <PartShown part={part} number={numbers.get(part)!} alone={alone} units={units} />
            ))}
            {parts.every(({ material }) => material === 'ribbon') ? null : (
              <TemplateLinks at={`/templates/parts/${kind}`} query={entry.typed} />
            )}
          </section>
        ))}
        <p class="quiet">{SAY_CAUTION.blade}</p>
        <Order projects={projects} entry={entry} />
      </form>
    </>
  );
};

/** What the strip's way does to opening, before anything is glued. */
const Opening: FC<ReturnType<typeof openingOf>> = ({ tiesShut, words }) => (
  <p class={tiesShut ? 'lead caution' : 'lead'}>{words}</p>
);

/** Which envelope a liner is for. */
const ForEnvelope: FC<{ envelope: Recipe; entry: Entry; units: Units }> = ({ envelope, entry, units }) => (
  <p>
    For <a href={`/envelopes?${cardQuery(entry)}`}>the card’s envelope</a>, {envelope.fold},{' '}
    {printPocket(envelope.pocket, units)}.
  </p>
);

/** Also for what stands on its own, without a card. */
export const OtherParts: FC<{ entry: Entry; kinds?: readonly PartKind[] }> = ({
  entry,
  kinds = PART_KINDS,
}) => (
  <section class="no-print">
    <h2>{kinds === PART_KINDS ? 'One part at a time' : 'More parts'}</h2>
    <ul class="list">
      {kinds.map((kind) => (
        <li>
          <a href={`/parts/${kind}?${cardQuery(entry)}`}>{PART_NAMES[kind]}</a>{' '}
          <span class="quiet">{PART_LEADS[kind]}</span>
        </li>
      ))}
    </ul>
  </section>
);

const Order: FC<Pick<AnswerProps, 'projects' | 'entry'>> = ({ projects, entry }) =>
  projects.length === 0 ? (
    <p class="no-print">
      To have parts cut together with envelopes, <a href="/projects">write down a project</a> first.
    </p>
  ) : (
    <div class="sheet fields order no-print">
      <Choice
        name="project"
        label="Cut what is ticked for"
        entry={entry}
        value={`${projects[0]!.id}`}
        choices={projects.map(({ id, title }) => ({ value: `${id}`, label: title }))}
      />
      <div class="field">
        <span class="label">&nbsp;</span>
        <button type="submit">Add to its order</button>
      </div>
    </div>
  );
