/** What is marked in a text, and which part of it is shown. */
import { describe, expect, test } from 'vitest';
import { excerpt, mark } from '#core/finding/mark.ts';

const marked = (text: string, ...words: string[]): string =>
  mark(text, words)
    .map((one) => (one.marked ? `[${one.text}]` : one.text))
    .join('');

describe('mark', () => {
  test.each([
    ['Crêpe and crepes', 'crepe', '[Crêpe] and [crepes]'],
    ['A hare, a HARE', 'hare', 'A [hare], a [HARE]'],
    ['don’t', 't', 'don’[t]'],
    ['e\u0301tude', 'etu', '[e\u0301tude]'],
    ['nothing', 'hare', 'nothing'],
  ])('%s for %s', (text, word, expected) => {
    expect(marked(text, word)).toBe(expected);
  });

  test('gives the text back whole', () => {
    const text = '<b>Hare</b> & “fern”\nand more';
    expect(
      mark(text, ['hare', 'b'])
        .map((one) => one.text)
        .join(''),
    ).toBe(text);
    expect(mark('', ['a'])).toEqual([]);
  });
});

describe('excerpt', () => {
  test('begins a little before the first word', () => {
    const text = `${'plain words '.repeat(30)}the hare sat there ${'and more '.repeat(30)}`;
    const shown = excerpt(text, ['hare']);
    expect(shown).toMatch(/^… .{10,50}hare sat there .* …$/);
    expect(shown.length).toBeLessThan(180);
  });

  test('is all of a short text', () => {
    expect(excerpt('The hare sat.', ['sat'])).toBe('The hare sat.');
  });
});
