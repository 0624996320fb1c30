/** From a piece of paper to the cards it holds: no smaller than could be, no larger than goes in. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardsHeld, largestCard } from '#core/envelope/holds.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { inches, length } from '#shared/length.ts';
import { WANTED_FITS } from '#shared/outcome.ts';
import { anyNotcher, SEED, thin, tool } from './cast.ts';

const piece = (width: number, height: number) => ({ width: inches(width), height: inches(height) });

describe('the largest card', () => {
  it('of a proportion goes in at the wanted fit, and one a graduation larger does not', () => {
    const anyPiece = fc.record({
      width: fc.integer({ min: inches(4), max: inches(14) }).map(length),
      height: fc.integer({ min: inches(4), max: inches(14) }).map(length),
    });
    fc.assert(
      fc.property(anyPiece, anyNotcher, fc.constantFrom(...WANTED_FITS), (given, notcher, fit) => {
        const like = piece(7, 5);
        const recipe = largestCard({ piece: given, notcher, fit, like })!;
        const { card, blank, starts } = recipe;
        expect(blank.width).toBeLessThanOrEqual(Math.min(given.width, given.height, notcher.largestSheet));
        expect(Math.abs(card.width * 5 - card.height * 7)).toBeLessThan(20);
        expect(recipe.fits).toMatchObject({ [tighter(recipe)]: fit });
        const larger = {
          ...card,
          width: length(card.width + 2 * notcher.graduation),
          height: length(card.height + 2 * notcher.graduation),
        };
        for (let start: number = notcher.graduation; start < blank.width; start += notcher.graduation) {
          const p = start + notcher.zeroOffset;
          if (p <= notcher.inset + 1 || p >= blank.width - notcher.inset - 1) continue;
          const least = Math.min(
            Math.floor((blank.width - p - notcher.inset) * Math.SQRT2) - larger.width - larger.bulk,
            Math.floor((p - notcher.inset) * Math.SQRT2) - larger.height - larger.bulk,
          );
          expect(least).toBeLessThan(Math.min(recipe.clearance.width, recipe.clearance.height));
        }
        expect(tryMeasures({ card, notcher, square: blank.width, start: starts[0] }).pocket).toEqual(
          recipe.pocket,
        );
      }),
      { ...SEED, numRuns: 100 },
    );
  });

  it('of any proportion is about square', () => {
    const { card } = largestCard({ piece: piece(12, 12), notcher: tool() })!;
    expect(Math.abs(card.width - card.height)).toBeLessThan(inches(1 / 8));
  });

  it('is none on a scrap', () => {
    expect(largestCard({ piece: piece(1, 12), notcher: tool() })).toBeUndefined();
    expect(largestCard({ piece: piece(0.01, 12), notcher: tool() })).toBeUndefined();
  });

  const tighter = ({ clearance }: { clearance: { width: number; height: number } }) =>
    clearance.width < clearance.height ? 'width' : 'height';
});

describe('the maker’s own cards', () => {
  const cards = [thin(5.875, 3), thin(4, 2.75), thin(7, 5), thin(3, 5.875)];

  it('are told that find an envelope in the piece, each with its recipe', () => {
    const held = cardsHeld(cards, { piece: piece(8, 10), notcher: tool() });
    expect(held.map(({ card }) => card)).toEqual([cards[0], cards[1], cards[3]]);
    for (const { recipe } of held) {
      expect(recipe.fit).toBe('easy');
      expect(recipe.blank.width).toBeLessThanOrEqual(inches(8));
      expect(recipe.notcher).toEqual(tool());
    }
  });

  it('grow fewer as the fit grows looser or the tool smaller, none on a scrap', () => {
    const count = (fit: 'easy' | 'loose', largestSheet = inches(12)) =>
      cardsHeld(cards, { piece: piece(7.5, 7.5), notcher: tool(1 / 16, { largestSheet }), fit }).length;
    expect(count('easy')).toBe(3);
    expect(count('loose')).toBe(1);
    expect(count('easy', inches(6))).toBe(1);
    expect(cardsHeld(cards, { piece: piece(0.05, 8), notcher: tool() })).toEqual([]);
  });
});
