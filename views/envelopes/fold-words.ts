/** What each fold is called and cut from, in words. Knows no drawing. */
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { FoldName } from '#shared/fold.ts';
import { printExact, printExactSize, type Units } from '#shared/length.ts';

/** For a link or a list: `Square 7½″, start 2¾″`, `Side-seam from 7½ × 7⅞″`. */
export function sayEnvelope(recipe: Recipe, units: Units): string {
  if (recipe.fold === 'diagonal') {
    return `Square ${printExact(recipe.blank.width, units)}, start ${printExact(recipe.starts[0], units)}`;
  }
  return `${FOLD_TITLES[recipe.fold]} from ${sayBlanks(recipe, units)}`;
}

/** `7½ × 7⅞″`, or both pieces: `6½ × 4⅞″ and 7½ × 4″`. */
export const sayBlanks = (recipe: Recipe, units: Units): string =>
  foldOf(recipe)
    .blanks(recipe)
    .map((blank) => printExactSize(blank, units))
    .join(' and ');

const FOLD_TITLES: Record<FoldName, string> = {
  diagonal: 'Diagonal',
  'side-seam': 'Side-seam',
  'two-piece': 'Two-piece',
};

/** After "make it", or "or". */
export const SAY_WAY: Record<FoldName, string> = {
  diagonal: 'from one square',
  'side-seam': 'from one strip, with side seams',
  'two-piece': 'from two pieces',
};

/** What a slip of the hand is off in. */
export const SLIP_WORDS: Record<FoldName, { readonly square: string; readonly start: string }> = {
  diagonal: { square: 'square', start: 'start' },
  'side-seam': { square: 'strip', start: 'score' },
  'two-piece': { square: 'piece', start: 'score' },
};

/** Under the drawing of the blank. */
export const FLAT_CAPTIONS: Record<FoldName, string> = {
  diagonal: 'The square on the tool, inside up',
  'side-seam': 'One strip lying flat, inside up',
  'two-piece': 'Both pieces lying flat, inside up',
};
