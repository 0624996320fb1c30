/**
 * What an envelope comes to at the post before anything can be weighed: reckoned from its recipe, its paper and an
 * ordinary card. Knows no size classes and no pages.
 */
import type { Recipe } from '#core/envelope/recipe.ts';
import { describeLayers, type Layered } from '#core/paper/layers.ts';
import type { PaperWeight } from '#core/paper/weight.ts';
import type { Front, Posted } from '#core/post/classify.ts';
import type { Design } from '#core/stash/stash.ts';
import { times } from '#shared/length.ts';
import type { Mass } from '#shared/mass.ts';
import { paperOf } from './envelope.ts';
import { toPost } from './posted.ts';

export interface Reckoned {
  readonly posted: Posted;
  /** What it was reckoned with: the card's own mass where that was given. */
  readonly card: PaperWeight | Mass;
  readonly envelope: PaperWeight;
}

/**
 * The recipe's card in its envelope: as thick as it says, and as heavy as is given, or a folded card of ordinary stock
 * with one layer on its front.
 */
export function reckonPosted(
  recipe: Recipe,
  design?: Pick<Design, 'swatch' | 'pad'>,
  cardMass?: Mass,
): Reckoned {
  const grammage = design?.pad.grammage ?? undefined;
  const envelope: PaperWeight = grammage === undefined ? USUAL_PAPER : { unit: 'g/m²', amount: grammage };
  return {
    posted: toPost({
      card: { ...ordinaryCard(recipe), ...(cardMass !== undefined && { mass: cardMass }) },
      envelope: { ...paperOf(recipe), paper: { weight: envelope } },
      address: 'along',
      front: design ? frontOf(design.swatch) : 'light',
    }),
    card: cardMass ?? USUAL_CARD,
    envelope,
  };
}

/** Whether a sorting machine can read ink on it: patterns are in its way, and so is a dark ground. */
export function frontOf({ motif, ground }: Design['swatch']): Front {
  if (motif !== 'plain') return 'patterned';
  return lightness(ground) < DARK ? 'dark' : 'light';
}

/** Choices of ours, to be replaced by what she weighs. */
const USUAL_CARD: PaperWeight = { unit: 'lb', amount: 80, grade: 'cover' };
const USUAL_PAPER: PaperWeight = { unit: 'g/m²', amount: 120 };

/** Below it, black ink stands out too little: a choice of ours. */
const DARK = 0.35;

function ordinaryCard({ card }: Recipe): Layered {
  const paper = { weight: USUAL_CARD };
  const flat = { width: times(card.width, 2), height: card.height };
  const layers = describeLayers([
    { name: 'Card', size: flat, paper, leaves: 2 },
    { name: 'Front panel', size: card, paper },
  ]);
  return card.bulk > 0 ? { ...layers, bulk: { least: card.bulk, most: card.bulk } } : layers;
}

/** Relative luminance of `#rrggbb`, from 0 to 1. Source: WCAG 2.2. */
function lightness(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}
