/** Which of several is meant by the words typed for it, such as `Meadow walk · Fern` or `fern`. Knows names only. */
import { wordsIn } from './fold-text.ts';

/** Of something else that bears a name, as a design is of its pad. */
interface Named {
  readonly name: string;
  readonly pad: { readonly name: string };
}

/** What it is called in a field that takes it by name. */
export const nameOf = ({ name, pad }: Named): string => `${pad.name} · ${name}`;

/** The one that is meant; several that may be; or none. */
export type Meant<T> = { readonly one: T } | { readonly several: readonly T[] } | 'none';

/** Called just so before called about so; accents, capitals and what stands between words count for nothing. */
export function meantBy<T extends Named>(typed: string, found: readonly T[]): Meant<T> {
  const exactly = found.filter((one) => isCalled(one, typed));
  const likely = exactly.length > 0 ? exactly : found;
  if (likely.length === 0) return 'none';
  return likely.length === 1 ? { one: likely[0]! } : { several: likely };
}

export function isCalled({ name, pad }: Named, typed: string): boolean {
  const asked = plain(typed);
  return [name, `${pad.name} ${name}`, `${name} ${pad.name}`].some((one) => plain(one) === asked);
}

const plain = (text: string): string => wordsIn(text).join(' ');
