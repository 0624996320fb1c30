/** The card itself: cut size, scores and grain of book, tent and gate folds. Knows no layers and no envelope. */
import type { Checked, Problem } from '#shared/checked.ts';
import { add, inches, type Length, length, subtract, times } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import {
  copiesProblem,
  ifSound,
  negativeProblem,
  type Score,
  type SetPart,
  sizeProblems,
  type Wanted,
} from './part.ts';

/**
 * Where the finished card, seen from its front, is folded. Left or right: a book. Top: a tent. Sides, or top and
 * bottom: a gate of two leaves that meet in the middle.
 */
export type FoldAt = 'left' | 'right' | 'top' | 'sides' | 'top and bottom';

export interface BaseWish extends Wanted {
  /** The finished card. */
  readonly card: Size;
  readonly fold: FoldAt;
  /** Between a gate's leaves, so that they don't rub. */
  readonly gap?: Length;
}

export interface CardBase extends SetPart {
  readonly opens: string;
}

/** The base of a folded card, as cut and laid flat. What is left of a gate's odd width goes to its second leaf. */
export function cardBase(wish: BaseWish): Checked<CardBase> {
  const gap = wish.gap ?? GATE_GAP;
  const problems = [...sizeProblems(wish.card), ...copiesProblem(wish), ...gapProblems(wish, gap)];
  return ifSound(problems, () => {
    const upDown = wish.fold === 'top' || wish.fold === 'top and bottom';
    const across = upDown ? wish.card.height : wish.card.width;
    const { long, scores } = isGate(wish.fold) ? gate(across, gap) : half(across);
    return {
      name: 'Card base',
      copies: wish.copies,
      material: 'cardstock',
      upright: wish.upright ?? false,
      width: upDown ? wish.card.width : long,
      height: upDown ? long : wish.card.height,
      grain: upDown ? 'width' : 'height',
      scores: scores.map((at): Score => ({ from: upDown ? 'top' : 'left', at })),
      opens: OPENS[wish.fold],
      notes: [GRAIN, SCORING, ...(upDown ? [UPSIDE_DOWN] : [])],
    };
  });
}

/** A choice of ours: about three thicknesses of card stock. */
const GATE_GAP = inches(1 / 32);

const OPENS: Readonly<Record<FoldAt, string>> = {
  left: 'opens at the right, like a book',
  right: 'opens at the left',
  top: 'opens at the bottom, and stands like a tent',
  sides: 'opens in the middle, to both sides',
  'top and bottom': 'opens in the middle, up and down',
};

const GRAIN = 'Cut it so that the grain runs along the fold.';
const SCORING = 'Score before folding, and fold so that the raised bead lies inside.';
const UPSIDE_DOWN = 'Beyond a fold that lies level, an upright print comes out upside down.';

const isGate = (fold: FoldAt): boolean => fold === 'sides' || fold === 'top and bottom';

function gapProblems({ card, fold }: BaseWish, gap: Length): Problem[] {
  if (!isGate(fold)) return [];
  const across = fold === 'sides' ? card.width : card.height;
  const tooWide = gap >= across ? [{ field: 'gap', message: 'The gap is wider than the card.' }] : [];
  return [...negativeProblem(gap, 'gap', 'A gap'), ...tooWide];
}

const half = (across: Length): { long: Length; scores: Length[] } => ({
  long: times(across, 2),
  scores: [across],
});

function gate(across: Length, gap: Length): { long: Length; scores: Length[] } {
  const leaf = length(Math.floor((across - gap) / 2));
  return { long: subtract(times(across, 2), gap), scores: [leaf, add(leaf, across)] };
}
