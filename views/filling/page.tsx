/** What one piece is to be filled with, and the answer above it. Works nothing out. */
import type { Child, FC } from 'hono/jsx';
import type { Offer, Offers } from '#core/batch/filling.ts';
import type { Piece } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { isFilled } from '#shared/schemas/filling.ts';
import { partsIn } from '#shared/schemas/plan.ts';
import { listed } from '#views/common/words.ts';
import { Choice, type Entry, Field, FormProblems } from '../common/field.tsx';
import { fullName, sayAsIs } from '../stash/words.ts';
import { sayThing } from './words.ts';

interface Props {
  readonly piece: Piece;
  readonly offers: Offers;
  readonly entry: Entry;
  readonly units: Units;
  readonly answer: Child;
}

export const FillingPage: FC<Props> = ({ piece, offers, entry, units, answer }) => {
  const { design, offcut } = piece;
  const rows = rowsOf(entry);
  const asIs = sayAsIs(design.pad, units);
  return (
    <article class="filling">
      <p>
        {offcut ? <a href={`/offcuts/${offcut.id}`}>{fullName(design)}</a> : null}
        {offcut ? null : <a href={`/designs/${design.id}`}>{fullName(design)}</a>}
      </p>
      <h1>
        What can I get out of {offcut ? <span class="code">{offcut.code}</span> : `a sheet of ${design.name}`}
        ?
      </h1>
      {offcut || asIs === undefined ? null : <p>{asIs}</p>}
      {piece.count === 0 ? <p class="lead">None of it is on the shelf any more.</p> : null}
      {answer}
      <form action="/filling" method="get" class="sheet no-print">
        <h2>{answer ? 'Fill it otherwise' : 'Fill it with'}</h2>
        <FormProblems entry={entry} fields={fieldsOf(offers.offers, rows)} />
        {offcut ? <input type="hidden" name="offcut" value={offcut.id} /> : null}
        {offcut ? null : <input type="hidden" name="design" value={design.id} />}
        <Goal chosen={entry.typed.goal ?? 'area'} />
        <Own
          {...{ offers: offers.offers, entry, units }}
          of="envelope"
          heading="Envelopes for my cards"
          open
        />
        <Own {...{ offers: offers.offers, entry, units }} of="card" heading="My cards, flat" />
        {offers.tooLarge.length > 0 ? (
          <p class="quiet">Too large for it: {listed(offers.tooLarge.map(({ name }) => name))}.</p>
        ) : null}
        <Typed rows={rows} entry={entry} open={offers.offers.length === 0} />
        <p class="press">
          <button type="submit">See what comes out</button>
        </p>
      </form>
    </article>
  );
};

const Goal: FC<{ chosen: string }> = ({ chosen }) => (
  <fieldset>
    <legend>Get out</legend>
    <div class="choices">
      {GOALS.map(([value, words]) => (
        <label>
          <input type="radio" name="goal" value={value} checked={chosen === value} />
          {words}
        </label>
      ))}
    </div>
    <p class="hint wish">Say how dear each thing is to you, from 1 to 9; left empty it counts as 1.</p>
    <p class="hint">Where “at most” stays empty, as many as come out.</p>
  </fieldset>
);

const GOALS = [
  ['area', 'as much of the paper as I can'],
  ['count', 'as many pieces as I can'],
  ['wish', 'what I wish for most'],
] as const;

interface OwnProps {
  readonly offers: readonly Offer[];
  readonly of: Offer['of'];
  readonly heading: string;
  readonly entry: Entry;
  readonly units: Units;
  readonly open?: boolean;
}

const Own: FC<OwnProps> = ({ offers, of, heading, entry, units, open = false }) => {
  const mine = offers.filter((one) => one.of === of);
  const ticked = mine.some(({ id }) => entry.typed[id] === 'on');
  return mine.length === 0 ? null : (
    <details open={open || ticked}>
      <summary>{heading}</summary>
      <ul class="own">
        {mine.map((offer) => (
          <li>
            <label>
              <input type="checkbox" name={offer.id} checked={entry.typed[offer.id] === 'on'} />
              {offer.name} <small>{printExactSize(offer, units)}</small>
            </label>
            {/* biome-ignore lint/a11y/useSemanticElements: the fields of one tick need no box of their own */}
            <div class="fields more" role="group" aria-label={sayThing(offer, 2)}>
              <Amounts name={offer.id} entry={entry} />
            </div>
          </li>
        ))}
      </ul>
    </details>
  );
};

const Amounts: FC<{ name: string; entry: Entry }> = ({ name, entry }) => (
  <>
    <Field name={`${name}.most`} label="At most" kind="count" entry={entry} />
    <div class="wish">
      <Field name={`${name}.wish`} label="Wish" kind="count" entry={entry} />
    </div>
  </>
);

const Typed: FC<{ rows: readonly number[]; entry: Entry; open: boolean }> = ({ rows, entry, open }) => (
  <details open={open || rows.some((row) => isFilled(entry.typed, row))}>
    <summary>Something else</summary>
    {rows.map((row, index) => (
      <fieldset class="part">
        <legend class="hidden">Part {index + 1}</legend>
        <div class="fields">
          <Field name={`parts.${row}.name`} label="Part" entry={entry} />
          <Field name={`parts.${row}.width`} label="Width" kind="length" entry={entry} />
          <Field name={`parts.${row}.height`} label="Height" kind="length" entry={entry} />
          <Amounts name={`parts.${row}`} entry={entry} />
          <Choice name={`parts.${row}.print`} label="Print" entry={entry} choices={PRINTS} />
        </div>
      </fieldset>
    ))}
  </details>
);

const PRINTS = [
  { value: 'any way', label: 'may lie any way' },
  { value: 'upright', label: 'height along the print' },
];

const FEWEST_ROWS = 3;

/** Those filled in, and always one to spare; never fewer than three. */
function rowsOf({ typed }: Entry): number[] {
  const filled = partsIn(typed).filter((row) => isFilled(typed, row));
  const next = (filled.at(-1) ?? -1) + 1;
  const spare = Math.max(1, FEWEST_ROWS - filled.length);
  return [...filled, ...Array.from({ length: spare }, (_, index) => next + index)];
}

const fieldsOf = (offers: readonly Offer[], rows: readonly number[]): string[] => [
  ...offers.flatMap(({ id }) => ['most', 'wish'].map((field) => `${id}.${field}`)),
  ...rows.flatMap((row) =>
    ['name', 'width', 'height', 'most', 'wish', 'print'].map((field) => `parts.${row}.${field}`),
  ),
];
