/** Smaller envelopes for the same card: what is left where no paper is large enough. Knows no paper. */
import type { WantedFit } from '#shared/outcome.ts';
import { areaOf } from '#shared/size.ts';
import type { Recipe } from './recipe.ts';
import { solvedEnvelope } from './solved.ts';

/** Of the same fold, with a blank of less area, that fit just so; best first. */
export const smallerEnvelopes = (
  { card, notcher, limits, fold, blank }: Recipe,
  fit: WantedFit,
): readonly Recipe[] =>
  solvedEnvelope({ card, notcher, limits, want: { fit }, folds: [fold] }).filter(
    (other) => other.fit === fit && areaOf(other.blank) < areaOf(blank),
  );
