/** Every fold there is, by name: the only place to touch when a new one is added. */
import type { FoldName } from '#shared/fold.ts';
import { diagonal } from './diagonal.ts';
import type { Fold } from './fold.ts';

import { sideSeam } from './side-seam.ts';
import { twoPiece } from './two-piece.ts';

export const FOLDS: Readonly<Record<FoldName, Fold>> = {
  diagonal,
  'side-seam': sideSeam,
  'two-piece': twoPiece,
};

export const foldOf = ({ fold }: { readonly fold: FoldName }): Fold => FOLDS[fold];
