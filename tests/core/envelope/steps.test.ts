/** The making of a diagonal fold, step by step: only one measure, then turns; every cut and every glue with its caution. */
import { describe, expect, it } from 'vitest';
import { finishFlaps } from '#core/envelope/finish.ts';
import type { Step } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Turning } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { inches } from '#shared/length.ts';
import { thin, tool } from './cast.ts';

const recipe = tryMeasures({
  card: thin(5.875, 3),
  notcher: tool(1 / 8),
  square: inches(7.5),
  start: inches(2.75),
});
const TURNINGS: Turning[] = ['clockwise', 'anticlockwise'];
const stepsFor = (turning: Turning): readonly Step[] => foldOf(recipe).steps(recipe, turning);

describe.each(TURNINGS)('turning %s', (turning) => {
  it('cuts, then notches and scores four times, trims, folds the sides, the bottom, glues and closes', () => {
    expect(stepsFor(turning).map(({ kind }) => kind)).toEqual([
      'cut',
      ...['measure', 'notch', 'score'],
      ...['turn', 'notch', 'score'],
      ...['turn', 'notch', 'score'],
      ...['turn', 'notch', 'score'],
      ...['trim', 'trim'],
      ...['fold', 'fold', 'glue', 'close'],
    ]);
  });

  it('measures once and finds every later notch by the score before', () => {
    const steps = stepsFor(turning);
    expect(steps.filter(({ kind }) => kind === 'measure')).toMatchObject([
      { start: inches(2.75), lit: { notch: 1 } },
    ]);
    const turns = steps.flatMap((step) => (step.kind === 'turn' ? [step.lineUpWith] : []));
    expect(turns).toEqual([1, 2, 3]);
  });

  it('brings each notch to the far edge of the tool, its score before ending there', () => {
    const { notches, scores } = foldOf(recipe).flat(recipe, turning)[0]!;
    const sides = ['top', 'right', 'bottom', 'left'];
    for (const step of stepsFor(turning)) {
      if (step.kind !== 'notch') continue;
      const notch = notches[step.notch - 1]!;
      // After so many clockwise quarter turns, this edge is where the top edge was.
      expect((sides.indexOf(notch.edge) + step.turns) % 4).toBe(0);
      expect(scores[step.notch - 1]!.from.x).toBeCloseTo(notch.corner.x, 3);
    }
  });

  it('folds A and B first, glues C onto them and closes with D', () => {
    const folds = stepsFor(turning).flatMap((step) => (step.kind === 'fold' ? [step.flaps] : []));
    expect(folds).toEqual([['A', 'B'], ['C']]);
    expect(stepsFor(turning).find(({ kind }) => kind === 'glue')).toMatchObject({
      flap: 'C',
      onto: ['A', 'B'],
    });
    expect(stepsFor(turning).at(-1)).toMatchObject({ kind: 'close', flap: 'D' });
  });

  it('cautions where a blade cuts and where glue is used', () => {
    for (const { kind, caution } of stepsFor(turning)) {
      const expected = kind === 'cut' || kind === 'notch' || kind === 'trim' ? 'blade' : undefined;
      expect([kind, caution]).toEqual([kind, kind === 'glue' ? 'adhesive' : expected]);
    }
  });
});

describe('what is chosen shows in the steps', () => {
  it('a look says how to lay the blank down before anything is measured', () => {
    const [look] = foldOf(recipe).looks(recipe, { print: { direction: 'upright' }, doubleSided: false });
    const [, lay, measure] = foldOf(recipe).steps(recipe, 'clockwise', look);
    expect(lay).toMatchObject({ kind: 'lay', placement: look!.placement });
    expect(measure!.kind).toBe('measure');
  });

  it('flaps left pointed are not trimmed; her own finish is', () => {
    const own = finishFlaps(recipe, {
      A: { shape: 'rounded', radius: inches(1 / 4) },
      D: { shape: 'pointed' },
    });
    const trims = foldOf(own)
      .steps(own, 'clockwise')
      .flatMap((step) => (step.kind === 'trim' ? [step.flap] : []));
    expect(trims).toEqual(['A', 'C']);
  });

  it('flat layouts turn as the recipe’s tool does, else anticlockwise', () => {
    const edges = (turning?: Turning) => {
      const made = { ...recipe, notcher: { ...recipe.notcher, ...(turning && { turning }) } };
      return foldOf(made)
        .flat(made)[0]!
        .notches.map(({ edge }) => edge);
    };
    expect(edges()).toEqual(['top', 'right', 'bottom', 'left']);
    expect(edges('clockwise')).toEqual(['top', 'left', 'bottom', 'right']);
  });
});
