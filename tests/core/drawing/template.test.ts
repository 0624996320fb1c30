/** Checks templates and their tiling against the fold's own shapes and by laws over many cards, tools and papers. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { envelopeTemplates, partTemplate, type Template } from '#core/drawing/template.ts';
import { HEAD, MARGIN, OVERLAP, PAPERS, tilingOf } from '#core/drawing/tiling.ts';
import { finishFlaps } from '#core/envelope/finish.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope, tryMeasures } from '#core/envelope/recipes.ts';
import { distance, type Point } from '#core/geometry/point.ts';
import { area, edges, totalArea } from '#core/geometry/polygon.ts';
import { cardBase } from '#core/sets/base.ts';
import { notchedPair } from '#core/sets/notches.ts';
import { tag } from '#core/sets/tag.ts';
import { inches, millimetres, type Units } from '#shared/length.ts';
import { anyCard, anyNotcher, thin, tool } from '#tests/core/envelope/cast.ts';
import { rect, sound } from '#tests/support/checked.ts';

const INCHES: Units = { unit: 'in', step: 16 };

const anyRecipe: fc.Arbitrary<Recipe> = fc
  .record({ card: anyCard, notcher: anyNotcher, which: fc.nat() })
  .map(({ card, notcher, which }) => ({ found: solveEnvelope({ card, notcher }), which }))
  .filter(({ found }) => found.length > 0)
  .map(({ found, which }) => found[which % found.length]!);

const CASES = fc.sample(anyRecipe, { seed: 4, numRuns: 40 }).map((recipe) => ({
  layouts: foldOf(recipe).flat(recipe),
  templates: envelopeTemplates(recipe, INCHES),
}));

const extent = (polygon: readonly Point[], along: 'x' | 'y'): [number, number] => {
  const values = polygon.map((at) => at[along]);
  return [Math.min(...values), Math.max(...values)];
};

const textsOf = ({ labels }: Template): string[] => labels.map(({ text }) => text);

describe('an envelope’s templates', () => {
  it('cut out exactly the pocket and its finished flaps, in one line from corner to corner', () => {
    for (const { layouts, templates } of CASES) {
      templates.forEach((template, index) => {
        const { pocket, flaps } = layouts[index]!;
        const paper = totalArea([pocket, ...flaps.map(({ shape }) => shape)]);
        expect(template.cuts).toHaveLength(1);
        expect(area(template.cuts[0]!) / paper).toBeCloseTo(1, 5);
        expect(extent(template.cuts[0]!, 'x')).toEqual([0, template.width]);
        expect(extent(template.cuts[0]!, 'y')).toEqual([0, template.height]);
      });
    }
  });

  it('have no cut too short for a blade to see', () => {
    for (const { templates } of CASES) {
      for (const { cuts } of templates) {
        const shortest = Math.min(...edges(cuts[0]!).map(({ from, to }) => distance(from, to)));
        expect(shortest).toBeGreaterThanOrEqual(100);
      }
    }
  });

  it('end each score on the cut line, and name its place in the order', () => {
    for (const { templates } of CASES) {
      for (const template of templates) {
        for (const { from, to } of template.scores) {
          for (const end of [from, to]) expect(offLine(end, template)).toBeLessThan(millimetres(0.1));
        }
        expect(textsOf(template).filter((text) => text.startsWith('score '))).toHaveLength(
          template.scores.length,
        );
      }
    }
  });

  it('keep every word inside the cut line’s room', () => {
    for (const { templates } of CASES) {
      for (const { labels, width, height } of templates) {
        for (const { at } of labels) {
          expect(at.x > 0 && at.y > 0 && at.x < width && at.y < height).toBe(true);
        }
      }
    }
  });

  // By plane geometry the corner of the pocket lies the start along the edge and the inset in from it.
  const known = tryMeasures({
    card: thin(5.875, 3),
    notcher: tool(1 / 8),
    square: inches(7.5),
    start: inches(2.75),
  });

  it('keep the square’s size, its notches in it, and its own trims', () => {
    const [template] = envelopeTemplates(finishFlaps(known, {}), INCHES);
    const [cut] = template!.cuts;
    expect(template!.width).toBe(inches(7.5));
    expect(template!.height).toBe(inches(7.5));
    const corner = { x: inches(2.75), y: inches(7 / 16) };
    expect(cut!.some((at) => distance(at, corner) < 2)).toBe(true);

    const own = finishFlaps(known, { D: { shape: 'straight', depth: inches(2.5) } });
    const [trimmed] = envelopeTemplates(own, INCHES);
    expect(area(trimmed!.cuts[0]!)).toBeLessThan(area(cut!));
  });

  it('say which side is up and which card it is for', () => {
    const [template] = envelopeTemplates(known, INCHES);
    expect(template!.words).toContain('5⅞ × 3″');
    expect(textsOf(template!)).toEqual(expect.arrayContaining(['inside up', 'A', 'B', 'C', 'D', 'glue']));
  });
});

describe('a part’s template', () => {
  it('is its rectangle with its scores', () => {
    const base = sound(cardBase({ card: rect(4.25, 5.5), fold: 'left', copies: 1 }));
    const template = partTemplate(base, INCHES);
    expect([template.width, template.height]).toEqual([inches(8.5), inches(5.5)]);
    expect(template.scores).toEqual([
      { from: { x: inches(4.25), y: 0 }, to: { x: inches(4.25), y: inches(5.5) } },
    ]);
    expect(textsOf(template)).toContain('grain runs up and down');
  });

  it('has its notches cut at their measure', () => {
    const wish = {
      panel: rect(5.25, 2.25),
      base: rect(5.5, 2.5),
      edges: 'top and bottom',
      at: inches(1 + 1 / 8),
      ribbon: inches(1 / 4),
      copies: 1,
    } as const;
    const { base } = sound(notchedPair(wish));
    const [cut] = partTemplate(base, INCHES).cuts;
    const floor = cut!.filter(({ y }) => y > 0 && y < inches(0.5)).map(({ x }) => x);
    // Common practice, no source: a panel notched at 1⅛ sits on a base notched at 1¼, the margin of ⅛ added.
    expect((Math.min(...floor) + Math.max(...floor)) / 2).toBe(inches(1 + 1 / 4));
  });

  it('has its hole cut round, to a hundredth of a millimetre', () => {
    const hanging = sound(tag({ size: rect(2, 3.5), corner: inches(1 / 4), hole: inches(1 / 4), copies: 1 }));
    const [outline, hole] = partTemplate(hanging, INCHES).cuts;
    expect(outline).toHaveLength(6);
    const radius = inches(1 / 8);
    const away = edges(hole!).map(({ from, to }) =>
      distance({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, hanging.hole!.middle),
    );
    expect(radius - Math.min(...away)).toBeLessThan(millimetres(0.01));
  });
});

describe('tiling', () => {
  const anySize = fc.record({
    width: fc.integer({ min: 1, max: inches(40) }),
    height: fc.integer({ min: 1, max: inches(40) }),
  });
  const anyPaper = fc.constantFrom(...Object.values(PAPERS));
  const overAll = (check: Parameters<typeof fc.property<[Size, Paper]>>[2]) =>
    fc.assert(fc.property(anySize, anyPaper, check), { seed: 12, numRuns: 300 });

  it('covers the whole piece, neighbours sharing the overlap that the page states', () => {
    overAll((piece, paper) => {
      const { tiles, columns, rows } = tilingOf(piece, paper);
      expect(tiles).toHaveLength(columns * rows);
      expect(Math.abs(tiles[0]!.x) + Math.abs(tiles[0]!.y)).toBe(0);
      const last = tiles.at(-1)!;
      expect(last.x + last.width).toBeCloseTo(piece.width, 3);
      expect(last.y + last.height).toBeCloseTo(piece.height, 3);
      for (const tile of tiles) {
        const right = tiles.find(({ column, row }) => column === tile.column + 1 && row === tile.row);
        const below = tiles.find(({ column, row }) => column === tile.column && row === tile.row + 1);
        if (right) expect(tile.x + tile.width - right.x).toBeCloseTo(OVERLAP, 3);
        if (below) expect(tile.y + tile.height - below.y).toBeCloseTo(OVERLAP, 3);
      }
    });
  });

  it('keeps every tile off the margins and the head', () => {
    overAll((piece, paper) => {
      const { tiles, page } = tilingOf(piece, paper);
      for (const { onPage, width, height } of tiles) {
        expect(onPage.x).toBeGreaterThanOrEqual(MARGIN - 2);
        expect(onPage.y).toBeGreaterThanOrEqual(MARGIN + HEAD - 2);
        expect(onPage.x + width).toBeLessThanOrEqual(page.width - MARGIN + 2);
        expect(onPage.y + height).toBeLessThanOrEqual(page.height - MARGIN + 2);
      }
    });
  });

  it('puts two marks on each shared edge, each whole on both tiles', () => {
    overAll((piece, paper) => {
      const { tiles, marks, columns, rows } = tilingOf(piece, paper);
      expect(marks).toHaveLength(2 * ((columns - 1) * rows + columns * (rows - 1)));
      for (const { at, tiles: both } of marks) {
        for (const { x, y, width, height } of both.map((index) => tiles[index]!)) {
          expect(at.x > x && at.x < x + width && at.y > y && at.y < y + height).toBe(true);
        }
      }
    });
  });

  it('leaves whole what fits, and turns the paper where that saves sheets', () => {
    expect(tilingOf(rect(8, 8), PAPERS.letter).tiles).toHaveLength(1);
    expect(tilingOf(rect(8.25, 8.25), PAPERS.letter).tiles).toHaveLength(2);
    const long = tilingOf(rect(10.5, 6), PAPERS.letter);
    expect(long.tiles).toHaveLength(1);
    expect(long.page.width).toBe(inches(11));
    expect(tilingOf(rect(10.5, 10.5), PAPERS['12x12']).tiles).toHaveLength(1);
    expect(() => tilingOf({ width: 0, height: 5 }, PAPERS.a4)).toThrow(/invalid piece/);
  });
});

interface Size {
  readonly width: number;
  readonly height: number;
}
type Paper = (typeof PAPERS)[keyof typeof PAPERS];

/** How far a point lies from the cut line. */
function offLine(at: Point, { cuts }: Template): number {
  return Math.min(
    ...edges(cuts[0]!).map(({ from, to }) => {
      const along = { x: to.x - from.x, y: to.y - from.y };
      const share = ((at.x - from.x) * along.x + (at.y - from.y) * along.y) / (along.x ** 2 + along.y ** 2);
      const foot = Math.min(1, Math.max(0, share));
      return distance(at, { x: from.x + foot * along.x, y: from.y + foot * along.y });
    }),
  );
}
