/**
 * What a maker may want out of one piece: envelopes for her cards, the cards themselves, parts of her own; and what a fill
 * of them comes to. Joins cards, tool and piece; searches for nothing.
 */
import type { Fill } from '#core/cutting/one-piece/fill.ts';
import type { FillPart } from '#core/cutting/one-piece/wants.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { FitLimits, Notcher, Recipe, WarningKind } from '#core/envelope/recipe.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { blankWanted } from '#core/project/fitting.ts';
import type { CardSize } from '#core/project/journal.ts';
import type { Piece } from '#core/stash/stash.ts';
import { type Unsuited, unsuited } from '#core/stash/suits.ts';
import type { WantedFit } from '#shared/outcome.ts';
import { areaOf, type Size } from '#shared/size.ts';

/** Something to cut: `name` is the card's, or what she typed. The height of what is `upright` runs along the print. */
export interface Wanted extends Size {
  readonly id: string;
  readonly of: 'envelope' | 'card' | 'part';
  readonly name: string;
  readonly upright: boolean;
}

/** One of her own cards, or the blank of its envelope. */
export interface Offer extends Wanted {
  readonly of: 'envelope' | 'card';
  readonly card: CardSize;
  /** An envelope's. */
  readonly recipe?: Recipe;
}

/** How many are wanted at most, as many as come out when absent; and what one is worth when filling by wish. */
export interface Amount {
  readonly most?: number;
  readonly wish: number;
}

export interface Offers {
  readonly offers: readonly Offer[];
  /** The cards that have nothing among them. */
  readonly tooLarge: readonly CardSize[];
}

/** What an envelope is looked for with. */
interface Setting {
  readonly notcher: Notcher;
  readonly limits?: FitLimits;
  readonly fit: WantedFit;
}

/** What of her own comes out of the piece at all: for each card the best envelope that does, and the card laid flat. */
export function offersFrom(piece: Piece, cards: readonly CardSize[], setting: Setting): Offers {
  const envelopes = cards.flatMap((card) => envelopeFrom(piece, card, setting) ?? []);
  const flat = cards.map(asFlat).filter((offer) => comesOut(offer, piece));
  const offers = [...envelopes, ...flat];
  return { offers, tooLarge: cards.filter(({ id }) => !offers.some(({ card }) => card.id === id)) };
}

/** Whether one of it has room on the piece, its print as wanted. */
export const comesOut = (wanted: Wanted, piece: Piece): boolean => whyNot(wanted, piece) === undefined;

/** Why none of it does; undefined where one does. */
export const whyNot = ({ width, height, upright }: Wanted, piece: Piece): Unsuited | undefined =>
  unsuited({ width, height, mayTurn: !upright }, piece);

/** As the planner is asked. */
export const fillPart = ({ id, width, height, upright }: Wanted, { most, wish }: Amount): FillPart => ({
  ...{ id, width, height, value: wish },
  ...(upright && { upright }),
  ...(most !== undefined && { copies: most }),
});

/** What a fill comes to; shares are of the piece's area, from 0 to 1. */
export interface Filled {
  readonly fill: Fill;
  /** In the order in which they were asked for, without what does not come out. */
  readonly yields: readonly { readonly wanted: Wanted; readonly count: number }[];
  readonly waste: number;
  /** The most of it that any fill could use; only where there was most area to be had. */
  readonly mostUsed: number;
}

export function filledWith(fill: Fill, piece: Size, wanted: readonly Wanted[]): Filled {
  const countOf = ({ id }: Wanted): number => fill.rectangles.filter(({ part }) => part === id).length;
  const taken = [...fill.rectangles, ...fill.leftovers].reduce((sum, one) => sum + areaOf(one), 0);
  return {
    fill,
    yields: wanted.map((one) => ({ wanted: one, count: countOf(one) })).filter(({ count }) => count > 0),
    waste: Math.max(0, 1 - taken / areaOf(piece)),
    mostUsed: Math.min(1, fill.bound / areaOf(piece)),
  };
}

/** What no sheet of paper and no wish makes good. */
const UNMAKEABLE: readonly WarningKind[] = [
  "won't go",
  'larger than the tool',
  'flaps do not meet',
  'back open',
];

/** The best envelope of one blank that sits as wanted and comes out of the piece. */
function envelopeFrom(piece: Piece, card: CardSize, { fit, ...setting }: Setting): Offer | undefined {
  for (const recipe of solveEnvelope({ card, ...setting, want: { fit } })) {
    const { mayTurn, ...blank } = blankWanted(recipe);
    const offer: Offer = {
      ...{ id: `envelope.${card.id}`, of: 'envelope', name: card.name, card, recipe },
      ...{ width: blank.width, height: blank.height, upright: !mayTurn },
    };
    const sound = recipe.fit === fit && !recipe.warnings.some(({ kind }) => UNMAKEABLE.includes(kind));
    if (sound && foldOf(recipe).blanks(recipe).length === 1 && comesOut(offer, piece)) return offer;
  }
  return undefined;
}

const asFlat = (card: CardSize): Offer => ({
  ...{ id: `card.${card.id}`, of: 'card', name: card.name, card },
  ...{ width: card.width, height: card.height, upright: true },
});
