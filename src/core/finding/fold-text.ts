/** Text as the index of words sees it: small letters without accents, cut into words. Knows no meaning. */

/** The same number of words as `wordsIn`, with where each begins and ends in the text itself. */
export interface PlacedWord {
  readonly word: string;
  readonly from: number;
  readonly to: number;
}

const WORD = /[\p{L}\p{N}][\p{L}\p{N}\p{M}]*/gu;
const PLAIN = /^[\x20-\x7e\n]*$/;

/** Small letters, without accents: `Crêpe` and `crepe` are one. */
export const foldText = (text: string): string =>
  PLAIN.test(text) ? text.toLowerCase() : text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

export const wordsIn = (text: string): string[] => placedWords(text).map(({ word }) => word);

export const placedWords = (text: string): PlacedWord[] =>
  [...text.matchAll(WORD)].map((found) => ({
    word: foldText(found[0]),
    from: found.index,
    to: found.index + found[0].length,
  }));
