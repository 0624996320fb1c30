/** What is only half typed against what no further key will mend, for a length and for a size. */
import { describe, expect, test } from 'vitest';
import { readLength, type Units } from '#shared/length.ts';
import { readSize } from '#shared/size-typed.ts';
import { canGoOn } from '#shared/unfinished.ts';

const INCHES: Units = { unit: 'in', step: 16 };
const MILLIMETRES: Units = { unit: 'mm' };

describe.each([INCHES, MILLIMETRES])('both sides, in $unit', (units) => {
  const read = (text: string) => readSize(text, units);

  test.each(['148 x 105 mm', '4 3/8 in x 6 1/8 in', 'half Letter', '13,3 cm by 10 cm'])(
    'each beginning of “%s” can go on',
    (whole) => {
      for (let end = 0; end <= whole.length; end += 1) {
        const typed = whole.slice(0, end);
        expect([typed, canGoOn(typed, read)]).toEqual([typed, true]);
      }
    },
  );

  test.each(['lots', '5 x lots', '5 x 7 x 9', '-5', 'A6 x', '5 & 7'])('“%s” can’t', (typed) => {
    expect(canGoOn(typed, read)).toBe(false);
  });
});

test('one side: a fraction can go on, a second number can’t', () => {
  const read = (text: string) => readLength(text, INCHES);
  for (const typed of ['', '1/', '1 1', '5.', '12 m'])
    expect([typed, canGoOn(typed, read)]).toEqual([typed, true]);
  for (const typed of ['wee', '1/0/', '-']) expect([typed, canGoOn(typed, read)]).toEqual([typed, false]);
});
