/** Tells a mistake from what is only half typed, while a page follows the keys. Knows no envelope. */
import { type Checked, refuse } from '#shared/checked.ts';
import { readLength, type Units } from '#shared/length.ts';
import { readSize } from '#shared/size-typed.ts';
import { canGoOn } from '#shared/unfinished.ts';
import type { Entry } from '#views/common/field.tsx';

/**
 * The same entry without its problems, where each of them may still be typed away; a question about the unit stays
 * beside its field as a note. Undefined where there is no problem or a real one.
 */
export function stillTyping(entry: Entry, units: Units): Entry | undefined {
  const { problems, typed } = entry;
  const text = (field: string): string => typed[field] ?? '';
  const goesOn = problems.every(({ field }) => canGoOn(text(field), readerOf(field, units)));
  if (problems.length === 0 || !goesOn) return undefined;
  const questions = problems.filter(({ field }) => readerOf(field, units)(`${text(field)} mm`).ok);
  return {
    typed,
    problems: [],
    notes: Object.fromEntries(questions.map(({ field, message }) => [field, message])),
    unfinished: problems.map(({ field }) => field),
  };
}

function readerOf(field: string, units: Units): (text: string) => Checked<unknown> {
  if (field === 'card') return (text) => readSize(text, units);
  if (field === 'copies')
    return (text) => (/^\d+$/.test(text) ? { ok: true, value: text } : refuse(field, ''));
  return (text) => readLength(text, units);
}
