/** The words for ways to fold an envelope and to finish its flaps, in recipes and on forms. Knows no shape. */
import type { Length } from './length.ts';

export const FOLD_NAMES = ['diagonal', 'side-seam', 'two-piece'] as const;

export type FoldName = (typeof FOLD_NAMES)[number];

export const FINISHES = ['pointed', 'straight', 'tapered', 'rounded'] as const;

/**
 * How a flap is finished, every measure told from its score line. *pointed*: as the sheet's corner leaves it.
 * *straight*: cut parallel to the score at `depth`. *tapered*: the same, with both sides cut in a straight line from
 * the score's ends to a point `taper` in from either end of that cut. *rounded*: the tip rounded with `radius`.
 */
export type Finish =
  | { readonly shape: 'pointed' }
  | { readonly shape: 'straight'; readonly depth: Length }
  | { readonly shape: 'tapered'; readonly depth: Length; readonly taper: Length }
  | { readonly shape: 'rounded'; readonly radius: Length };
