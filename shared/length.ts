/**
 * The only place where lengths are made, read and printed. A length is a whole number of 25 nm, so that 64ths and
 * thousandths of an inch and hundredths of a millimetre are all exact. Knows nothing of paper or envelopes.
 */
import { accept, type Checked, refuse } from './checked.ts';

declare const brand: unique symbol;
export type Length = number & { readonly [brand]: 'length' };

export const PER_INCH = 1_016_000;
export const PER_MILLIMETRE = 40_000;

export type Rounding = 'up' | 'down' | 'nearest';

/** How the reader wants lengths shown: inches to the nearest 1/step, or millimetres to the nearest tenth. */
export type Units = { readonly unit: 'in'; readonly step: 8 | 16 | 32 } | { readonly unit: 'mm' };

/** A length read from text; `rounded` when the text lay between two multiples of 25 nm. */
export interface ReadLength {
  readonly length: Length;
  readonly rounded: boolean;
}

/** Longer than any paper here: 10 m. */
export const LONGEST = 10_000 * PER_MILLIMETRE;
/** Paper for cards ends before this, and cards in millimetres begin about here: a bare number is asked about. */
export const HARDLY_INCHES = 50 * PER_INCH;
const UNDERSTOOD = 'Write it like 4 7/8, 4.875, 133 mm or 13,3 cm.';
const GRID_SLACK = 1e-3;
/** No length takes more to write; what is longer is refused unread. */
const LONGEST_TEXT = 40;

const WHOLE_UNITS: Record<string, number> = { in: PER_INCH, mm: PER_MILLIMETRE, cm: 10 * PER_MILLIMETRE };
const VULGAR: Record<string, string> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

/** An integer as a length. Throws on anything else: a programmer's error, since text goes through `readLength`. */
export function length(units: number): Length {
  if (!Number.isSafeInteger(units)) throw new Error(`invalid length: ${units}`);
  return units as Length;
}

/** Inches that lie on the grid, such as 4.875 or 1/64; throws where they do not. */
export const inches = (value: number): Length => onGrid(value * PER_INCH);

/** Millimetres that lie on the grid, such as 0.01; throws where they do not. */
export const millimetres = (value: number): Length => onGrid(value * PER_MILLIMETRE);

/** A computed number of 25 nm units as a length, by a named rounding. Throws on NaN and infinity. */
export const roundLength = (units: number, how: Rounding): Length => length(ROUND[how](units));

/** The multiple of `step` next to `units`, by a named rounding. */
export const roundToStep = (units: number, step: Length, how: Rounding): Length =>
  length(ROUND[how](nearWhole(units / step)) * step);

/** The length next to it that the reader's ruler shows, by a named rounding. */
export const onRuler = (one: Length, units: Units, how: Rounding): Length =>
  roundToStep(one, length(units.unit === 'in' ? PER_INCH / units.step : PER_MILLIMETRE / 10), how);

export const add = (...lengths: Length[]): Length =>
  length(lengths.reduce<number>((sum, one) => sum + one, 0));

export const subtract = (from: Length, what: Length): Length => length(from - what);

export const times = (one: Length, whole: number): Length => length(one * whole);

export const toInches = (one: number): number => one / PER_INCH;

export const toMillimetres = (one: number): number => one / PER_MILLIMETRE;

/**
 * Reads what a maker types: `4 7/8`, `4-7/8` with any dash, `4⅞`, `4.875`, `4 7/8"`, `133 mm`, `13,3 cm`. Without a
 * unit it is the reader's own. Zero is a length; a sign, two numbers, a doubtful comma or more than 40 characters are
 * refused with what would be understood.
 */
export function readLength(text: string, units: Units, field = ''): Checked<ReadLength> {
  const typed = text.trim();
  if (typed.length > LONGEST_TEXT) {
    return refuse(field, `“${shorten(typed)}” isn’t a length I can read. ${UNDERSTOOD}`);
  }
  const { body, unit } = splitUnit(normalise(typed));
  if (body === '') return refuse(field, `Type a length. ${UNDERSTOOD}`);
  if (body.startsWith('-')) return refuse(field, 'A length can’t be negative.');
  if (/^[1-9]\d{0,2}(,\d{3})+$/.test(body)) {
    return refuse(
      field,
      `“${typed}” could be read two ways. Use a point for decimals and no thousands comma.`,
    );
  }
  const amount = readAmount(body);
  if (!amount) return refuse(field, `“${typed}” isn’t a length I can read. ${UNDERSTOOD}`);
  const per = WHOLE_UNITS[unit ?? units.unit]!;
  if (amount.fraction && per !== PER_INCH) {
    return refuse(
      field,
      'Fractions are read as inches. Write millimetres with a decimal point, or add “in”.',
    );
  }
  return measure(amount, per, field);
}

/** The unit that the text names, if it names one. */
export const typedUnit = (text: string): 'in' | 'mm' | 'cm' | undefined => splitUnit(normalise(text)).unit;

/** As `readLength`, with a leading minus or plus allowed: for corrections such as a ruler's zero offset. */
export function readSignedLength(text: string, units: Units, field = ''): Checked<ReadLength> {
  const [, sign, rest] = /^\s*([-−+]?)(.*)$/s.exec(text)!;
  const read = readLength(rest!, units, field);
  if (!read.ok || sign === '' || sign === '+') return read;
  return accept({ ...read.value, length: length(0 - read.value.length) });
}

/** The number alone, as a ruler shows it: `4⅞`, `4³⁄₁₆`, `123.8`; `≈` in front where it was rounded. */
export function printNumber(one: Length, units: Units, how: Rounding = 'nearest'): string {
  const shown = onRuler(one, units, how);
  const sign = shown < 0 ? '−' : '';
  const mark = shown === one ? '' : '≈';
  const size = Math.abs(shown);
  return `${mark}${sign}${units.unit === 'in' ? printInches(size, units.step) : printTenths(size)}`;
}

/** As `printNumber`, with its unit: `4⅞″`, `123.8 mm`. */
export const printLength = (one: Length, units: Units, how: Rounding = 'nearest'): string =>
  `${printNumber(one, units, how)}${units.unit === 'in' ? '″' : ' mm'}`;

/** `5⅞ × 3″`: width first, with one sign in front where either was rounded. */
export function printSize(
  size: { width: Length; height: Length },
  units: Units,
  how: Rounding = 'nearest',
): string {
  const text = `${printNumber(size.width, units, how)} × ${printLength(size.height, units, how)}`;
  return text.includes('≈') ? `≈${text.replaceAll('≈', '')}` : text;
}

/**
 * For what is to be set or cut: all of it, whatever step the reader sees elsewhere. In inches `4³⁄₁₆″` down to 64ths,
 * else `5.602″`, else the ruler's own `119.5 mm`; in millimetres `106.3625 mm`, down to 16ths of an inch. `≈` stands
 * only before what lies on no such ruler, and that is given to a thousandth of an inch or a hundredth of a millimetre.
 */
export function printExact(one: Length, units: Units): string {
  const { number, unit } = exactly(one, units);
  return number + unit;
}

/** As `printExact`: `4³⁄₁₆ × 6″`, width first. */
export function printExactSize(size: { width: Length; height: Length }, units: Units): string {
  const [width, height] = [exactly(size.width, units), exactly(size.height, units)];
  const text = `${width.number}${width.unit === height.unit ? '' : width.unit} × ${height.number}${height.unit}`;
  return text.includes('≈') ? `≈${text.replaceAll('≈', '')}` : text;
}

/** Plain text that a field reads back as exactly this length: `4 7/8`, `60 in`, `11.20675 mm`. */
export function typedLength(one: Length, units: Units): string {
  const sign = one < 0 ? '-' : '';
  const size = Math.abs(one);
  const unit = size >= HARDLY_INCHES ? ' in' : '';
  if (units.unit === 'in' && size % (PER_INCH / 64) === 0) return sign + mixed(size, 64, ' ', '/') + unit;
  if (units.unit === 'in' && size % (PER_INCH / 1000) === 0) return `${sign}${size / PER_INCH}${unit}`;
  const millimetresText = `${sign}${trimDecimals(toMillimetres(size).toFixed(6))}`;
  return units.unit === 'in' ? `${millimetresText} mm` : millimetresText;
}

const SIXTEENTH = PER_INCH / 16;
const SIXTY_FOURTH = PER_INCH / 64;
const THOUSANDTH = PER_INCH / 1000;
const HUNDREDTH_MM = PER_MILLIMETRE / 100;

/** Without its sign first; then the sign goes in front of the digits, after any `≈`. */
function exactly(one: Length, units: Units): { number: string; unit: string } {
  const { number, unit } = units.unit === 'in' ? exactInches(Math.abs(one)) : exactMillimetres(Math.abs(one));
  return { number: one < 0 ? number.replace(/^≈?/, '$&−') : number, unit };
}

function exactInches(size: number): { number: string; unit: string } {
  if (size % SIXTY_FOURTH === 0) return { number: printInches(size, 64), unit: '″' };
  if (size % THOUSANDTH !== 0 && size % HUNDREDTH_MM === 0) return exactMillimetres(size);
  const mark = size % THOUSANDTH === 0 ? '' : '≈';
  return { number: mark + trimDecimals((size / PER_INCH).toFixed(3)), unit: '″' };
}

function exactMillimetres(size: number): { number: string; unit: string } {
  const exact = [HUNDREDTH_MM, SIXTEENTH, THOUSANDTH].some((step) => size % step === 0);
  const shown = (size / PER_MILLIMETRE).toFixed(exact ? 4 : 2);
  return { number: (exact ? '' : '≈') + trimDecimals(shown), unit: ' mm' };
}

const ROUND: Record<Rounding, (value: number) => number> = {
  up: Math.ceil,
  down: Math.floor,
  nearest: Math.round,
};

/** Undoes the last bit of a division, so that an exact multiple is not rounded up to the next one. */
const nearWhole = (value: number): number =>
  Math.abs(value - Math.round(value)) < 1e-9 ? Math.round(value) : value;

function onGrid(units: number): Length {
  const whole = Math.round(units);
  if (Math.abs(units - whole) > GRID_SLACK) throw new Error(`invalid length: ${units} is between grid lines`);
  return length(whole);
}

interface Amount {
  readonly numerator: bigint;
  readonly denominator: bigint;
  readonly fraction: boolean;
}

function normalise(text: string): string {
  return text
    .replace(
      /[\u00bc-\u00be\u2150-\u215e]|[⁰¹²³⁴-⁹]{1,4}⁄[₀-₉]{1,4}/g,
      (fraction) => ` ${fraction.normalize('NFKD')}`,
    )
    .replaceAll('⁄', '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^≈ ?/, '')
    .toLowerCase();
}

function splitUnit(text: string): { body: string; unit?: 'in' | 'mm' | 'cm' } {
  const found =
    /^(.*?) ?(mm|millimet(?:re|er)s?|cm|centimet(?:re|er)s?|in\.?|inch(?:es)?|["”“″]|′′|''|’’)$/.exec(text);
  if (!found) return { body: text };
  const name = found[2]!;
  const unit = name.startsWith('m') ? 'mm' : name.startsWith('c') ? 'cm' : 'in';
  return { body: found[1]!.trim(), unit };
}

function readAmount(body: string): Amount | undefined {
  const decimal = /^(\d{1,9})?(?:[.,](\d{0,12}))?$/.exec(body);
  if (decimal && (decimal[1] || decimal[2])) return readDecimal(decimal[1] ?? '', decimal[2] ?? '');
  const fraction = /^(?:(\d{1,9})(?: ?- ?| ))?(\d{1,4}) ?\/ ?(\d{1,4})$/.exec(body);
  if (!fraction) return undefined;
  const [whole, top, bottom] = [fraction[1] ?? '0', fraction[2]!, fraction[3]!].map(BigInt) as [
    bigint,
    bigint,
    bigint,
  ];
  if (bottom === 0n || (fraction[1] && top >= bottom)) return undefined;
  return { numerator: whole * bottom + top, denominator: bottom, fraction: true };
}

const readDecimal = (whole: string, decimals: string): Amount => ({
  numerator: BigInt(whole + decimals || '0'),
  denominator: 10n ** BigInt(decimals.length),
  fraction: false,
});

function measure(amount: Amount, per: number, field: string): Checked<ReadLength> {
  const scaled = amount.numerator * BigInt(per);
  const nearest = (2n * scaled + amount.denominator) / (2n * amount.denominator);
  if (nearest > BigInt(LONGEST)) return refuse(field, 'That is more than 10 m: longer than any paper here.');
  return accept({ length: length(Number(nearest)), rounded: nearest * amount.denominator !== scaled });
}

const shorten = (text: string): string => `${text.slice(0, LONGEST_TEXT)}…`;

function printInches(size: number, step: number): string {
  const text = mixed(size, step, ' ', '/');
  const [, whole = '', top, bottom] = /^(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(text)!;
  if (!top || !bottom) return whole;
  return whole + (VULGAR[`${top}/${bottom}`] ?? `${raised(top)}⁄${lowered(bottom)}`);
}

/** `size` in whole inches and a fraction in lowest terms; `size` lies on the grid of 1/step. */
function mixed(size: number, step: number, gap: string, bar: string): string {
  const parts = Math.round((size / PER_INCH) * step);
  const whole = Math.floor(parts / step);
  let [top, bottom] = [parts % step, step];
  if (top === 0) return `${whole}`;
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return `${whole > 0 ? whole + gap : ''}${top}${bar}${bottom}`;
}

const raised = (digits: string): string => [...digits].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]).join('');

const lowered = (digits: string): string => [...digits].map((digit) => '₀₁₂₃₄₅₆₇₈₉'[Number(digit)]).join('');

const printTenths = (size: number): string => trimDecimals((size / PER_MILLIMETRE).toFixed(1));

const trimDecimals = (text: string): string =>
  text.replace(/\.?0+$/, (zeros) => (text.includes('.') ? '' : zeros));
