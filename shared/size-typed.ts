/**
 * Reads a side, or both sides at once, as a maker says them: `4 3/8 x 6 1/8`, `148 x 105 mm`, `A6`. Asks where what was
 * typed is hardly what was meant. Knows no form, and not what the rectangle is.
 */
import { accept, type Checked, refuse } from './checked.ts';
import {
  HARDLY_INCHES,
  inches,
  printLength,
  printSize,
  type ReadLength,
  readLength,
  typedLength,
  typedUnit,
  type Units,
} from './length.ts';
import { cardOfEnvelope, type NamedSize, namedSheet } from './sheet-names.ts';
import type { Size } from './size.ts';

/** The first side typed is the width; `rounded` where either lay between two multiples of 25 nm. */
export interface ReadSize extends Size {
  readonly rounded: boolean;
  /** As the sheet is called, where a name was typed; its shorter side is then the width. */
  readonly name?: string;
}

/** No sheet, card or tool on a table is longer than this. */
export const LONGEST_PAPER = inches(100);

const LONGEST_TEXT = 80;
const BETWEEN = /[x×✕*]|by/i;
const EXAMPLES = 'Write both sides, like 4 3/8 x 6 1/8, 148 x 105 mm or A6.';
const INCHES: Units = { unit: 'in', step: 32 };
const MILLIMETRES: Units = { unit: 'mm' };

/**
 * Both sides typed in one field: a width and a height above zero, in the order typed. A side without a unit takes the
 * other's, or else the reader's. A name is read by ISO 216, ISO 269 or as a North American sheet; where it is also the
 * name of a North American envelope and the reader works in inches it is asked about, A6 apart. Refused with all
 * problems at once, in the reader's words, each belonging to `field`.
 */
export function readSize(text: string, units: Units, field = ''): Checked<ReadSize> {
  const typed = text.trim().replace(/\s+/g, ' ');
  if (typed === '') return refuse(field, `Type the size. ${EXAMPLES}`);
  if (typed.length > LONGEST_TEXT) return refuse(field, `That is too long for a size. ${EXAMPLES}`);
  return readName(typed, units, field) ?? readSides(typed, units, field);
}

/**
 * One side, as `readLength` reads it; but a bare number that is hardly inches is asked about, and where a name or both
 * sides were typed, the reader is told what each side is.
 */
export function readSide(text: string, units: Units, field = ''): Checked<ReadLength> {
  if (areHardlyInches([text], units)) return refuse(field, askUnit(text.trim()));
  const read = readLength(text, units, field);
  if (read.ok) return read;
  const both = readSize(text, units, field);
  if (both.ok) return refuse(field, tellSides(both.value, units));
  const name = readName(text, units, field);
  return name && !name.ok ? name : read;
}

function readName(typed: string, units: Units, field: string): Checked<ReadSize> | undefined {
  const sheet = namedSheet(typed);
  const card = cardOfEnvelope(typed);
  if (card && (!sheet || (units.unit === 'in' && sheet.name !== 'A6'))) {
    return refuse(field, askWhich(card, sheet));
  }
  return sheet && accept({ ...sheet, rounded: false });
}

function askWhich(card: NamedSize, sheet: NamedSize | undefined): string {
  const forCard = `the card for an ${card.name} envelope is ${printSize(card, INCHES)}`;
  const forSheet = sheet ? `, an ${sheet.name} sheet ${printSize(sheet, MILLIMETRES)}` : '';
  return `Which ${card.name}? In North America ${forCard}${forSheet}. Type the sides that you mean.`;
}

function tellSides(whole: ReadSize, units: Units): string {
  const called = whole.name ? `${whole.name} has two sides` : 'Those are both sides';
  const [width, height] = [typedLength(whole.width, units), typedLength(whole.height, units)];
  return `${called}. Type ${width} for one side and ${height} for the other, each in a field of its own.`;
}

function readSides(typed: string, units: Units, field: string): Checked<ReadSize> {
  const sides = typed.split(BETWEEN, 3).map((side) => side.trim());
  if (sides.length === 1) return refuse(field, `That is one side only. ${EXAMPLES}`);
  if (sides.length > 2) return refuse(field, `Those are more than two sides. ${EXAMPLES}`);
  if (areHardlyInches(sides, units)) return refuse(field, askUnit(typed));
  const [first, second] = sides as [string, string];
  const width = readOne(withUnitOf(second, first), units, field, 'First side');
  const height = readOne(withUnitOf(first, second), units, field, 'Second side');
  if (width.ok && height.ok) {
    const rounded = width.value.rounded || height.value.rounded;
    return accept({ width: width.value.length, height: height.value.length, rounded });
  }
  return { ok: false, problems: [width, height].flatMap((side) => (side.ok ? [] : side.problems)) };
}

function readOne(side: string, units: Units, field: string, which: string): Checked<ReadLength> {
  const read = readLength(side, units, field);
  if (!read.ok) return refuse(field, `${which}: ${read.problems[0]!.message}`);
  if (read.value.length <= 0) return refuse(field, `${which}: this has to be more than zero.`);
  if (read.value.length <= LONGEST_PAPER) return read;
  return refuse(field, `${which}: that is more than ${printLength(LONGEST_PAPER, units)}.`);
}

/** `side` with the unit of the other one, where it names none itself. */
const withUnitOf = (other: string, side: string): string =>
  typedUnit(side) ? side : `${side} ${typedUnit(other) ?? ''}`;

/** Whether bare numbers, read as inches, come out longer than paper for cards, so that millimetres are likelier. */
const areHardlyInches = (sides: readonly string[], units: Units): boolean =>
  units.unit === 'in' &&
  sides.every((side) => /^[\s\d.,]{1,20}$/.test(side)) &&
  sides.some((side) => {
    const read = readLength(side, units);
    return read.ok && read.value.length >= HARDLY_INCHES;
  });

const askUnit = (typed: string): string =>
  `${typed} inches? Type ${typed} mm if you mean millimetres, or ${typed} in if you do mean inches.`;
