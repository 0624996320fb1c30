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

/** A card of hers with the envelopes of one blank that sit as wanted, best first: worked out once for many pieces. */
export interface OwnSize {
  readonly card: CardSize;
  readonly envelopes: readonly Offer[];
}

export const ownSizes = (cards: readonly CardSize[], setting: Setting): OwnSize[] =>
  cards.map((card) => ({ card, envelopes: envelopesFor(card, setting) }));

/** What of her own comes out of the piece at all: for each card the best envelope that does, and the card laid flat. */
export function offersFrom(piece: Piece, sizes: readonly OwnSize[]): Offers {
  const envelopes = sizes.flatMap(({ envelopes }) => envelopes.find((one) => comesOut(one, piece)) ?? []);
  const flat = sizes.map(({ card }) => asFlat(card)).filter((offer) => comesOut(offer, piece));
  const offers = [...envelopes, ...flat];
  const cards = sizes.map(({ card }) => card);
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

const envelopesFor = (card: CardSize, { fit, ...setting }: Setting): Offer[] =>
  solveEnvelope({ card, ...setting, want: { fit } })
    .filter((recipe) => recipe.fit === fit && !recipe.warnings.some(({ kind }) => UNMAKEABLE.includes(kind)))
    .filter((recipe) => foldOf(recipe).blanks(recipe).length === 1)
    .map((recipe) => {
      const { mayTurn, width, height } = blankWanted(recipe);
      const envelope = { id: `envelope.${card.id}`, of: 'envelope', name: card.name, card, recipe } as const;
      return { ...envelope, width, height, upright: !mayTurn };
    });

const asFlat = (card: CardSize): Offer => ({
  ...{ id: `card.${card.id}`, of: 'card', name: card.name, card },
  ...{ width: card.width, height: card.height, upright: true },
});
