/** Where a tool's value comes from, in words. */
import type { Source } from '#core/project/learning.ts';

export function saySource(source: Source): string {
  if (source.from === 'default') return 'a usual value, until you measure a pocket';
  if (source.from === 'pinned') return 'set by you';
  return source.envelopes === 1 ? 'learned from 1 envelope' : `learned from ${source.envelopes} envelopes`;
}
