/** Reads labels of paper packs as makers would type them. Knows no arithmetic beyond what it reads. */
import { describe, expect, test } from 'vitest';
import { printPaperWeight, readPaperWeight } from '#core/paper/read.ts';

describe('reading a paper weight', () => {
  test.each([
    ['216 g/m²', { unit: 'g/m²', amount: 216 }],
    ['216gsm', { unit: 'g/m²', amount: 216 }],
    ['120,5 g/m2', { unit: 'g/m²', amount: 120.5 }],
    ['80 lb cover', { unit: 'lb', amount: 80, grade: 'cover' }],
    ['80# Cover', { unit: 'lb', amount: 80, grade: 'cover' }],
    ['20 lbs writing', { unit: 'lb', amount: 20, grade: 'bond' }],
    ['60 lb. offset', { unit: 'lb', amount: 60, grade: 'text' }],
  ])('%s', (text, value) => {
    expect(readPaperWeight(text)).toEqual({ ok: true, value });
  });

  test('pounds alone could be two papers, and it says which', () => {
    const read = readPaperWeight('65 lb', 'weight');
    expect(read).toEqual({
      ok: false,
      problems: [
        {
          field: 'weight',
          message:
            'Say which grade: 65 lb text is 96 g/m², 65 lb cover 176. Others: bond, index, tag, bristol.',
        },
      ],
    });
  });

  test.each([
    '',
    'heavy',
    '-80 lb cover',
    '0 g/m²',
    '80',
    '216 g/m² cover',
    '80 lb velvet',
    '80 lb constructor',
    '5 g/m²',
    '3000 g/m²',
    '1e3 gsm',
    '<b>80</b>',
  ])('refuses “%s”', (text) => {
    expect(readPaperWeight(text).ok).toBe(false);
  });

  test('what is printed says both systems', () => {
    expect(printPaperWeight({ unit: 'lb', amount: 80, grade: 'cover' })).toBe('80 lb cover (216 g/m²)');
    expect(printPaperWeight({ unit: 'g/m²', amount: 160 })).toBe('160 g/m²');
  });
});
