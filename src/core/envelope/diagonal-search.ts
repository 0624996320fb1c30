/**
 * Finds squares and starts on the ruler's graduation that suit a card, folded diagonally. Looks close round the ideal
 * pocket on the finest step and on a coarser one that is easier to set, or, under a limit on the outer size, at every
 * pocket from the card's own size up. Knows ranking by its result only.
 */
import { add, inches, type Length, roundToStep, times } from '#shared/length.ts';
import { goesFreely, idealClearance } from './fit.ts';
import type { Question } from './fold.ts';
import { fitLying, isPocket, type Pocketed } from './pocket.ts';
import { beyondOuter, byRank, EASY, rankOf } from './ranking.ts';
import type { Notcher } from './recipe.ts';
import { squareFor, startFor } from './square.ts';

const HANDFUL = 12;
const FINEST_OFFERED = 4;
const COARSE_STEP = inches(1 / 8);
/** Where a whole grid is searched, it is no finer than this, however fine the ruler. */
const GRID_STEP = inches(1 / 64);
const LOOSEST_SEARCHED = inches(1);

/**
 * Best first, at most a dozen, no two with the same square and start. Where some keep to the limit on the
 * outer size, or the card goes freely into some, the others are left out. Empty only where the ruler has no mark for any start.
 */
export function findMeasures(question: Question): Pocketed[] {
  const { graduation } = question.notcher;
  if (question.want.largestOuter) return ranked(question, wholeGrid(question)).slice(0, HANDFUL);
  const finest = ranked(question, near(question, graduation));
  const coarse = ranked(question, near(question, coarserStep(graduation)));
  const kept = [...finest.slice(0, FINEST_OFFERED), ...coarse.slice(0, HANDFUL - FINEST_OFFERED)];
  return ranked(question, kept);
}

function ranked(question: Question, measures: readonly Pocketed[]): Pocketed[] {
  const once = new Map(measures.map((one) => [`${one.square} ${one.start}`, one]));
  const all = [...once.values()];
  const within = preferring(all, ({ pocket }) => beyondOuter(pocket, question.want) === 0);
  return preferring(within, ({ fit }) => goesFreely(fit))
    .map((one) => ({
      one,
      rank: rankOf({ ...one, ...DIAGONAL, blank: { width: one.square, height: one.square } }, question),
    }))
    .sort((a, b) => byRank(a.rank, b.rank))
    .map(({ one }) => one);
}

const DIAGONAL = { fold: 'diagonal', front: 'diagonal' } as const;

const preferring = <T>(all: readonly T[], test: (one: T) => boolean): readonly T[] =>
  all.some(test) ? all.filter(test) : all;

/** The graduation doubled while it stays within 1/8 in. */
const coarserStep = (graduation: Length): Length =>
  graduation * 2 > COARSE_STEP ? graduation : coarserStep(times(graduation, 2));

/** Squares from two steps under to three over the one needed, each with the starts about its ideal one. */
function near(question: Question, step: Length): Pocketed[] {
  const { card, notcher, want, limits } = question;
  const room = card.bulk + idealClearance(want.fit ?? EASY, limits);
  const needed = squareFor(card.width + room, card.height + room, notcher.inset);
  const ideal = startFor(card.height + room, notcher.inset) - notcher.zeroOffset;
  const first = roundToStep(needed, step, 'up');
  const squares = [-2, -1, 0, 1, 2, 3].map((steps) => add(first, times(step, steps)));
  return withToolsLargest(squares, notcher).flatMap((square) => {
    const start = roundToStep(ideal + (square - needed) / 2, step, 'nearest');
    const starts = [-1, 0, 1].map((steps) => add(start, times(step, steps)));
    return onSquare(question, square, starts);
  });
}

/** When the tool ends among or below them, the largest square it takes is worth a look too. */
function withToolsLargest(squares: Length[], { largestSheet, graduation }: Notcher): Length[] {
  const largest = roundToStep(largestSheet, graduation, 'down');
  return largest < squares.at(-1)! && largest > 0 ? [...squares, largest] : squares;
}

/** Every pocket on the grid that the card goes into, tight or with up to an inch to spare. */
function wholeGrid(question: Question): Pocketed[] {
  const { card, notcher } = question;
  const step = searchStep(notcher);
  const [lower, upper] = [0, LOOSEST_SEARCHED].map((clearance) => card.bulk + clearance) as [number, number];
  const squares = multiples(
    squareFor(card.width + lower, card.height + lower, notcher.inset),
    squareFor(card.width + upper, card.height + upper, notcher.inset),
    step,
  );
  const starts = multiples(
    startFor(card.height + lower, notcher.inset) - notcher.zeroOffset,
    startFor(card.height + upper, notcher.inset) - notcher.zeroOffset,
    step,
  );
  const all = squares.flatMap((square) => onSquare(question, square, starts));
  return all.filter(({ fit }) => fit !== "won't go");
}

/** The graduation, or the multiple of it that a whole grid may be searched on. */
export const searchStep = ({ graduation }: Notcher): Length =>
  times(graduation, Math.max(1, Math.ceil(GRID_STEP / graduation)));

function multiples(from: number, to: number, step: Length): Length[] {
  const first = roundToStep(from, step, 'up');
  const count = Math.max(2, Math.floor((to - first) / step) + 1);
  return Array.from({ length: count }, (_, index) => add(first, times(step, index)));
}

function onSquare(question: Question, square: Length, starts: readonly Length[]): Pocketed[] {
  const { notcher } = question;
  return starts
    .filter((start) => start >= 0 && isPocket(square, start, notcher))
    .map((start) => fitLying(square, start, question, false));
}
