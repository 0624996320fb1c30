/** Which stretches of a text are what was asked for, and the part of a long text worth showing. Knows no markup. */
import { placedWords } from './fold-text.ts';

export interface Stretch {
  readonly text: string;
  readonly marked: boolean;
}

const SHOWN = 160;
const BEFORE = 40;

/** The whole text in stretches, the beginnings of words that were asked for marked. */
export function mark(text: string, words: readonly string[]): Stretch[] {
  const stretches: Stretch[] = [];
  let done = 0;
  const put = (to: number, marked: boolean): void => {
    if (to > done) stretches.push({ text: text.slice(done, to), marked });
    done = Math.max(done, to);
  };
  for (const { word, from, to } of placedWords(text)) {
    if (!words.some((one) => word.startsWith(one))) continue;
    put(from, false);
    put(to, true);
  }
  put(text.length, false);
  return stretches;
}

/** About a line of a text, from a little before the first word that was asked for; all of it where it is short. */
export function excerpt(text: string, words: readonly string[]): string {
  if (text.length <= SHOWN) return text;
  const placed = placedWords(text);
  const first = placed.find(({ word }) => words.some((one) => word.startsWith(one)));
  const start = first ? (placed.find(({ from }) => from >= first.from - BEFORE)?.from ?? 0) : 0;
  const end = placed.filter(({ to }) => to <= start + SHOWN).at(-1)?.to ?? start + SHOWN;
  return `${start > 0 ? '… ' : ''}${text.slice(start, end)}${end < text.length ? ' …' : ''}`;
}
