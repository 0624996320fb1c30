/** Prints templates and measures the paper: bars, square, notch and overlap have to be right to a tenth of a millimetre. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { envelopeTemplates } from '#core/drawing/template.ts';
import { HEAD, MARGIN, PAPERS, type PaperName, tilingOf } from '#core/drawing/tiling.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { inches, toMillimetres, type Units } from '#shared/length.ts';
import { thin, tool } from '#tests/core/envelope/cast.ts';
import { canPrint, type Printed, printed } from '#tests/support/printed.ts';
import { templatePdf } from '#views/templates/pdf.ts';

const INCHES: Units = { unit: 'in', step: 16 };
const FONT = readFileSync(new URL('../../../views/assets/fonts/sans-400.woff', import.meta.url));
/** In millimetres. */
const TOLERANCE = 0.1;
const PAPER_NAMES = Object.keys(PAPERS) as PaperName[];

const template = (width: number, height: number, square: number, start: number) =>
  envelopeTemplates(
    tryMeasures({
      card: thin(width, height),
      notcher: tool(1 / 8),
      square: inches(square),
      start: inches(start),
    }),
    INCHES,
  );

const pdf = (templates: ReturnType<typeof template>, paper: PaperName, units = INCHES) =>
  templatePdf(templates, { paper: PAPERS[paper], units, font: FONT, at: new Date(0) });

const LONG = template(5.875, 3, 7.5, 2.75);
const HUGE = template(8.5, 5.5, 10 + 7 / 8, 4.25);

const near = (measured: number, expected: number): void =>
  expect(Math.abs(measured - expected)).toBeLessThanOrEqual(TOLERANCE);

const nearest = (all: number[], to: number): number =>
  all.reduce((best, one) => (Math.abs(one - to) < Math.abs(best - to) ? one : best));

/** Ticks of both bars, on a row a hair above each line: from the edge's margin on. */
function barsOf(page: Printed): number[] {
  const [margin, hair] = [toMillimetres(MARGIN), 0.7];
  return [5, 13].map((down) => {
    const ticks = page.row(margin + down - hair, 0, 110);
    expect(ticks).toHaveLength(2);
    return ticks[1]! - ticks[0]!;
  });
}

describe.skipIf(!canPrint)('on paper', () => {
  it.each(PAPER_NAMES)('both check bars are true on every page of %s', async (paper) => {
    const file = await pdf(HUGE, paper);
    const pages = tilingOf(HUGE[0]!, PAPERS[paper]).tiles.length;
    expect(pages).toBeGreaterThan(1);
    for (const page of [1, pages]) {
      const [millimetres, fourInches] = barsOf(printed(file, page, 30));
      near(millimetres!, 100);
      near(fourInches!, 101.6);
    }
  });

  it('the paper, the square’s sides and the first notch are as they were worked out', async () => {
    const page = printed(await pdf(LONG, 'letter'));
    near(page.width, 215.9);
    near(page.height, 279.4);
    const [tile] = tilingOf(LONG[0]!, PAPERS.letter).tiles;
    const { x, y } = tile!.onPage;
    const [left, top] = [toMillimetres(x), toMillimetres(y)];
    const below = toMillimetres(MARGIN + HEAD);
    const across = page.row(top + 40);
    near(across.at(-1)! - across[0]!, 190.5);
    const down = page.column(left + 30, below);
    near(down.at(-1)! - down[0]!, 190.5);

    const depth = 3;
    const [edge, ...sides] = page.row(top + depth, 0, left + 100);
    near((sides[0]! + sides[1]!) / 2 - edge!, 69.85);
    // Its far corner lies the inset of 7/16 in under the edge, so its sides are that much less the depth apart, twice.
    near(sides[1]! - sides[0]!, 2 * (11.1125 - depth));
  });

  it('a cut and the crosses in the overlap lie at the same places of the piece on both pages', async () => {
    const file = await pdf(HUGE, '12x12');
    const { tiles, marks } = tilingOf(HUGE[0]!, PAPERS['12x12']);
    const expected = [0, ...marks.map(({ at }) => toMillimetres(at.x)), 276.225];
    const above = toMillimetres(marks[0]!.at.y) - 2;
    for (const [index, { x, y, onPage }] of tiles.entries()) {
      const page = printed(file, index + 1);
      const lines = page.row(toMillimetres(onPage.y - y) + above);
      const onPiece = lines.map((at) => at - toMillimetres(onPage.x - x));
      for (const at of expected) near(nearest(onPiece, at), at);
    }
  });
});

describe('the file', () => {
  it('asks viewers to leave the size alone, embeds one small font, and says the same twice', async () => {
    const [one, other] = [await pdf(LONG, 'a4'), await pdf(LONG, 'a4')];
    const text = one.toString('latin1');
    expect(text.startsWith('%PDF-')).toBe(true);
    expect(text).toContain('/PrintScaling /None');
    expect(text.match(/\/FontFile2/g)).toHaveLength(1);
    expect(one.length).toBeLessThan(20_000);
    expect(other.equals(one)).toBe(true);
  });
});
