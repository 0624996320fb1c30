/** The way from a piece to making one of the maker's own envelopes of its paper. Knows no markup. */
import type { Offer } from '#core/batch/filling.ts';
import type { Piece } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import { asking, cardFields, measuresOf } from '../envelopes/query.ts';

/** As many as the page of envelopes asks for at once. */
const MOST_COPIES = 500;

/** The envelopes page with the card, its envelope and the design chosen; undefined for what is no envelope. */
export const startFrom = (
  { card, recipe }: Offer,
  count: number,
  { design }: Piece,
  units: Units,
): string | undefined =>
  recipe &&
  asking(
    {
      ...cardFields(card, units),
      copies: `${Math.min(count, MOST_COPIES)}`,
      design: `${design.id}`,
    },
    measuresOf(recipe, units),
  );
