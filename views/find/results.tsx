/** All that is found, by kind, with what was asked for marked. The part that follows the keys. */
import type { FC } from 'hono/jsx';
import { excerpt, mark } from '#core/finding/mark.ts';
import type { FoundKind, Ranked } from '#core/finding/rank.ts';
import { printExactSize, typedLength } from '#shared/length.ts';
import { capital } from '../common/words.ts';
import type { FindView } from './view.ts';
import {
  addressOf,
  askAgain,
  isNarrowed,
  KIND_NAMES,
  nearOnes,
  sayAbout,
  sayFound,
  sayMeasure,
  sayMeasures,
} from './words.ts';

/** `isBelow`: under the box, on a page that is about something else. */
export const Finds: FC<{ view: FindView; isBelow: boolean }> = ({ view, isBelow }) => (
  <div id="finds" class={isBelow ? 'finds-below no-print' : undefined}>
    {isAsked(view) ? <Answer view={view} isBelow={isBelow} /> : null}
  </div>
);

const isAsked = ({ asked, query: { q, kind, more, ...filters } }: FindView): boolean =>
  asked.readings.length > 0 || Object.values(filters).some((value) => value !== undefined && value !== '');

const Answer: FC<{ view: FindView; isBelow: boolean }> = ({ view, isBelow }) => {
  const { asked, groups, units, query } = view;
  return (
    <>
      <p role="status">
        {groups.length === 0 ? 'Nothing is written down that has all of this.' : sayFound(groups)}{' '}
        <span class="quiet">{sayMeasures(asked, units)}</span>
      </p>
      {asked.notes.map((note) => (
        <p class="quiet">{note}</p>
      ))}
      {groups.length === 0 ? <Nothing view={view} /> : null}
      {groups.map((group) => (
        <Group group={group} view={view} />
      ))}
      {isBelow && groups.length > 0 ? (
        <p>
          <a href={askAgain(query)}>All of it, on a page of its own</a>
        </p>
      ) : null}
    </>
  );
};

const Group: FC<{ group: FoundKind; view: FindView }> = ({ group: { kind, finds, more }, view }) => (
  <section class="found-kind">
    <h2>{capital(KIND_NAMES[kind][1])}</h2>
    <ul>
      {finds.slice(0, view.shown).map((one) => (
        <Hit find={one} view={view} />
      ))}
    </ul>
    {more || finds.length > view.shown ? (
      <p>
        <a
          href={askAgain(view.query, {
            kind,
            more: view.kind ? finds.length : undefined,
          })}
        >
          {view.kind ? 'Show more' : `All ${KIND_NAMES[kind][1]} that match`}
        </a>
      </p>
    ) : null}
  </section>
);

const Hit: FC<{ find: Ranked; view: FindView }> = ({ find, view }) => {
  const words = view.asked.readings.flatMap((reading) => reading.words.map(({ word }) => word));
  const near = nearOnes(view, find.id);
  const offcut = find.kind === 'offcut' ? view.offcuts.get(find.belongs) : undefined;
  return (
    <li>
      <a href={addressOf(find)}>
        <Marked text={find.title} words={words} />
      </a>
      {offcut && near.length === 0 ? <span>{printExactSize(offcut, view.units)}</span> : null}
      {near.length > 0 ? <strong class="near">{near.join(', ')}</strong> : null}
      <span class="quiet">
        <Marked text={sayAbout(find, offcut?.place)} words={words} />
      </span>
      {find.text === '' ? null : (
        <p>
          <Marked text={excerpt(find.text, words)} words={words} />
        </p>
      )}
    </li>
  );
};

const Marked: FC<{ text: string; words: readonly string[] }> = ({ text, words }) => (
  <>{mark(text, words).map((one) => (one.marked ? <mark>{one.text}</mark> : one.text))}</>
);

const Nothing: FC<{ view: FindView }> = ({ view: { asked, query, units } }) => {
  const { q } = query;
  const card = asked.readings.flatMap(({ measures }) => measures).find(({ other }) => other !== null);
  return (
    <ul>
      {isNarrowed(query) && q !== '' ? (
        <li>
          <a href={askAgain({ q })}>Look everywhere</a>, without the choices it is narrowed to.
        </li>
      ) : null}
      <li>Leave a word out, or type only how it begins: every word has to be in it somewhere.</li>
      {card ? (
        <li>
          A card of that size?{' '}
          <a
            href={`/envelopes?${new URLSearchParams({ card: `${typedLength(card.length, units)} x ${typedLength(card.other!, units)}` })}`}
          >
            See which envelope fits {sayMeasure(card, units)}
          </a>
          .
        </li>
      ) : null}
    </ul>
  );
};
