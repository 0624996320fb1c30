/**
 * How what is typed into the search box is read: as words, as measures, as a code on the back of an offcut. Knows
 * nothing of what there is to be found.
 */
import { type Checked, refuse } from '#shared/checked.ts';
import { readPencilCode } from '#shared/ids.ts';
import { inches, type Length, millimetres, typedUnit, type Units } from '#shared/length.ts';
import { readSide, readSize } from '#shared/size-typed.ts';
import { wordsIn } from './fold-text.ts';
import { type Meaning, meaningOf } from './vocabulary.ts';

export interface AskedWord extends Meaning {
  /** In small letters, without accents. Anything that begins with it will do. */
  readonly word: string;
}

/** A length, or the two sides of a rectangle in either order, each no further off than `within`. */
export interface AskedMeasure {
  readonly length: Length;
  readonly other: Length | null;
  readonly within: Length;
}

/** All of these words and measures together. */
export interface Reading {
  readonly words: readonly AskedWord[];
  readonly measures: readonly AskedMeasure[];
}

export interface Asked {
  /** More than one where it can be read in several ways; none where nothing is asked. */
  readonly readings: readonly Reading[];
  readonly code: string | undefined;
  /** In the reader's words: what looked like a measure and was not read as one. */
  readonly notes: readonly string[];
}

/** What is beyond is not read. */
const LONGEST_QUERY = 200;
const MOST_WORDS = 10;
const MOST_MEASURES = 4;

const FRACTION = String.raw`(?:\d{1,4} ?[/⁄] ?\d{1,4}|[¼½¾⅐-⅞]|[⁰¹²³⁴-⁹]{1,4}⁄[₀-₉]{1,4})`;
const MIXED = String.raw`\d{1,9}(?: ?[-‐-―−] ?| )${FRACTION}|\d{1,9}[¼½¾⅐-⅞]|\d{1,9}[⁰¹²³⁴-⁹]{1,4}⁄[₀-₉]{1,4}`;
const NUMBER = String.raw`(?:${MIXED}|${FRACTION}|\d{0,9}[.,]\d{1,12}(?:,\d{3})*|\d{1,9})`;
const UNIT = String.raw`(?: ?(?:(?:mm|millimet(?:re|er)s?|cm|centimet(?:re|er)s?|in\.?|inch(?:es)?)(?![\p{L}\p{N}])|["”“″]|′′|''|’’))`;
const LENGTH = `${NUMBER}${UNIT}?`;
const MEASURE = new RegExp(
  String.raw`(?<![\p{L}\p{N}.,/⁄])${LENGTH}(?: ?(?:[x×✕*]|by(?!\p{L})) ?${LENGTH})?(?![\p{L}\p{N}/⁄]|[.,]\d)`,
  'giu',
);
const FRACTIONAL = /[/⁄¼-¾⅐-⅞]/;
/** The second side is still to come. */
const HALF_TYPED = /(?<=[\d¼-¾⅐-⅞"”″]|mm|cm|in) ?(?:[x×✕*]|by)$/iu;
const BARE = /^\d+$/;
const CODE = /^[0-9A-Z]{2,8}$/;

/**
 * Measures are told by a fraction, a decimal, a unit or an `x` between two; a bare number is a word, and where it is
 * all that was typed a measure as well. So is the name of a sheet. What is doubtful as a measure is left as words.
 */
export function readQuery(typed: string, units: Units): Asked {
  const text = [...typed]
    .slice(0, LONGEST_QUERY)
    .join('')
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(HALF_TYPED, '');
  const { measures, notes, rest } = takeMeasures(text, units);
  const words = [...new Set(wordsIn(rest))]
    .slice(0, MOST_WORDS)
    .map((word) => ({ word, ...meaningOf(word) }));
  const whole = wholeAsMeasure(text, units);
  const readings = [
    ...(whole?.ok ? [{ words: [], measures: [whole.value] }] : []),
    ...(words.length + measures.length > 0 ? [{ words, measures }] : []),
  ];
  const code = readPencilCode(text);
  return {
    readings,
    code: CODE.test(code) ? code : undefined,
    notes: [...notes, ...(whole && !whole.ok ? whole.problems.map(({ message }) => message) : [])],
  };
}

/** The step of the ruler that such a length is read on: the reader's own in inches, else 1/16 in or 1 mm. */
function rulerStep(typed: string, units: Units): Length {
  if ((typedUnit(typed) ?? unitsFor(typed, units).unit) !== 'in') return millimetres(1);
  return inches(1 / (units.unit === 'in' ? units.step : 16));
}

/** Fractions are inches, whatever the reader's own unit. */
const unitsFor = (typed: string, units: Units): Units =>
  FRACTIONAL.test(typed) && units.unit === 'mm' ? { unit: 'in', step: 16 } : units;

function takeMeasures(
  text: string,
  units: Units,
): { measures: AskedMeasure[]; notes: string[]; rest: string } {
  const measures: AskedMeasure[] = [];
  const notes: string[] = [];
  const rest = text.replace(MEASURE, (found) => {
    if (BARE.test(found) || measures.length === MOST_MEASURES) return found;
    const read = readMeasure(found, units);
    if (read.ok) measures.push(read.value);
    else notes.push(...read.problems.map(({ message }) => message));
    return read.ok ? ' ' : found;
  });
  return { measures, notes, rest };
}

function readMeasure(text: string, reader: Units): Checked<AskedMeasure> {
  const within = rulerStep(text, reader);
  const units = unitsFor(text, reader);
  if (/[x×✕*]|by/i.test(text)) {
    const both = readSize(text, units);
    return both.ok ? sides(both.value.width, both.value.height, within) : both;
  }
  const one = readSide(text, units);
  if (!one.ok) return one;
  if (one.value.length === 0) return refuse('', 'Nothing measures 0.');
  return { ok: true, value: { length: one.value.length, other: null, within } };
}

/** A bare number, or a sheet by its name; undefined where it is neither. */
function wholeAsMeasure(text: string, units: Units): Checked<AskedMeasure> | undefined {
  if (BARE.test(text)) return readMeasure(text, units);
  if (!/^(half[ -]?)?\p{L}[\p{L}\d]{1,7}$/iu.test(text)) return undefined;
  const named = readSize(text, units);
  if (named.ok) return sides(named.value.width, named.value.height, rulerStep('1 mm', units));
  return named.problems.some(({ message }) => message.startsWith('Which ')) ? named : undefined;
}

const sides = (length: Length, other: Length, within: Length): Checked<AskedMeasure> => ({
  ok: true,
  value: { length, other, within },
});
