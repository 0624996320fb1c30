/** Links that ask the envelopes page the same question with something changed. Knows no answer. */
import type { Recipe } from '#core/envelope/recipe.ts';
import { type Length, typedLength, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';

export type Query = Readonly<Record<string, string>>;

/** The page's address with these fields set; an empty value takes the field away. */
export function asking(query: Query, changes: Query = {}): string {
  const pairs = Object.entries({ ...query, ...changes }).filter(([, value]) => value !== '');
  return `/envelopes?${new URLSearchParams(pairs)}`;
}

/** A card as the fields of a form have it; without a bulk the usual one is meant. */
export const cardFields = (
  { width, height, bulk }: Size & { readonly bulk?: Length },
  units: Units,
): { readonly width: string; readonly height: string; readonly bulk?: string } => ({
  width: typedLength(width, units),
  height: typedLength(height, units),
  ...(bulk !== undefined && { bulk: typedLength(bulk, units) }),
});

/** Both sides in one field: `4 3/8 x 6 1/8`, `148 x 105 mm`. */
export function typedSize({ width, height }: Size, units: Units): string {
  const sides = [typedLength(width, units), typedLength(height, units)];
  const unit = [' mm', ' in'].find((one) => sides.every((side) => side.endsWith(one))) ?? '';
  return `${sides[0]!.slice(0, sides[0]!.length - unit.length)} x ${sides[1]}`;
}

/** What belongs to one choice of measures and must not be carried over to another. */
export const UNCHOSEN: Query = {
  fold: '',
  cutWidth: '',
  cutHeight: '',
  square: '',
  start: '',
  cShape: '',
  cDepth: '',
  cMore: '',
  dShape: '',
  dDepth: '',
  dMore: '',
  look: '',
  chart: '',
};

/** What brings this very recipe back: a square and a start, or a fold and its blank. */
export const measuresOf = ({ fold, blank, starts }: Recipe, units: Units): Query =>
  fold === 'diagonal'
    ? { fold, square: typedLength(blank.width, units), start: typedLength(starts[0], units) }
    : { fold, cutWidth: typedLength(blank.width, units), cutHeight: typedLength(blank.height, units) };
