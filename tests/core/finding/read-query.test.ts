/** How the search box reads what is typed: measures by their looks, everything else as words. */
import { describe, expect, test } from 'vitest';
import { type AskedMeasure, readQuery } from '#core/finding/read-query.ts';
import { inches, millimetres, type Units } from '#shared/length.ts';

const INCHES: Units = { unit: 'in', step: 16 };
const MM: Units = { unit: 'mm' };
const SIXTEENTH = inches(1 / 16);

const measuresIn = (text: string, units: Units = INCHES): AskedMeasure[] =>
  readQuery(text, units).readings.flatMap(({ measures }) => measures);
const wordsOf = (text: string): string[] =>
  readQuery(text, INCHES).readings.flatMap(({ words }) => words.map(({ word }) => word));

describe('a measure', () => {
  test.each(['5 3/8', '5-3/8', '5⅜', '5.375', '13,6525 cm', '5 3/8"', '5³⁄₈″', '136.525 mm', '13.6525cm'])(
    'is read from %s',
    (text) => {
      expect(measuresIn(text)).toMatchObject([{ length: inches(5.375), other: null }]);
      expect(wordsOf(text)).toEqual([]);
    },
  );

  test.each([
    ['5 3/8', INCHES, SIXTEENTH],
    ['5 3/8', { unit: 'in', step: 32 }, inches(1 / 32)],
    ['5 3/8', MM, SIXTEENTH],
    ['136.5', MM, millimetres(1)],
    ['136.5 mm', INCHES, millimetres(1)],
  ] as const)('%s is near within the step of the ruler it is read on', (text, units, within) => {
    expect(measuresIn(text, units)[0]!.within).toBe(within);
  });

  test.each(['5 3/8 x 4', '5 3/8×4', '5.375 by 4', '5⅜ * 4 in'])('has two sides in %s', (text) => {
    expect(measuresIn(text)).toEqual([{ length: inches(5.375), other: inches(4), within: SIXTEENTH }]);
  });

  test('may lack its second side while it is typed', () => {
    expect(readQuery('5 3/8 x', INCHES).readings).toMatchObject([{ words: [], measures: [{ other: null }] }]);
  });

  test('may come twice, and with words', () => {
    const [reading] = readQuery('hare 9 1/16, 5 1/4 easy', INCHES).readings;
    expect(reading!.measures.map(({ length }) => length)).toEqual([inches(9.0625), inches(5.25)]);
    expect(reading!.words.map(({ word }) => word)).toEqual(['hare', 'easy']);
  });

  test('is no bare number beside words, and may be one alone', () => {
    expect(measuresIn('tray 7')).toEqual([]);
    expect(readQuery('7', INCHES).readings).toMatchObject([
      { measures: [{ length: inches(7) }], words: [] },
      { measures: [], words: [{ word: '7' }] },
    ]);
  });

  test('is asked about where the rest of the book asks too, and left as words', () => {
    expect(readQuery('136', INCHES)).toMatchObject({
      notes: [/136 mm if you mean/],
      readings: [{ measures: [] }],
    });
    expect(readQuery('1,234 in', INCHES).notes).toMatchObject([/two ways/]);
    expect(readQuery('A7', INCHES).notes).toMatchObject([/Which A7/]);
  });

  test('is the sheet of a name', () => {
    expect(measuresIn('A6')).toMatchObject([{ length: millimetres(105), other: millimetres(148) }]);
    expect(wordsOf('A6')).toEqual(['a6']);
  });

  test.each(['1/4/2026', 'K7', '2xy', '0 mm', '5/0', 'v1.2b', '3.1.4'])('is not read from %s', (text) => {
    expect(measuresIn(text)).toEqual([]);
  });
});

describe('words', () => {
  test('lose accents, capitals and whatever is no letter or digit', () => {
    expect(wordsOf('  Crêpe "AND" NEAR(hare*) : ^ö -don’t ')).toEqual([
      ...['crepe', 'and', 'near', 'hare', 'o', 'don', 't'],
    ]);
  });

  test('mean a kind, a print or a size beside themselves', () => {
    const [reading] = readQuery('mini striped offcuts', INCHES).readings;
    const [mini, striped, offcuts] = reading!.words;
    expect(mini!.facets.map(({ value }) => value)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8']);
    expect(striped!.facets).toEqual([{ name: 'print', value: 'stripes' }]);
    expect(offcuts!.kinds).toEqual(['offcut']);
    expect(wordsOf('enve')).toEqual(['enve']);
  });

  test('are no more than can be asked at once', () => {
    const many = readQuery(Array.from({ length: 90 }, (_, one) => `w${one}`).join(' '), INCHES);
    expect(many.readings[0]!.words).toHaveLength(10);
  });

  test.each(['', '   ', '""', '*', '()', '\u0301', '😀'])('are none in %j', (text) => {
    expect(readQuery(text, INCHES)).toMatchObject({ readings: [], notes: [] });
  });
});

test('a code is read as it is pencilled', () => {
  expect(readQuery(' c-c ', INCHES).code).toBe('CC');
  expect(readQuery('a longer line', INCHES).code).toBeUndefined();
  expect(readQuery('é', INCHES).code).toBeUndefined();
});
