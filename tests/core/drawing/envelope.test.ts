/** Checks the pictures of an envelope over many cards and tools: labels apart and inside, every measure there. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelTroubles } from '#core/drawing/boxes.ts';
import type { Drawing } from '#core/drawing/drawing.ts';
import { flatDrawing } from '#core/drawing/flat.ts';
import { foldedDrawing } from '#core/drawing/folded.ts';
import { makingDrawing } from '#core/drawing/making.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe, Turning } from '#core/envelope/recipe.ts';
import { solveEnvelope, tryMeasures } from '#core/envelope/recipes.ts';
import { inches, printExact, printLength, type Units } from '#shared/length.ts';
import { printPocketSide } from '#shared/pocket.ts';

const TURNINGS: readonly Turning[] = ['clockwise', 'anticlockwise'];
const INCHES: Units = { unit: 'in', step: 16 };
const UNITS: readonly Units[] = [{ unit: 'in', step: 8 }, INCHES, { unit: 'in', step: 32 }, { unit: 'mm' }];

const NOTCHER = {
  inset: inches(7 / 16),
  zeroOffset: inches(1 / 16),
  graduation: inches(1 / 8),
  largestSheet: inches(12),
};

const eighths = (from: number, to: number) =>
  fc.integer({ min: from * 8, max: to * 8 }).map((n) => inches(n / 8));

/** Cards from a tag to the largest a 12 in tool takes, upright, long and square, on tools of any inset. */
const recipes: fc.Arbitrary<Recipe> = fc
  .record({
    width: eighths(1.5, 10),
    height: eighths(1.5, 10),
    inset: eighths(0, 1),
    which: fc.nat(),
  })
  .filter(({ width, height }) => width + height <= inches(15))
  .map(({ width, height, inset, which }) => {
    const card = { width, height, bulk: inches(1 / 32) };
    const found = solveEnvelope({ card, notcher: { ...NOTCHER, inset }, folds: ['diagonal'] });
    return found[which % found.length]!;
  });

const textsOf = (drawing: Drawing): string[] =>
  drawing.shapes.flatMap((shape) => (shape.kind === 'label' ? [shape.text] : []));

const overAll = (check: (recipe: Recipe, units: Units, turning: Turning) => void): void =>
  fc.assert(fc.property(recipes, fc.constantFrom(...UNITS), fc.constantFrom(...TURNINGS), check), {
    seed: 11,
    numRuns: 40,
  });

describe('the flat sheet', () => {
  it('keeps its labels apart and inside', () => {
    overAll((recipe, units, turning) => {
      for (const layout of foldOf(recipe).flat(recipe, turning)) {
        expect(labelTroubles(flatDrawing(recipe, layout, units))).toEqual([]);
      }
    });
  });

  it('carries every measure that is needed to make it', () => {
    overAll((recipe, units, turning) => {
      const [layout] = foldOf(recipe).flat(recipe, turning);
      const texts = textsOf(flatDrawing(recipe, layout!, units));
      const cut = [recipe.blank.width, recipe.starts[0]];
      expect(texts).toEqual(expect.arrayContaining(cut.map((one) => printExact(one, units))));
      const inside = [recipe.pocket.width, recipe.pocket.height];
      expect(texts).toEqual(expect.arrayContaining(inside.map((one) => printPocketSide(one, units))));
      expect(texts).toEqual(expect.arrayContaining(['start', 'A', 'B', 'C', 'D', '1', '2', '3', '4']));
      const trimmed = recipe.flaps.flatMap(({ finish }) => ('depth' in finish ? [finish.depth] : []));
      for (const depth of trimmed) expect(texts).toContain(printExact(depth, units));
    });
  });

  it.each([
    [0, true],
    [1 / 32, false],
  ])('names the twin only where both starts add up to the square: zero offset %f', (offset, named) => {
    const notcher = { ...NOTCHER, zeroOffset: inches(offset) };
    const card = { width: inches(5.75), height: inches(4.25), bulk: inches(1 / 32) };
    const [recipe] = solveEnvelope({ card, notcher, folds: ['diagonal'] });
    const [layout] = foldOf(recipe!).flat(recipe!, 'clockwise');
    const texts = textsOf(flatDrawing(recipe!, layout!, INCHES));
    expect(texts).toContain(printExact(recipe!.starts[0], INCHES));
    expect(texts.includes(printExact(recipe!.starts[1], INCHES))).toBe(named);
  });
});

describe('the folded envelope', () => {
  it('keeps its labels apart and inside, with both gaps and both sides on it', () => {
    overAll((recipe, units) => {
      for (const face of ['front', 'back'] as const) {
        const drawing = foldedDrawing(recipe, foldOf(recipe).folded(recipe), face, units);
        expect(labelTroubles(drawing)).toEqual([]);
        const { clearance, pocket } = recipe;
        const gaps = [clearance.width, clearance.height].map((gap) => `gap ${printLength(gap, units)}`);
        const sides = [pocket.width, pocket.height].map((side) => printPocketSide(side, units));
        expect(textsOf(drawing)).toEqual(expect.arrayContaining([...gaps, ...sides]));
      }
    });
  });

  it('shows a card that will not go, or that leaves nothing, without falling over', () => {
    const tried = (width: number) =>
      tryMeasures({
        card: { width: inches(width), height: inches(3), bulk: inches(0) },
        notcher: NOTCHER,
        square: inches(7.5),
        start: inches(2.75),
      });
    const nothingLeft = tried(5.75);
    const exact = {
      ...nothingLeft,
      card: { ...nothingLeft.card, width: nothingLeft.pocket.width },
      clearance: { ...nothingLeft.clearance, width: inches(0) },
    };
    for (const recipe of [tried(7), exact]) {
      const drawing = foldedDrawing(recipe, foldOf(recipe).folded(recipe), 'front', INCHES);
      expect(labelTroubles(drawing)).toEqual([]);
      const numbers = JSON.stringify(drawing.shapes);
      expect(numbers).not.toContain('null');
    }
  });
});

describe('the making steps', () => {
  it('keep their labels apart and inside, turned as the maker turns', () => {
    overAll((recipe, units, turning) => {
      const [layout] = foldOf(recipe).flat(recipe, turning);
      const [look] = foldOf(recipe).looks(recipe, { print: { direction: 'upright' }, doubleSided: false });
      const steps = foldOf(recipe).steps(recipe, turning, look);
      steps.forEach((_, at) => {
        expect(labelTroubles(makingDrawing(recipe, layout!, { steps, at }, units))).toEqual([]);
      });
    });
  });

  const [recipe] = solveEnvelope({
    card: { width: inches(5.875), height: inches(3), bulk: inches(1 / 32) },
    notcher: NOTCHER,
  });
  const [layout] = foldOf(recipe!).flat(recipe!, 'anticlockwise');
  const steps = foldOf(recipe!).steps(recipe!, 'anticlockwise');
  const drawn = (at: number): Drawing => makingDrawing(recipe!, layout!, { steps, at }, INCHES);
  const stepOf = (kind: string, nth = 0): number =>
    steps.flatMap((step, at) => (step.kind === kind ? [at] : []))[nth]!;

  it('light one thing and say which', () => {
    const scoring = drawn(stepOf('score', 2));
    const lit = scoring.shapes.filter((shape) => shape.kind === 'line' && shape.weight === 'lit');
    expect(lit).toHaveLength(1);
    expect(scoring.words).toContain('Lit: score 3.');
  });

  it('bring the edge to be notched to the top', () => {
    for (const nth of [0, 1, 2, 3]) {
      const notch = drawn(stepOf('notch', nth)).shapes.find(
        (shape) => shape.kind === 'area' && shape.role === 'notch',
      );
      const paper = drawn(stepOf('cut')).shapes.find((shape) => shape.kind === 'area');
      const topOf = (shape: typeof notch): number =>
        Math.min(...(shape?.kind === 'area' ? shape.outline : []).map(({ y }) => y));
      expect(topOf(notch)).toBeCloseTo(topOf(paper), 3);
    }
  });

  it('show the scores made so far, and none to come', () => {
    const count = (at: number): number =>
      drawn(at).shapes.filter((shape) => shape.kind === 'line' && shape.role === 'score').length;
    expect(count(stepOf('measure'))).toBe(0);
    expect(count(stepOf('score', 2))).toBe(3);
  });

  it('refuse a step that is not there', () => {
    expect(() => drawn(steps.length)).toThrow(/invalid step/);
  });
});
