/**
 * What a field for a size understands and what it asks back. Sheets by name are held to pdfkit's own table of paper
 * sizes (in points), DL to ISO 269:1985 as published: 110 × 220 mm.
 */
import fc from 'fast-check';
import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { inches, millimetres, toMillimetres, type Units } from '#shared/length.ts';
import { readSide, readSize } from '#shared/size-typed.ts';

const IN: Units = { unit: 'in', step: 8 };
const MM: Units = { unit: 'mm' };

function sides(text: string, units: Units = IN): [number, number] {
  const read = readSize(text, units, 'size');
  if (!read.ok) throw new Error(`${text}: ${read.problems[0]!.message}`);
  return [read.value.width, read.value.height];
}

function refusals(text: string, units: Units = IN): string[] {
  const read = readSize(text, units, 'size');
  if (read.ok) throw new Error(`${text} was read as ${read.value.width} × ${read.value.height}`);
  for (const { field } of read.problems) expect(field).toBe('size');
  return read.problems.map(({ message }) => message);
}

function sideRefusal(text: string, units: Units = IN): string {
  const read = readSide(text, units, 'width');
  if (read.ok) throw new Error(`${text} was read as ${read.value.length}`);
  expect(read.problems).toMatchObject([{ field: 'width' }]);
  return read.problems[0]!.message;
}

describe('both sides in one field', () => {
  it.each([
    ['4 3/8 x 6 1/8', 4.375, 6.125],
    ['4 3/8x6 1/8', 4.375, 6.125],
    ['4⅜×6⅛″', 4.375, 6.125],
    ['4-3/8 X 6–1/8', 4.375, 6.125],
    ['4 3/8" x 6 1/8"', 4.375, 6.125],
    ['5 by 7', 5, 7],
    ['5by7', 5, 7],
    ['5 BY 7 in', 5, 7],
    ['5 in x 7', 5, 7],
    ['  5   *  7  ', 5, 7],
    ['60 in x 20 in', 60, 20],
  ])('reads %j as %f by %f in', (text, width, height) => {
    expect(sides(text)).toEqual([inches(width), inches(height)]);
  });

  it.each([
    ['148 x 105 mm', 148, 105],
    ['148 mm x 105', 148, 105],
    ['5,5 × 8 cm', 55, 80],
    ['14.8 x 10.5cm', 148, 105],
    ['100 mm x 5 in', 100, 127],
  ])('reads %j as %f by %f mm, whatever the reader’s own unit', (text, width, height) => {
    for (const units of [IN, MM])
      expect(sides(text, units)).toEqual([millimetres(width), millimetres(height)]);
  });

  it('takes bare sides in the reader’s own unit, and tells of rounding', () => {
    expect(sides('148 x 105', MM)).toEqual([millimetres(148), millimetres(105)]);
    expect(readSize('1/3 x 7', IN)).toMatchObject({ ok: true, value: { rounded: true } });
    expect(readSize('4 3/8 x 7', IN)).toMatchObject({ ok: true, value: { rounded: false } });
  });

  it('names every problem of both sides', () => {
    expect(refusals('4 9/8 x seven')).toEqual([
      expect.stringMatching(/^First side: “4 9\/8” isn’t a length/),
      expect.stringMatching(/^Second side: “seven” isn’t a length/),
    ]);
  });

  it.each([
    ['', /^Type the size/],
    ['5', /one side only/],
    ['5 x', /^Second side: Type a length/],
    ['x 5', /^First side: Type a length/],
    ['5 x 7 x 1/8', /more than two/],
    ['0 x 7', /^First side: this has to be more than zero/],
    ['5 x -7', /^Second side: A length can’t be negative/],
    ['101 in x 7', /^First side: that is more than 100″/],
    ['5 1/2 x 7 mm', /^First side: Fractions/],
    ['postcard', /one side only/],
    ['148 x 105', /148 x 105 inches\? Type 148 x 105 mm/],
    ['148 x 5', /inches\?/],
  ])('refuses %j, saying why', (text, why) => {
    expect(refusals(text)).toEqual([expect.stringMatching(why)]);
  });

  it('takes time in line with what was typed', () => {
    for (const units of [IN, MM]) {
      for (const piece of ['⁴', '½', '1 x ', ' ', '4 7/8', 'by', '"', '–', '1,111']) {
        const started = performance.now();
        const long = piece.repeat(80_000);
        expect(readSize(`1${long}1`, units).ok).toBe(false);
        expect(readSide(`1${long}1`, units).ok).toBe(false);
        expect(performance.now() - started).toBeLessThan(250);
      }
    }
  });

  it('never throws, and reads sides above zero or says what is wrong', () => {
    const soup = fc.string({ unit: fc.constantFrom(...'0123456789 ,./-–x×by⅞¼⁄³₁″mcinACDL'), maxLength: 20 });
    fc.assert(
      fc.property(fc.constantFrom(IN, MM), fc.oneof(soup, fc.string({ unit: 'binary' })), (units, text) => {
        const read = readSize(text, units);
        if (read.ok) expect(Math.min(read.value.width, read.value.height)).toBeGreaterThan(0);
        else for (const { message } of read.problems) expect(message.length).toBeGreaterThan(10);
      }),
      { seed: 20261130, numRuns: 3_000 },
    );
  });
});

describe('sizes by name', () => {
  it.each([
    'A3',
    'A4',
    'A5',
    'A6',
    'A7',
    'A8',
    'B4',
    'B5',
    'B6',
    'C4',
    'C5',
    'C6',
    'C7',
    'Letter',
    'Legal',
    'Tabloid',
  ])('%s is what pdfkit has it to be', (name) => {
    const { page } = new PDFDocument({ size: name.toUpperCase() });
    const read = sides(name, MM).map((side) => toMillimetres(side));
    expect(read[0]).toBeCloseTo((page.width / 72) * 25.4, 1);
    expect(read[1]).toBeCloseTo((page.height / 72) * 25.4, 1);
  });

  it('knows DL (ISO 269) and half a Letter sheet, in any case and spacing', () => {
    expect(sides(' dl ')).toEqual([millimetres(110), millimetres(220)]);
    expect(sides('Half-Letter')).toEqual([inches(5.5), inches(8.5)]);
    expect(sides('a 6')).toEqual([millimetres(105), millimetres(148)]);
    expect(readSize('a6', IN)).toMatchObject({ value: { name: 'A6' } });
  });

  it('asks where an envelope of that name is likelier', () => {
    // Envelope makers' size charts: a 5 × 7 in card goes in an A7 envelope, a 4¼ × 5½ in one in an A2.
    expect(refusals('A7')).toEqual([expect.stringMatching(/5 × 7″, an A7 sheet 74 × 105 mm/)]);
    expect(refusals('A2')).toEqual([expect.stringMatching(/A2 envelope is 4¼ × 5½″\. Type the sides/)]);
    expect(sides('A7', MM)).toEqual([millimetres(74), millimetres(105)]);
  });
});

describe('one side', () => {
  it('asks about bare numbers that are hardly inches', () => {
    expect(sideRefusal('140')).toBe(
      '140 inches? Type 140 mm if you mean millimetres, or 140 in if you do mean inches.',
    );
    expect(sideRefusal('88.9')).toMatch(/^88\.9 inches\? Type 88\.9 mm/);
    expect(readSide('140', MM)).toMatchObject({ value: { length: millimetres(140) } });
    expect(readSide('60 in', IN)).toMatchObject({ value: { length: inches(60) } });
    expect(readSide('49', IN)).toMatchObject({ value: { length: inches(49) } });
  });

  it('says what each side is where a name or both sides were typed', () => {
    expect(sideRefusal('A4')).toBe(
      'A4 has two sides. Type 210 mm for one side and 297 mm for the other, each in a field of its own.',
    );
    expect(sideRefusal('letter', MM)).toMatch(/Letter has two sides\. Type 215\.9 for one side and 279\.4/);
    expect(sideRefusal('C6')).toMatch(/114 mm .* 162 mm/);
    expect(sideRefusal('DL')).toMatch(/110 mm .* 220 mm/);
    expect(sideRefusal('A7')).toMatch(/^Which A7\?/);
    expect(sideRefusal('5 x 7')).toMatch(/^Those are both sides\. Type 5 for one side and 7 for the other/);
    expect(sideRefusal('four')).toMatch(/isn’t a length/);
  });
});
