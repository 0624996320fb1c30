/**
 * How well something found answers what was asked, and in which order: its title before its text, whole words before
 * beginnings, the nearest measure first, the newer of equals. Knows no index.
 */
import { foldText, wordsIn } from './fold-text.ts';
import type { Asked, AskedWord, Reading } from './read-query.ts';
import { FIND_KINDS, type FindKind } from './vocabulary.ts';

/** Something found. `belongs` is the row whose page shows it, `number` which of that page's things it is. */
export interface Find {
  readonly id: number;
  readonly kind: FindKind;
  readonly belongs: number;
  readonly number: number;
  readonly title: string;
  readonly text: string;
  readonly about: string;
}

/** `off`: how far the measures asked for are off altogether, in lengths of 25 nm. */
export interface Candidate extends Find {
  readonly reading: number;
  readonly off: number;
}

export interface Ranked extends Find {
  readonly score: number;
}

/** All that was found of one kind, as far as it was looked at. */
export interface FoundKind {
  readonly kind: FindKind;
  /** Best first. */
  readonly finds: readonly Ranked[];
  /** There are more that were not looked at. */
  readonly more: boolean;
}

const CODE = 1000;
const NAMED_KIND = 100;
const WHOLE_TITLE = 20;
const MEASURED = 12;
const TITLE = { whole: 8, begun: 5 };
const TEXT = { whole: 3, begun: 2 };
const ELSEWHERE = 1;
/** Further on a text is not looked into: the order matters little there. */
const LOOKED_AT = 600;

/** These are called after their project, which stands before them. */
const NAMED_AFTER: readonly FindKind[] = ['lesson', 'outcome', 'part'];

/** Each once, by the reading that suits it best; the best first. */
export function rank(asked: Asked, candidates: readonly Candidate[]): Ranked[] {
  const best = new Map<number, Ranked>();
  for (const candidate of candidates) {
    const reading = asked.readings[candidate.reading];
    const score = Math.round(100 * (reading ? scoreOf(reading, candidate) : CODE)) / 100;
    if (score > (best.get(candidate.id)?.score ?? -1)) best.set(candidate.id, { ...candidate, score });
  }
  return [...best.values()].sort(byScore);
}

/** The best first, among equals the kinds in their order, then the newest. */
export const byScore = (one: Ranked, other: Ranked): number =>
  other.score - one.score ||
  FIND_KINDS.indexOf(one.kind) - FIND_KINDS.indexOf(other.kind) ||
  other.id - one.id;

function scoreOf({ words, measures }: Reading, find: Candidate): number {
  const inherits = NAMED_AFTER.includes(find.kind);
  const title = inherits ? [] : wordsIn(find.title);
  const text = wordsIn(find.text.slice(0, LOOKED_AT));
  const whole =
    words.length > 0 && !inherits && foldText(find.title) === words.map(({ word }) => word).join(' ');
  const measured = measures.map(({ within }) => MEASURED * (1 - find.off / (4 * within * measures.length)));
  return (
    words.reduce((sum, word) => sum + scoreWord(word, find.kind, title, text), 0) +
    measured.reduce((sum, one) => sum + one, 0) +
    (whole ? WHOLE_TITLE : 0)
  );
}

function scoreWord({ word, kinds }: AskedWord, kind: FindKind, title: string[], text: string[]): number {
  if (kinds.includes(kind)) return NAMED_KIND;
  if (title.includes(word)) return TITLE.whole;
  if (title.some((one) => one.startsWith(word))) return TITLE.begun;
  if (text.includes(word)) return TEXT.whole;
  return text.some((one) => one.startsWith(word)) ? TEXT.begun : ELSEWHERE;
}
