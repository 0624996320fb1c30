/** What a small slip of the hand does to a pocket: the square cut, or the first notch set, a little off. */
import { add, inches, type Length, length } from '#shared/length.ts';
import { goesFreely } from './fit.ts';
import { fitLying, type Pocketed, type Setting } from './pocket.ts';
import type { Recipe, Slip } from './recipe.ts';

const SQUARE_SLIP = inches(1 / 32);
const START_SLIP = inches(1 / 16);

/** Four slips: the square 1/32 in under and over with the start kept, the start 1/16 in under and over. */
export function slipsOf({ square, start, cardTurned }: Pocketed, setting: Setting): Slip[] {
  const squares = both(SQUARE_SLIP).map((by) =>
    slip('square', by, fitLying(add(square, by), start, setting, cardTurned)),
  );
  const starts = both(START_SLIP).map((by) =>
    slip('start', by, fitLying(square, add(start, by), setting, cardTurned)),
  );
  return [...squares, ...starts];
}

/** Whether the card still goes in without force after every slip of a kind. */
export const survivesOf = (slips: readonly Slip[]): Recipe['survives'] => ({
  square: slips.every(({ off, fit }) => off !== 'square' || goesFreely(fit)),
  start: slips.every(({ off, fit }) => off !== 'start' || goesFreely(fit)),
});

const both = (by: Length): Length[] => [length(0 - by), by];

const slip = (off: Slip['off'], by: Length, { pocket, clearance, fit }: Pocketed): Slip => ({
  off,
  by,
  pocket,
  clearance,
  fit,
});
