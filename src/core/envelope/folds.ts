/** Every fold there is, by name: the only place to touch when a new one is added. */
import { diagonal } from './diagonal.ts';
import type { Fold } from './fold.ts';
import type { FoldName } from './recipe.ts';

export const FOLDS: Readonly<Record<FoldName, Fold>> = { diagonal };

export const foldOf = ({ fold }: { readonly fold: FoldName }): Fold => FOLDS[fold];
