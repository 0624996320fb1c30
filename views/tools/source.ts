/** Where a tool's value comes from, in words. */
import type { Source } from '#core/project/learning.ts';
import { howMany } from '#views/parts/words.ts';

export function saySource(source: Source): string {
  if (source.from === 'default') return 'a usual value, until you measure a pocket';
  if (source.from === 'pinned') return 'set by you';
  return `learned from ${howMany(source.envelopes, 'envelope')}`;
}
