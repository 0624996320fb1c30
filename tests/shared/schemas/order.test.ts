/** An order from JSON is read exactly, or refused with every problem named. */
import { describe, expect, it } from 'vitest';
import { inches, millimetres } from '#shared/length.ts';
import { readOrder } from '#shared/schemas/order.ts';

const sheet = { id: 'pad', width: 192, height: 192, kind: 'sheet', copies: 3 };
const tag = { id: 'tag', width: 32, height: 56, copies: 12 };

const problemsOf = (json: unknown): string[] => {
  const read = readOrder(json);
  return read.ok ? [] : read.problems.map(({ field, message }) => `${field}: ${message}`);
};

describe('readOrder', () => {
  it('reads whole numbers as they are', () => {
    const options = { timeMs: 500, seed: 3, longestCut: 192, keepAtLeast: 8 };
    const read = readOrder({
      pieces: [sheet],
      parts: [
        { ...tag, upright: true, designs: ['rose'], match: 'set', oneDesign: true, pin: { edge: 'top' } },
      ],
      options,
    });
    expect(read).toEqual({
      ok: true,
      value: {
        order: {
          parts: [
            { ...tag, upright: true, designs: ['rose'], match: 'set', oneDesign: true, pin: { edge: 'top' } },
          ],
        },
        pieces: [sheet],
        options,
        unit: 'given',
        rounded: [],
      },
    });
  });

  it('reads inches and millimetres exactly', () => {
    const read = readOrder({
      pieces: [{ ...sheet, width: '12 in', height: '12"' }],
      parts: [{ ...tag, width: '4 7/8 in', height: '6⅛″' }],
    });
    expect(read.ok && read.value.unit).toBe('in');
    expect(read.ok && read.value.order.parts[0]).toMatchObject({
      width: inches(4.875),
      height: inches(6.125),
    });
    const mixed = readOrder({
      pieces: [{ ...sheet, width: '12 in', height: '12 in' }],
      parts: [{ ...tag, width: '133 mm', height: '13,3 cm' }],
    });
    expect(mixed.ok && mixed.value.unit).toBe('mm');
    expect(mixed.ok && mixed.value.order.parts[0]).toMatchObject({
      width: millimetres(133),
      height: millimetres(133),
    });
  });

  it('tells what it rounded', () => {
    const read = readOrder({
      pieces: [{ ...sheet, width: '12 in', height: '1/3 in' }],
      parts: [{ ...tag, width: '1 in', height: '1 in' }],
    });
    expect(read.ok && read.value.rounded).toEqual(['1/3 in']);
  });

  it.each<[string, unknown, RegExp]>([
    ['nothing', null, /object with pieces and parts/],
    ['a list', [], /object with pieces and parts/],
    ['no pieces', { pieces: [], parts: [tag] }, /There is no paper/],
    ['no parts', { pieces: [sheet], parts: [] }, /There is nothing to cut/],
    [
      'no copies',
      { pieces: [sheet], parts: [{ ...tag, copies: 0 }] },
      /parts\[0\]\.copies: This has to be a whole number from 1/,
    ],
    [
      'ten thousand copies',
      { pieces: [sheet], parts: [{ ...tag, copies: 10_000 }] },
      /parts\[0\]\.copies: This has to be a whole number from 1 to 2000/,
    ],
    [
      'too many in all',
      {
        pieces: [sheet],
        parts: [
          { ...tag, copies: 1500 },
          { ...tag, id: 'b', copies: 1500 },
        ],
      },
      /3000 parts in all/,
    ],
    [
      'thousands of pieces',
      { pieces: Array.from({ length: 5000 }, (_, id) => ({ ...sheet, id: `${id}` })), parts: [tag] },
      /At most 2000 kinds of piece/,
    ],
    [
      'NaN',
      { pieces: [sheet], parts: [{ ...tag, width: Number.NaN }] },
      /parts\[0\]\.width: This has to be a whole number/,
    ],
    [
      'a fraction',
      { pieces: [sheet], parts: [{ ...tag, width: 1.5 }] },
      /parts\[0\]\.width: This has to be a whole number/,
    ],
    [
      'a negative length',
      { pieces: [sheet], parts: [{ ...tag, width: -3 }] },
      /parts\[0\]\.width: This has to be a whole number/,
    ],
    [
      'words for a length',
      {
        pieces: [{ ...sheet, width: '12 in', height: 'wide in' }],
        parts: [{ ...tag, width: '1 in', height: '1 in' }],
      },
      /isn’t a length I can read/,
    ],
    [
      'a length without its unit',
      {
        pieces: [{ ...sheet, width: '12 in', height: '12' }],
        parts: [{ ...tag, width: '1 in', height: '1 in' }],
      },
      /with its unit/,
    ],
    [
      'no length at all',
      {
        pieces: [{ ...sheet, width: '12 in', height: '0 in' }],
        parts: [{ ...tag, width: '1 in', height: '1 in' }],
      },
      /more than zero/,
    ],
    ['numbers and text', { pieces: [sheet], parts: [{ ...tag, width: '1 in' }] }, /not both/],
    ['an unknown kind', { pieces: [{ ...sheet, kind: 'roll' }], parts: [tag] }, /"sheet" or "offcut"/],
    ['twins', { pieces: [sheet, sheet], parts: [tag, tag] }, /“pad” is used twice[\s\S]*“tag” is used twice/],
    ['a pin that is none', { pieces: [sheet], parts: [{ ...tag, pin: { edge: 'middle' } }] }, /A pin is/],
    ['a time limit without end', { pieces: [sheet], parts: [tag], options: { timeMs: 1e9 } }, /time limit/],
  ])('refuses %s', (_, json, message) => {
    expect(problemsOf(json).join('\n')).toMatch(message);
  });

  it('names all problems at once, of shape and of length', () => {
    const problems = problemsOf({
      pieces: [{ ...sheet, kind: 'roll', width: -1 }],
      parts: [
        { ...tag, copies: 0 },
        { ...tag, height: 2.5 },
      ],
    });
    expect(problems.map((problem) => problem.split(':')[0]).sort()).toEqual(
      ['pieces[0].kind', 'parts[0].copies', 'parts[1].height', 'pieces[0].width', 'parts[1].id'].sort(),
    );
  });
});
