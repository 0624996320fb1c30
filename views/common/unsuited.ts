/** Why paper does not do, in a few words. Knows no page. */
import type { WhyLeftOut } from '#core/stash/left-out.ts';

export function sayWhy(one: WhyLeftOut): string {
  if (one.why === 'too small') return one.beside ? 'too small beside the border' : 'too small';
  return WORDS[one.why];
}

const WORDS: Record<Exclude<WhyLeftOut['why'], 'too small'>, string> = {
  kept: 'kept on the shelf',
  'other paper': 'not the paper asked for',
  'too light': 'too light, or of unknown weight',
  'no border': 'no border to show',
  'no whole sheet': 'not a whole sheet',
  'border too long': 'a border longer than the trimmer cuts',
};
