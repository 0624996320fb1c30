/** What things are known by: the numbers of rows, and short codes that survive a pencil. Knows no offcuts. */

/** The number of a row, as addresses and forms carry it; undefined for text that no row could be called. */
export const readId = (text: string): number | undefined =>
  /^[1-9]\d{0,14}$/.test(text) ? Number(text) : undefined;

/** No letter or digit that could be taken for another. */
const SIGNS = 'CDFHJKMNPRTVWXY34679';
const SHORTEST = 2;
/** Coprime to 20, so that codes which follow each other differ in every sign. */
const STRIDE = 7_919;

/**
 * The code of the n-th thing, n ≥ 1: two signs for the first 400, three for the next 8000, and so on. Different for
 * every n, and neighbours do not look alike.
 */
export function pencilCode(n: number): string {
  if (!Number.isSafeInteger(n) || n < 1) throw new Error(`invalid number for a code: ${n}`);
  let [rest, signs] = [n - 1, SHORTEST];
  for (; rest >= SIGNS.length ** signs; signs++) rest -= SIGNS.length ** signs;
  return spell((rest * STRIDE) % SIGNS.length ** signs, signs);
}

/** What somebody read from the back of an offcut, as it is kept: capitals, without spaces or hyphens. */
export const readPencilCode = (text: string): string => text.toUpperCase().replace(/[\s-]/g, '');

const spell = (value: number, signs: number): string =>
  Array.from(
    { length: signs },
    (_, place) => SIGNS[Math.floor(value / SIGNS.length ** place) % SIGNS.length],
  ).join('');
