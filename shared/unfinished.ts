/** Whether what was typed so far can still become right by typing on. Knows no field and no form. */
import type { Checked } from './checked.ts';

const WORDS = ['x', 'by', 'in', 'inches', 'mm', 'cm', 'letter', 'half letter', 'legal', 'tabloid', 'dl'];
const ENDS = ['', '6', '/8'];
const OTHER_SIDE = ['', ' x 1', '1', ' 1'];
const UNITS = ['', ' mm', ' in'];
/** What is longer is no length and no size. */
const LONGEST_TEXT = 80;

/** `4 3/`, `5 x`, `148 x 105 m` and nothing at all can go on; `lots` and `5 x 7 x` can’t. `read` is the field’s own reader. */
export function canGoOn(typed: string, read: (text: string) => Checked<unknown>): boolean {
  if (typed.length > LONGEST_TEXT) return false;
  if (typed.trim() === '') return true;
  return [...ENDS, ...wordEnds(typed.toLowerCase())].some((end) =>
    OTHER_SIDE.some((side) => UNITS.some((unit) => read(typed + end + side + unit).ok)),
  );
}

/** What is missing of every word that the text may be in the middle of. */
const wordEnds = (typed: string): string[] =>
  WORDS.flatMap((word) =>
    Array.from({ length: word.length }, (_, index) => index + 1)
      .filter((begun) => typed.endsWith(word.slice(0, begun)))
      .map((begun) => word.slice(begun)),
  );
