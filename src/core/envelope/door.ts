/**
 * Checks what comes in to the envelope's public functions. Throws on what only a program could send; for what a
 * maker types, `checkMeasures` answers with every problem and the field it stands beside.
 */
import { accept, type Checked, type Problem } from '#shared/checked.ts';
import { LONGEST, length, PER_MILLIMETRE, printLength, type Units } from '#shared/length.ts';
import { WANTED_FITS } from '#shared/outcome.ts';
import { FRONT_LIES } from '#shared/print.ts';
import type { Card, FitLimits, Notcher, Want } from './recipe.ts';

/** A ruler further out than this is read wrongly, not made wrongly. */
const LARGEST_OFFSET = 50 * PER_MILLIMETRE;

export interface Measures {
  readonly card: Card;
  readonly notcher: Notcher;
  readonly square: number;
  readonly start: number;
}

export function assertCard(card: Card): void {
  assertBetween('card width', card.width, 1, LONGEST);
  assertBetween('card height', card.height, 1, LONGEST);
  assertBetween('card bulk', card.bulk, 0, LONGEST);
}

export function assertNotcher(notcher: Notcher): void {
  assertBetween('inset', notcher.inset, 0, LONGEST);
  assertBetween('zero offset', notcher.zeroOffset, -LARGEST_OFFSET, LARGEST_OFFSET);
  assertBetween('graduation', notcher.graduation, 1, LONGEST);
  assertBetween('largest sheet', notcher.largestSheet, 1, LONGEST);
}

export function assertLimits({ snug, easy, loose }: FitLimits): void {
  assertBetween('limit of snug', snug, 0, LONGEST);
  assertBetween('limit of easy', easy, snug, LONGEST);
  assertBetween('limit of loose', loose, easy, LONGEST);
}

export function assertWant({ fit, largestOuter = {}, front }: Want): void {
  if (fit !== undefined && !WANTED_FITS.includes(fit)) throw new Error(`invalid wanted fit: ${fit}`);
  if (front !== undefined && !FRONT_LIES.includes(front)) throw new Error(`invalid front: ${front}`);
  for (const side of [largestOuter.width, largestOuter.height]) {
    if (side !== undefined) assertBetween('largest outer size', side, 1, LONGEST);
  }
}

/** Throws unless square and start leave a pocket: the true start lies between inset and square less inset. */
export function assertMeasures({ card, notcher, square, start }: Measures): void {
  assertCard(card);
  assertNotcher(notcher);
  assertBetween('square', square, 1, LONGEST);
  const { first, last } = possibleStarts(square, notcher);
  assertBetween('start', start, first, last);
}

/** The same for measures off a chart, in the reader's words and units; a card's own fields are checked alongside. */
export function checkMeasures<T extends Measures>(measures: T, units: Units): Checked<T> {
  const problems = [...cardProblems(measures.card), ...startProblems(measures, units)];
  return problems.length === 0 ? accept(measures) : { ok: false, problems };
}

function cardProblems(card: Card): Problem[] {
  const problems: Problem[] = [];
  if (!isBetween(card.width, 1, LONGEST)) problems.push({ field: 'width', message: 'A card needs a width.' });
  if (!isBetween(card.height, 1, LONGEST))
    problems.push({ field: 'height', message: 'A card needs a height.' });
  if (!isBetween(card.bulk, 0, LONGEST))
    problems.push({ field: 'bulk', message: 'A card can’t be that thick.' });
  return problems;
}

function startProblems({ notcher, square, start }: Measures, units: Units): Problem[] {
  if (!isBetween(square, 1, LONGEST)) return [{ field: 'square', message: 'How long is the square’s side?' }];
  const { first, last } = possibleStarts(square, notcher);
  if (first > last)
    return [{ field: 'square', message: 'A square this small leaves no pocket on your tool.' }];
  if (isBetween(start, first, last)) return [];
  const [from, to] = [Math.max(0, first - 1), last + 1].map((one) => printLength(length(one), units));
  return [{ field: 'start', message: `On this square the start has to lie between ${from} and ${to}.` }];
}

/** Readings that leave at least a sliver of pocket either way. */
const possibleStarts = (square: number, { inset, zeroOffset }: Notcher): { first: number; last: number } => ({
  first: Math.max(0, inset - zeroOffset + 1),
  last: square - inset - zeroOffset - 1,
});

function assertBetween(what: string, value: number, least: number, most: number): void {
  if (!isBetween(value, least, most)) throw new Error(`invalid ${what}: ${value}`);
}

const isBetween = (value: number, least: number, most: number): boolean =>
  Number.isSafeInteger(value) && value >= least && value <= most;
