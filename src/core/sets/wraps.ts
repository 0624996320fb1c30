/**
 * Whatever goes round a card: belly band, closing strip, ribbon. Its length, its scores, and what its path does to
 * opening the card. Knows no knots and no paper.
 */
import type { Checked, Problem } from '#shared/checked.ts';
import { add, type Length, length, subtract } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import type { FoldAt } from './base.ts';
import {
  copiesProblem,
  ifSound,
  negativeProblem,
  type Score,
  type SetPart,
  sizeProblems,
  type Wanted,
} from './part.ts';

export type WrapKind = 'belly band' | 'closing strip' | 'ribbon';

/** What it goes round. */
export type Path = 'front leaf' | 'inside back' | 'whole card';

/** Across: round the card's width, the strip lying level. Up: round its height. */
export type Run = 'across' | 'up';

export interface WrapWish extends Wanted {
  readonly kind: WrapKind;
  readonly card: Size & { readonly bulk: Length };
  /** Where the card is folded, or `none` for an envelope or a flat card. */
  readonly fold: FoldAt | 'none';
  readonly path: Path;
  readonly run: Run;
  /** Of the strip. */
  readonly breadth: Length;
  /** Where its ends lie on each other. */
  readonly overlap: Length;
  /** Angled: cut at 45°, for looks. */
  readonly ends: 'straight' | 'angled';
  /** Of one leaf with what is on it; half the card's bulk when absent. */
  readonly leafBulk?: Length;
}

export interface Wrap extends SetPart {
  readonly opening: Opening;
}

/** What the path does to opening, to be shown before anything is glued. */
export interface Opening {
  readonly tiesShut: boolean;
  /** It would have to go through the fold, so that its ends stop there. */
  readonly stopsAtFold: boolean;
  readonly words: string;
}

/**
 * The strip as cut, its length as its width. Scored pieces are laid so that the ends meet in the middle of the back.
 * Angled ends add the strip's breadth, so that the overlap holds right across it.
 */
export function wrap(wish: WrapWish): Checked<Wrap> {
  const problems = [...sizeProblems(wish.card), ...copiesProblem(wish), ...wrapProblems(wish)];
  return ifSound(problems, () => {
    const opening = openingOf(wish);
    const stretches = stretchesOf(wish, opening);
    return {
      name: NAMES[wish.kind],
      copies: wish.copies,
      material: wish.kind === 'ribbon' ? 'ribbon' : 'paper',
      upright: wish.upright ?? false,
      width: add(...stretches, wish.ends === 'angled' ? wish.breadth : NOTHING),
      height: wish.breadth,
      scores: wish.kind === 'ribbon' ? [] : scoresAfter(stretches.slice(0, -1)),
      opening,
      notes: [opening.words, ...(wish.kind === 'ribbon' ? [RIBBON] : [])],
    };
  });
}

/** What the path does to opening; known before any size is. */
export function openingOf({ fold, path, run }: Pick<WrapWish, 'fold' | 'path' | 'run'>): Opening {
  if (path === 'whole card') {
    if (fold === 'none')
      return { tiesShut: false, stopsAtFold: false, words: `It slips off ${WAY_OFF[run]}.` };
    return {
      tiesShut: true,
      stopsAtFold: false,
      words: `This ties the card shut: it must slip off ${WAY_OFF[run]}. ${LOOSE}`,
    };
  }
  const stopsAtFold = crossesFold(fold, run);
  return { tiesShut: false, stopsAtFold, words: stopsAtFold ? `${FREE} ${STOPS}` : `${FREE} ${SHOWS[path]}` };
}

const NOTHING = length(0);

const NAMES: Readonly<Record<WrapKind, string>> = {
  'belly band': 'Belly band',
  'closing strip': 'Closing strip',
  ribbon: 'Ribbon',
};

const WAY_OFF: Readonly<Record<Run, string>> = { across: 'over the top or the bottom', up: 'to one side' };
const LOOSE = 'Glue its ends to each other only, never to the card.';
const FREE = 'The card still opens.';
const STOPS = 'A strip can’t pass through the fold: glue both ends beside it, under a panel.';
const SHOWS: Readonly<Record<Exclude<Path, 'whole card'>, string>> = {
  'front leaf': 'The strip shows on the inside of the front.',
  'inside back': 'The strip shows inside and on the card’s back.',
};
const RIBBON = 'For a knot or a bow add what it takes; tie one in string first and measure it.';

const crossesFold = (fold: FoldAt | 'none', run: Run): boolean => {
  if (fold === 'none') return false;
  const foldLiesLevel = fold === 'top' || fold === 'top and bottom';
  return foldLiesLevel ? run === 'up' : run === 'across';
};

function wrapProblems(wish: WrapWish): Problem[] {
  const leaves = wish.fold === 'sides' || wish.fold === 'top and bottom';
  return [
    ...(wish.breadth > 0 ? [] : [{ field: 'breadth', message: 'This has to be more than zero.' }]),
    ...negativeProblem(wish.overlap, 'overlap', 'An overlap'),
    ...negativeProblem(wish.card.bulk, 'bulk', 'A thickness'),
    ...(wish.leafBulk === undefined ? [] : negativeProblem(wish.leafBulk, 'leafBulk', 'A thickness')),
    ...(wish.breadth > alongStrip(wish)
      ? [{ field: 'breadth', message: 'The strip is wider than the card.' }]
      : []),
    ...(wish.fold === 'none' && wish.path !== 'whole card' ? [{ field: 'path', message: ONE_PIECE }] : []),
    ...(leaves && wish.path === 'front leaf' ? [{ field: 'path', message: TWO_LEAVES }] : []),
  ];
}

const ONE_PIECE = 'Without a fold there are no leaves: go round the whole of it.';
const TWO_LEAVES = 'A gate has two front leaves: go round the whole card or its back.';

const alongStrip = ({ card, run }: WrapWish): Length => (run === 'across' ? card.height : card.width);

/** The flat stretches between the folds of the strip, from one end to the other. */
function stretchesOf(wish: WrapWish, opening: Opening): Length[] {
  const side = wish.run === 'across' ? wish.card.width : wish.card.height;
  const thick =
    wish.path === 'whole card' ? wish.card.bulk : (wish.leafBulk ?? length(Math.ceil(wish.card.bulk / 2)));
  if (opening.stopsAtFold) return [side, thick, side];
  const half = length(Math.floor(side / 2));
  return [half, thick, side, thick, add(subtract(side, half), wish.overlap)];
}

/** Where each stretch ends; two folds a hair apart stay two. */
function scoresAfter(stretches: readonly Length[]): Score[] {
  const ends = stretches.map((_, index) => add(...stretches.slice(0, index + 1)));
  return [...new Set(ends)].map((at) => ({ from: 'left', at }));
}
