/** What a piece gives, in words: one sentence, its proof, what things are called. Knows no markup. */
import type { Filled, Wanted } from '#core/batch/filling.ts';
import type { FillingTyped } from '#shared/schemas/filling.ts';
import { capital, listed } from '#views/common/words.ts';
import { percent } from '../plans/words.ts';

/** `Three Seed card envelopes and two Gift tags; 4.0 % is waste.` */
export function sayYields({ yields, waste }: Filled): string {
  const things = yields.map(({ wanted, count }) => `${sayNumber(count)} ${sayThing(wanted, count)}`);
  const lost = waste < LEAST_WASTE ? 'nothing is waste' : `${percent(waste)} is waste`;
  return `${capital(listed(things))}; ${lost}.`;
}

/** Names are kept as she wrote them, whatever they stand for. */
export function sayThing({ of, name }: Pick<Wanted, 'of' | 'name'>, count = 1): string {
  if (of === 'envelope') return `${name} ${count === 1 ? 'envelope' : 'envelopes'}`;
  const thing = of === 'part' || SAYS_WHAT.test(name) ? name : `${name} card`;
  return count === 1 ? thing : plural(thing);
}

export function sayProof({ fill, mostUsed }: Filled, goal: FillingTyped['goal']): string {
  if (fill.proved) return 'No way of cutting gives more.';
  if (goal === 'count') return `At most ${Math.floor(fill.bound)} pieces could come out.`;
  if (goal === 'area') return `At most ${Math.ceil(mostUsed * 1000) / 10} % of it could be used.`;
  return `These come to ${fill.value} in wishes; at most ${Math.floor(fill.bound)} could come out.`;
}

/** Below what the percentage would show. */
const LEAST_WASTE = 0.0005;

const SAYS_WHAT = /(card|note|tag|label|invitation|bookmark|insert)s?$/i;

const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

const sayNumber = (count: number): string => NUMBERS[count] ?? `${count}`;

/** `tags`, `boxes`, `lilies`, `pieces of 8 × 4″`, and what is many already as it is. */
function plural(name: string): string {
  if (name.startsWith('piece of ')) return name.replace('piece', 'pieces');
  if (/[^s]s$/i.test(name)) return name;
  if (/[^aeiou]y$/i.test(name)) return `${name.slice(0, -1)}ies`;
  return /(s|x|z|ch|sh)$/i.test(name) ? `${name}es` : `${name}s`;
}
