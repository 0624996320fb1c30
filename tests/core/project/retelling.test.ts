/** What becomes of lessons when what was told changes: which stay the same ones, which come, which go. */
import { expect, test } from 'vitest';
import { retelling, type Told, wordsOf } from '#core/project/retelling.ts';

const told = (envelope: number | null, words: string): Told => ({ envelope, words, savedBy: '' });

/** By envelope: `1a` is *a*, told of envelope 1; `0a` of the project. */
const read = (short: string): Told => told(short[0] === '0' ? null : Number(short[0]), short.slice(1));
const write = ({ envelope, words }: Told): string => `${envelope ?? 0}${words}`;

test.each<[string, string, string, string, string, string]>([
  ['nothing changed', '1a 0b', '1a 0b', '1a>1a 0b>0b', '', ''],
  ['told first', '', '1a', '', '1a', ''],
  ['told of several alike', '', '1a 2a 3a', '', '1a', ''],
  ['withdrawn', '1a', '', '', '', '1a'],
  ['withdrawn, but told of another too', '1a', '2a', '1a>2a', '', ''],
  ['put right', '1a', '1b', '1a>1b', '', ''],
  ['put right, the old words told of another', '1a', '1b 2a', '1a>2a', '1b', ''],
  ['swapped', '1a 2b', '1b 2a', '1a>1b 2b>2a', '', ''],
  ['the project’s own put right', '0a 1c', '0b 1c', '1c>1c 0a>0b', '', ''],
  ['the project’s words told of an envelope too', '0a', '0a 1a', '0a>0a', '1a', ''],
])('%s', (_, standing, now, kept, added, dropped) => {
  const list = (text: string): Told[] => text.split(' ').filter(Boolean).map(read);
  const found = retelling(list(standing), list(now));
  expect(found.kept.map(({ row, told }) => `${write(row)}>${write(told)}`).join(' ')).toBe(kept);
  expect(found.added.map(write).join(' ')).toBe(added);
  expect(found.dropped.map(write).join(' ')).toBe(dropped);
});

test('only what saved it is worth a lesson too; silence is not', () => {
  expect(wordsOf({ wrong: 'Slipped.', savedBy: 'Tape.' })).toEqual({ words: 'Slipped.', savedBy: 'Tape.' });
  expect(wordsOf({ wrong: ' ', savedBy: 'Tape.' })).toEqual({ words: 'Tape.', savedBy: '' });
  expect(wordsOf({ wrong: '', savedBy: '' })).toBeUndefined();
});
