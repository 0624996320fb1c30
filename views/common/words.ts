/** Counting, listing and beginning a sentence: what every page says in the same way. Knows no things. */

/** `1 sheet`, `12 sheets`. */
export const howMany = (count: number, one: string, many = `${one}s`): string =>
  `${count.toLocaleString('en-GB')} ${count === 1 ? one : many}`;

/** `A`, `A and B`, `A, B and C`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** As a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
