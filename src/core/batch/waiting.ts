/** Paper that waits on the shelf, and what of the maker's own it could become. Knows no database and draws nothing. */

import { yieldOf } from '#core/stash/shelf-search.ts';
import type { Piece } from '#core/stash/stash.ts';
import { areaOf } from '#shared/size.ts';
import { type Offer, type OwnSize, offersFrom } from './filling.ts';

/** Paper, and when it came onto the shelf. */
export interface Waiting<Paper> {
  readonly paper: Paper;
  readonly since: string;
}

/** One of her own things, and how many alike lie in rows on the piece. */
export interface Becoming {
  readonly offer: Offer;
  readonly count: number;
}

/** Envelopes before cards laid flat; of either first what uses most of the piece. */
export const couldBecome = (piece: Piece, sizes: readonly OwnSize[]): Becoming[] =>
  offersFrom(piece, sizes)
    .offers.map((offer) => ({ offer, count: yieldOf(piece, { ...offer, mayTurn: !offer.upright }) }))
    .sort((one, other) => rank(one) - rank(other) || used(other) - used(one));

const rank = ({ offer }: Becoming): number => (offer.of === 'envelope' ? 0 : 1);

const used = ({ offer, count }: Becoming): number => areaOf(offer) * count;
