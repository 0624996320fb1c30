/** The page of all that is found: what it may be narrowed to, then the answers. Its words stand in the box in the head. */
import type { FC } from 'hono/jsx';
import { FIND_KINDS, SIZE_WORDS } from '#core/finding/vocabulary.ts';
import { FOLD_NAMES } from '#shared/fold.ts';
import { type Length, printLength, type Units } from '#shared/length.ts';
import { FITS } from '#shared/outcome.ts';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import { LONGEST_PAPER } from '#shared/size-typed.ts';
import { Finds } from './results.tsx';
import type { FindView } from './view.ts';
import { isNarrowed, KIND_NAMES } from './words.ts';

export const FindPage: FC<FindView> = (view) => (
  <div>
    <h1>{view.query.q.trim() === '' ? 'Find' : `“${view.query.q.trim()}”`}</h1>
    <Filters {...view} />
    {view.query.q.trim() === '' ? <Help /> : null}
    <Finds view={view} isBelow={false} />
  </div>
);

const Filters: FC<FindView> = ({ query, units }) => (
  <details class="find-filters no-print" open={isNarrowed({ ...query, kind: undefined })}>
    <summary>Narrow it</summary>
    <div class="row">
      <Filter name="kind" label="What" value={query.kind} none="anything" choices={KINDS} />
      <Filter name="size" label="Longer side" value={query.size} none="any" choices={sizes(units)} />
      <Filter name="fold" label="Fold" value={query.fold} none="any" choices={themselves(FOLD_NAMES)} />
      <Filter name="fit" label="Fit" value={query.fit} none="any" choices={themselves(FITS)} />
      <Filter name="paper" label="Paper" value={query.paper} none="any" choices={themselves(PAPER_KINDS)} />
      <label>
        Tag
        <input name="tag" form="finder" value={query.tag} autocomplete="off" maxlength={80} />
      </label>
      <label>
        Month
        <input type="month" name="month" form="finder" value={query.month} placeholder="2026-03" />
      </label>
      <button type="submit" form="finder" class="plain small">
        Narrow
      </button>
    </div>
  </details>
);

type Choices = readonly (readonly [value: string, words: string])[];

const themselves = (values: readonly string[]): Choices => values.map((value) => [value, value]);

const KINDS: Choices = FIND_KINDS.map((kind) => [kind, KIND_NAMES[kind][1]]);

const sizes = (units: Units): Choices =>
  SIZE_WORDS.map(({ name, over, upTo }) => [name, `${name}, ${sayLimits(over, upTo, units)}`]);

const sayLimits = (over: Length, upTo: Length, units: Units): string => {
  if (upTo >= LONGEST_PAPER) return `over ${printLength(over, units)}`;
  return over === 0
    ? `up to ${printLength(upTo, units)}`
    : `${printLength(over, units)} to ${printLength(upTo, units)}`;
};

interface FilterProps {
  readonly name: string;
  readonly label: string;
  readonly value: string | undefined;
  readonly none: string;
  readonly choices: Choices;
}

const Filter: FC<FilterProps> = ({ name, label, value, none, choices }) => (
  <label>
    {label}
    <select name={name} form="finder">
      <option value="">{none}</option>
      {choices.map(([choice, words]) => (
        <option value={choice} selected={choice === value}>
          {words}
        </option>
      ))}
    </select>
  </label>
);

const Help: FC = () => (
  <ul>
    <li>
      Words in any order, or only how they begin: <q>fern tray</q>. Accents don’t matter.
    </li>
    <li>
      A measure, as you’d read it off a ruler: <q>5 3/8</q>, <q>136.5 mm</q>, or both sides, <q>5 3/8 x 4</q>.
    </li>
    <li>
      The code on the back of an offcut: <q>K7</q>. Or what it looks like: <q>striped offcut</q>,{' '}
      <q>mini envelope</q>.
    </li>
    <li>
      The <kbd>/</kbd> key goes to the box from any page.
    </li>
  </ul>
);
