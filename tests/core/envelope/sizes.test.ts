/** Holds the standard sizes against the standards' own tables, size charts, and a general PDF library's page sizes. */
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { CARDS, ENVELOPES, isoSize, type Series, SHEETS } from '#core/envelope/sizes.ts';
import { inches, millimetres, subtract, toMillimetres } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';

const inMillimetres = ({ width, height }: Size): number[] => [toMillimetres(width), toMillimetres(height)];
const named = <T extends { name: string }>(name: string, among: readonly T[]): T =>
  among.find((one) => one.name === name)!;

describe('ISO sizes', () => {
  // ISO 216:2007 (A, B) and ISO 269:1985 (C).
  test.each<[Series, number, number, number]>([
    ['A', 4, 210, 297],
    ['A', 5, 148, 210],
    ['A', 6, 105, 148],
    ['A', 7, 74, 105],
    ['B', 4, 250, 353],
    ['B', 5, 176, 250],
    ['B', 6, 125, 176],
    ['C', 4, 229, 324],
    ['C', 5, 162, 229],
    ['C', 6, 114, 162],
    ['C', 7, 81, 114],
  ])('%s%d is %d × %d mm', (series, number, width, height) => {
    expect(inMillimetres(isoSize(series, number))).toEqual([width, height]);
  });

  // pdfkit's own table of page sizes, in points to two decimals: an npm library that knows nothing of this project.
  test.each(
    (['A', 'B', 'C'] as const).flatMap((series) =>
      Array.from({ length: 11 }, (_, number) => `${series}${number}`),
    ),
  )('%s agrees with pdfkit', (name) => {
    const { page } = new PDFDocument({ size: name });
    const theirs = [page.width, page.height].map((points) => Math.round((points / 72) * 25.4));
    expect(inMillimetres(isoSize(name[0] as Series, Number(name.slice(1))))).toEqual(theirs);
  });

  test('DL takes a third of A4 with 11 and 10 mm to spare, C6 an A6 with 9 and 14', () => {
    // Sums of ISO 216:2007 and ISO 269:1985.
    const spare = (card: string, envelope: string): number[] => {
      const [inner, outer] = [named(card, CARDS), named(envelope, ENVELOPES)];
      return [subtract(outer.width, inner.width), subtract(outer.height, inner.height)].map(toMillimetres);
    };
    expect(spare('third of A4', 'ISO DL')).toEqual([11, 10]);
    expect(spare('ISO A6', 'ISO C6')).toEqual([9, 14]);
    expect(named('third of A4', CARDS).width * 3).toBe(isoSize('A', 4).height);
  });

  test.each([-1, 11, 1.5])('there is no A%d', (number) => {
    expect(() => isoSize('A', number)).toThrow('invalid ISO size');
  });
});

describe('North American sizes', () => {
  // Envelope makers' and printers' size charts: clearance in inches, short side and long side.
  test.each([
    ['A1', 'A1', 1 / 8, 1 / 4],
    ['A2', 'A2', 1 / 4, 1 / 4],
    ['A2', 'half-letter', 1 / 8, 1 / 4],
    ['A6', 'A6', 1 / 4, 1 / 4],
    ['A7', 'A7', 1 / 4, 1 / 4],
    ['A8', 'A8', 1 / 4, 1 / 4],
    ['A9', 'A9', 1 / 4, 1 / 4],
    ['A10', 'A10', 1 / 4, 1 / 4],
    ['slimline', 'slimline', 1 / 4, 1 / 4],
    ['booklet', 'booklet', 1 / 4, 1 / 2],
  ])('%s leaves the %s card %d and %d in', (envelope, card, short, long) => {
    const [outer, inner] = [named(envelope, ENVELOPES), named(card, CARDS)];
    expect(outer.cards).toContain(card);
    expect(subtract(outer.width, inner.width)).toBe(inches(short));
    expect(subtract(outer.height, inner.height)).toBe(inches(long));
  });

  // Envelope makers' glossaries and PWG 5101.1's media names.
  test.each([
    ['#6¾', 3.625, 6.5],
    ['#7¾', 3.875, 7.5],
    ['#9', 3.875, 8.875],
    ['#10', 4.125, 9.5],
    ['#11', 4.5, 10.375],
    ['#12', 4.75, 11],
    ['#14', 5, 11.5],
  ])('%s is %d × %d in', (name, width, height) => {
    expect(named(name, ENVELOPES)).toMatchObject({ width: inches(width), height: inches(height) });
  });

  test.each(['Letter', 'Legal', 'Tabloid'])('%s agrees with pdfkit', (name) => {
    const { page } = new PDFDocument({ size: name.toUpperCase() });
    expect(named(name, SHEETS)).toMatchObject({
      width: inches(page.width / 72),
      height: inches(page.height / 72),
    });
  });
});

describe('the lists', () => {
  test('have no name twice and the shorter side first', () => {
    for (const list of [CARDS, ENVELOPES, SHEETS]) {
      expect(new Set(list.map((one) => one.name)).size).toBe(list.length);
      for (const one of list) expect(one.width).toBeLessThanOrEqual(one.height);
    }
  });

  test('each envelope’s cards are in the list and go in', () => {
    for (const envelope of ENVELOPES) {
      for (const card of envelope.cards.map((name) => named(name, CARDS))) {
        expect(envelope.width - card.width).toBeGreaterThanOrEqual(millimetres(3));
        expect(envelope.height - card.height).toBeGreaterThanOrEqual(millimetres(3));
      }
    }
  });
});
