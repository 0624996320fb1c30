/** Tags as they are typed, in one line with commas between, and back. Knows no projects. */
import { accept, type Checked, refuse } from './checked.ts';

export interface Tag {
  readonly id: number;
  readonly name: string;
}

/** With how many projects bear it. */
export interface TagUsed extends Tag {
  readonly projects: number;
}

export const LONGEST_TAG = 40;
const MOST_TAGS = 12;

export const typedTags = (names: readonly string[]): string => names.join(', ');

/** Each once, whatever its capitals, as it was typed first; several spaces count as one. */
export function readTags(typed: string): Checked<readonly string[]> {
  const names = typed
    .split(',')
    .map(readTag)
    .filter((name) => name !== '');
  const different = names.filter((name, index) => names.findIndex((other) => sameTag(other, name)) === index);
  const long = different.find((name) => name.length > LONGEST_TAG);
  if (long) return refuse('', `Keep each tag under ${LONGEST_TAG} characters, with commas between them.`);
  return different.length > MOST_TAGS ? refuse('', `Keep to ${MOST_TAGS} tags.`) : accept(different);
}

export const readTag = (typed: string): string => typed.trim().replace(/\s+/g, ' ');

const sameTag = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();
