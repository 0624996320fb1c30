/**
 * Sizes that go by a name: ISO 216 sheets (A, B), ISO 269 envelopes (C, DL), North American office sheets, and the
 * North American envelopes whose names mean something else there. Knows no form.
 */
import { inches, millimetres } from './length.ts';
import type { Size } from './size.ts';

export interface NamedSize extends Size {
  /** As it is written, such as `A6` or `half Letter`. */
  readonly name: string;
}

const inMillimetres = (name: string, width: number, height: number): NamedSize => ({
  name,
  width: millimetres(width),
  height: millimetres(height),
});

const inInches = (name: string, width: number, height: number): NamedSize => ({
  name,
  width: inches(width),
  height: inches(height),
});

/** The shorter side first, as the standards have it. */
const SHEETS = [
  inMillimetres('A3', 297, 420),
  inMillimetres('A4', 210, 297),
  inMillimetres('A5', 148, 210),
  inMillimetres('A6', 105, 148),
  inMillimetres('A7', 74, 105),
  inMillimetres('A8', 52, 74),
  inMillimetres('B4', 250, 353),
  inMillimetres('B5', 176, 250),
  inMillimetres('B6', 125, 176),
  inMillimetres('C4', 229, 324),
  inMillimetres('C5', 162, 229),
  inMillimetres('C6', 114, 162),
  inMillimetres('C7', 81, 114),
  inMillimetres('DL', 110, 220),
  inInches('Letter', 8.5, 11),
  inInches('half Letter', 5.5, 8.5),
  inInches('Legal', 8.5, 14),
  inInches('Tabloid', 11, 17),
];

/** The card that goes into the North American envelope of this name (makers' published size charts). */
const CARDS_OF_ENVELOPES = [
  inInches('A1', 3.5, 4.875),
  inInches('A2', 4.25, 5.5),
  inInches('A6', 4.5, 6.25),
  inInches('A7', 5, 7),
  inInches('A8', 5.25, 7.875),
  inInches('A9', 5.5, 8.5),
  inInches('A10', 5.75, 9.25),
];

/** The sheet or envelope of this name, in any case and spacing; undefined where the text is no such name. */
export const namedSheet = (text: string): NamedSize | undefined => named(SHEETS, text);

/** The card meant where this name is that of a North American envelope. */
export const cardOfEnvelope = (text: string): NamedSize | undefined => named(CARDS_OF_ENVELOPES, text);

function named(sizes: readonly NamedSize[], text: string): NamedSize | undefined {
  const asked = plain(text);
  return sizes.find(({ name }) => plain(name) === asked);
}

const plain = (text: string): string => text.toLowerCase().replace(/[\s-]/g, '');
