/** A tool's value and where it comes from, in words. */
import type { Source } from '#core/project/learning.ts';
import { type Length, printLength, type Units } from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import { finely } from '../common/finely.ts';

export function saySource(source: Source): string {
  if (source.from === 'default') return 'a usual value, until you measure a pocket';
  if (source.from === 'pinned') return 'set by you';
  return `learned from ${howMany(source.pockets, 'pocket')}`;
}

/** As a ruler shows it where it lies on a mark, down to 32nds; a learned one is finer. */
export function sayValue(one: Length, units: Units): string {
  const shown = printLength(one, units.unit === 'in' ? { unit: 'in', step: 32 } : units);
  return shown.startsWith('≈') ? finely(one, units) : shown;
}
