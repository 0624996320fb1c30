/**
 * Folds the straight-sided envelopes by numbers: every flap of the flat blanks is reflected across its score here, and
 * what comes out is held against the card, the pocket, the seams and the closed views. Knows no formula of theirs.
 */
import fc from 'fast-check';
import clipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { checkFinishes, finishFlaps } from '#core/envelope/finish.ts';
import { DEFAULT_LIMITS, goesFreely } from '#core/envelope/fit.ts';
import type { FlatLayout, Fold, Look } from '#core/envelope/fold.ts';
import type { Finishes, HingedLetter, Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { sideSeam, sideSeamForm } from '#core/envelope/side-seam.ts';
import type { Straight } from '#core/envelope/straight.ts';
import { checkStraight } from '#core/envelope/straight-check.ts';
import { straightOf, straightRecipe } from '#core/envelope/straight-recipe.ts';
import { measuresFor } from '#core/envelope/straight-search.ts';
import { twoPiece, twoPieceForm } from '#core/envelope/two-piece.ts';
import { minus, type Point, type Polygon, reflect } from '#core/geometry/point.ts';
import { area, totalArea } from '#core/geometry/polygon.ts';
import { apply, type Transform } from '#core/geometry/transform.ts';
import { type Finish, FOLD_NAMES } from '#shared/fold.ts';
import { inches, type Length, length, roundLength, toInches } from '#shared/length.ts';
import { WANTED_FITS } from '#shared/outcome.ts';
import { refused } from '#tests/support/checked.ts';
import { anyCard, anyNotcher, SEED, thin, tool } from './cast.ts';

const FOLDS: readonly Fold[] = [sideSeam, twoPiece];
const FORMS = { 'side-seam': sideSeamForm, 'two-piece': twoPieceForm } as const;
const HAIR = 2;
const POINTED: Finish = { shape: 'pointed' };
const RUNS = { ...SEED, numRuns: 50 };

const question = (card = thin(7, 5), notcher = tool(), want = {}) => ({
  card,
  notcher,
  want,
  limits: DEFAULT_LIMITS,
});

const anyRecipe = fc
  .record({ card: anyCard, notcher: anyNotcher, fold: fc.constantFrom(...FOLDS), pick: fc.nat(5) })
  .map(({ card, notcher, fold, pick }) => {
    const recipes = fold.recipes(question(card, notcher));
    return { fold, recipe: recipes[pick % recipes.length]! };
  });

/** Each flap of a blank folded in across its score, moved so that the panel's corner nearest the origin is there. */
function foldUp(layout: FlatLayout): { letter: HingedLetter; shape: Polygon }[] {
  const corner = {
    x: Math.min(...layout.pocket.map(({ x }) => x)),
    y: Math.min(...layout.pocket.map(({ y }) => y)),
  };
  return layout.flaps.map((flap) => {
    const score = layout.scores.find((one) => one.flap === flap.letter)!;
    return { letter: flap.letter, shape: flap.shape.map((at) => minus(reflect(at, score), corner)) };
  });
}

/** The whole closed envelope seen from the back: every layer of paper but the front. */
function closeUp(fold: Fold, recipe: Recipe): { letter: HingedLetter; shape: Polygon }[] {
  const [first, second] = fold.flat(recipe).map((layout) => ({ layout, flaps: foldUp(layout) }));
  if (!second) return first!.flaps;
  const opening = recipe.flaps[3]!.side;
  const down = opening === 'top' ? recipe.pocket.height - panelSize(second.layout).y : 0;
  const width = panelSize(second.layout).x;
  const turnedOver = (shape: Polygon): Polygon => shape.map(({ x, y }) => ({ x: width - x, y: y + down }));
  const corner = {
    x: Math.min(...second.layout.pocket.map(({ x }) => x)),
    y: Math.min(...second.layout.pocket.map(({ y }) => y)),
  };
  const panel = turnedOver(second.layout.pocket.map((at) => minus(at, corner)));
  const tabs = second.flaps.map(({ letter, shape }) => ({ letter, shape: turnedOver(shape) }));
  return [...first!.flaps, ...tabs, { letter: 'C', shape: panel }];
}

const panelSize = ({ pocket }: FlatLayout): Point => ({
  x: Math.max(...pocket.map(({ x }) => x)) - Math.min(...pocket.map(({ x }) => x)),
  y: Math.max(...pocket.map(({ y }) => y)) - Math.min(...pocket.map(({ y }) => y)),
});

/** Inside or on the edge of a convex polygon, whichever way round it goes. */
function isIn(shape: Polygon, at: Point): boolean {
  const sides = shape.map((from, index) => {
    const to = shape[(index + 1) % shape.length]!;
    return (
      ((to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x)) /
      Math.hypot(to.x - from.x, to.y - from.y)
    );
  });
  return sides.every((side) => side >= -HAIR) || sides.every((side) => side <= HAIR);
}

const grid = (from: Point, to: Point, steps: number): Point[] =>
  Array.from({ length: (steps + 1) ** 2 }, (_, index) => ({
    x: from.x + ((to.x - from.x) * (index % (steps + 1))) / steps,
    y: from.y + ((to.y - from.y) * Math.floor(index / (steps + 1))) / steps,
  }));

const withFinish = (fold: Fold, finish: (one: Straight) => Finish): Recipe[] =>
  fold.recipes(question()).map((recipe) => {
    const one = straightOf(recipe);
    return straightRecipe(FORMS[recipe.fold as keyof typeof FORMS], { ...one, finish: finish(one) }, recipe);
  });

const FINISHES: Record<string, (one: Straight) => Finish> = {
  straight: ({ depth }) => ({ shape: 'straight', depth }),
  pointed: () => ({ shape: 'pointed' }),
  rounded: ({ depth }) => ({ shape: 'rounded', radius: length(Math.floor(depth / 3)) }),
  'cut back': ({ depth }) => ({
    shape: 'tapered',
    depth: length(depth - inches(0.125)),
    taper: inches(0.125),
  }),
};

describe('folded by numbers', () => {
  test('no paper passes the pocket’s edge but a flap whose overrun is told', () => {
    fc.assert(
      fc.property(anyRecipe, ({ fold, recipe }) => {
        for (const { letter, shape } of closeUp(fold, recipe)) {
          const over = recipe.flaps.find((flap) => flap.letter === letter)?.overrun ?? 0;
          const { width, height } = recipe.pocket;
          const slack = HAIR + over;
          expect(Math.min(...shape.flatMap(({ x, y }) => [x, y]))).toBeGreaterThanOrEqual(-slack);
          expect(Math.max(...shape.flatMap(({ x, y }) => [x - width, y - height]))).toBeLessThanOrEqual(
            slack,
          );
        }
      }),
      RUNS,
    );
  });

  test('the closed shape covers the card wherever it lies but for its clearance', () => {
    fc.assert(
      fc.property(anyRecipe, ({ fold, recipe }) => {
        const { card, clearance } = recipe;
        const layers = closeUp(fold, recipe).map(({ shape }) => shape);
        const from = { x: clearance.width / 2, y: clearance.height / 2 };
        const to = { x: from.x + card.width + card.bulk, y: from.y + card.height + card.bulk };
        expect(grid(from, to, 24).every((at) => layers.some((layer) => isIn(layer, at)))).toBe(true);
      }),
      RUNS,
    );
  });

  test.each(
    FOLDS.flatMap((fold) => Object.keys(FINISHES).map((finish) => [fold.name, finish, fold] as const)),
  )('%s with its flap %s covers the card too, and keeps inside the pocket', (_, finish, fold) => {
    for (const recipe of withFinish(fold, FINISHES[finish]!)) {
      const layers = closeUp(fold, recipe).map(({ shape }) => shape);
      const { card, clearance, pocket } = recipe;
      const from = { x: clearance.width / 2, y: clearance.height / 2 };
      const to = { x: from.x + card.width + card.bulk, y: from.y + card.height + card.bulk };
      expect(grid(from, to, 40).every((at) => layers.some((layer) => isIn(layer, at)))).toBe(true);
      for (const { x, y } of layers.flat()) {
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(-HAIR);
        expect(x).toBeLessThanOrEqual(pocket.width + HAIR);
        expect(y).toBeLessThanOrEqual(pocket.height + HAIR);
      }
    }
  });

  test('glued layers lie on each other by at least the seam’s width, all along the tab’s full part', () => {
    fc.assert(
      fc.property(anyRecipe, ({ fold, recipe }) => {
        const layers = closeUp(fold, recipe);
        const pocket = [
          { x: 0, y: 0 },
          { x: recipe.pocket.width, y: 0 },
          { x: recipe.pocket.width, y: recipe.pocket.height },
          { x: 0, y: recipe.pocket.height },
        ];
        const over = fold === sideSeam ? layers.find(({ letter }) => letter === 'C')!.shape : pocket;
        for (const letter of ['A', 'B'] as const) {
          const tab = layers.find((layer) => layer.letter === letter)!.shape;
          const upright = recipe.flaps[3]!.side === 'top';
          const [from, to] = [
            Math.max(start(tab, upright), start(over, upright)),
            Math.min(end(tab, upright), end(over, upright)),
          ];
          const middle = (from + to) / 2;
          const across = Array.from({ length: 401 }, (_, step) => {
            const along = ((step / 400) * (upright ? recipe.pocket.width : recipe.pocket.height)) as number;
            return upright ? { x: along, y: middle } : { x: middle, y: along };
          }).filter((at) => isIn(tab, at) && isIn(over, at));
          const [first, last] = [across[0]!, across.at(-1)!];
          const step = (upright ? recipe.pocket.width : recipe.pocket.height) / 400;
          expect(Math.hypot(last.x - first.x, last.y - first.y) + 2 * step).toBeGreaterThanOrEqual(
            recipe.seam.width,
          );
        }
      }),
      RUNS,
    );
  });

  test('what the flat blanks fold to is what the closed view shows', () => {
    fc.assert(
      fc.property(anyRecipe, ({ fold, recipe }) => {
        const folded = closeUp(fold, recipe);
        for (const flap of fold.folded(recipe).back.flaps) {
          const same = folded.some(
            ({ letter, shape }) => letter === flap.letter && sameCorners(shape, flap.shape),
          );
          expect(same).toBe(true);
        }
      }),
      RUNS,
    );
  });

  test('panel, flaps and what is trimmed make up the blank', () => {
    fc.assert(
      fc.property(anyRecipe, ({ fold, recipe }) => {
        for (const layout of fold.flat(recipe)) {
          const pieces = [layout.pocket, ...layout.flaps.flatMap(({ shape, trims }) => [shape, ...trims])];
          const blank = layout.blank.width * layout.blank.height;
          expect(Math.abs(totalArea(pieces) - blank) / blank).toBeLessThan(1e-4);
        }
      }),
      RUNS,
    );
  });
});

const start = (shape: Polygon, upright: boolean): number =>
  Math.min(...shape.map(({ x, y }) => (upright ? y : x)));
const end = (shape: Polygon, upright: boolean): number =>
  Math.max(...shape.map(({ x, y }) => (upright ? y : x)));

const sameCorners = (one: Polygon, other: Polygon): boolean =>
  one.length === other.length &&
  one.every((at) => other.some((near) => Math.hypot(at.x - near.x, at.y - near.y) <= HAIR));

describe('from outside', () => {
  // Finished sizes in envelope makers' published size charts (inches), and ISO 269:1985 for C6; makers hold 1/16 in.
  const PUBLISHED: [string, number, number][] = [
    ['#10', 9.5, 4.125],
    ['A7', 7.25, 5.25],
    ['C6', 162 / 25.4, 114 / 25.4],
  ];
  const MAKERS_TOLERANCE = inches(1 / 16);
  const ring = (shape: Polygon): [[number, number][]] => [
    shape.map(({ x, y }): [number, number] => [Math.round(x), Math.round(y)]),
  ];
  const clippedArea = (found: [number, number][][][]): number =>
    totalArea(found.flat().map((points) => points.slice(0, -1).map(([x, y]) => ({ x, y }))));

  test.each(
    PUBLISHED.flatMap(([name, width, height]) => FOLDS.map((fold) => [name, fold, width, height] as const)),
  )('%s: the blank of a $name folds to the published size', (_name, fold, width, height) => {
    const pocket = {
      width: roundLength(width * 1_016_000, 'nearest'),
      height: roundLength(height * 1_016_000, 'nearest'),
    };
    const form = FORMS[fold.name as keyof typeof FORMS];
    const unfinished = measuresFor(pocket, 'top', inches(1 / 16));
    const one = { ...unfinished, finish: form.closingFinish(unfinished) };
    const recipe = straightRecipe(form, one, question(thin(width - 0.25, height - 0.25)));
    const corners = closeUp(fold, recipe).flatMap(({ shape }) => shape);
    const across = Math.max(...corners.map(({ x }) => x)) - Math.min(...corners.map(({ x }) => x));
    const down = Math.max(...corners.map(({ y }) => y)) - Math.min(...corners.map(({ y }) => y));
    expect(Math.abs(across - width * 1_016_000)).toBeLessThan(MAKERS_TOLERANCE);
    expect(Math.abs(down - height * 1_016_000)).toBeLessThan(MAKERS_TOLERANCE);
  });

  test('the seam is as large as polygon-clipping finds the flat blanks to lie on each other, folded', () => {
    fc.assert(
      fc.property(anyRecipe, ({ fold, recipe }) => {
        const layers = closeUp(fold, recipe);
        const { width, height } = recipe.pocket;
        const front = [
          [0, 0],
          [width, 0],
          [width, height],
          [0, height],
        ].map(([x, y]) => ({ x: x!, y: y! }));
        const over = fold === sideSeam ? layers.find(({ letter }) => letter === 'C')!.shape : front;
        const tabs = layers.filter(({ letter }) => ['A', 'B', 'E'].includes(letter));
        expect(tabs).toHaveLength(fold === sideSeam ? 2 : 3);
        const found = tabs.reduce(
          (sum, { shape }) => sum + clippedArea(clipping.intersection(ring(shape), ring(over))),
          0,
        );
        expect(recipe.seam.area).toBeCloseTo(found / 1_016_000 ** 2, 3);
      }),
      RUNS,
    );
  });
});

test('the panel of a two-piece envelope is C, and the tab at its foot is E wherever either is named', () => {
  const [recipe] = twoPiece.recipes(question(thin(5, 3.5)));
  const [flapPiece, tabPiece] = twoPiece.flat(recipe!);
  expect(flapPiece!.flaps.map(({ letter }) => letter)).toEqual(['D']);
  expect(tabPiece!.flaps.map(({ letter }) => letter)).toEqual(['A', 'B', 'E']);
  expect(tabPiece!.scores.map(({ flap }) => flap)).toEqual(['A', 'B', 'E']);
  const back = twoPiece.folded(recipe!).back.flaps.map(({ letter }) => letter);
  expect(back).toEqual(['A', 'B', 'C', 'D']);
  const steps = twoPiece.steps(recipe!, 'clockwise');
  expect(steps.flatMap((step) => (step.kind === 'trim' ? [step.flap] : []))).toEqual(['D', 'A', 'B', 'E']);
  expect(steps.flatMap((step) => (step.kind === 'fold' ? step.flaps : []))).toEqual(['A', 'B', 'E']);
  const panel = recipe!.flaps[2]!;
  expect(panel.finish).toEqual({ shape: 'straight', depth: panel.depth });
});

describe('the blanks', () => {
  test('side-seam: the pocket’s side and two tabs, by front, back and flap', () => {
    for (const recipe of sideSeam.recipes(question())) {
      const [a, , c, d] = recipe.flaps;
      const [mouth, axis] =
        d!.side === 'top'
          ? [recipe.pocket.width, recipe.pocket.height]
          : [recipe.pocket.height, recipe.pocket.width];
      const [along, across] =
        d!.side === 'top'
          ? [recipe.blank.height, recipe.blank.width]
          : [recipe.blank.width, recipe.blank.height];
      expect(across).toBe(mouth + 2 * a!.depth);
      expect(along).toBe(axis + c!.depth + d!.depth);
    }
  });

  test('two-piece: both pieces together are smaller than a side-seam blank’s length by a good deal', () => {
    const [strip] = sideSeam.recipes(question());
    const [recipe] = twoPiece.recipes(question());
    const longest = Math.max(...twoPiece.blanks(recipe!).flatMap(({ width, height }) => [width, height]));
    expect(longest).toBeLessThan(Math.max(strip!.blank.width, strip!.blank.height));
    expect(twoPiece.blanks(recipe!)).toHaveLength(2);
  });

  test('a print asked to run the other way turns the blank, not the envelope', () => {
    for (const fold of FOLDS) {
      const [upright] = fold.recipes(question());
      const sideways = fold.recipes(question(thin(7, 5), tool(), { front: 'along' }));
      expect(upright!.front).toBe('across');
      const same = sideways.find(
        ({ pocket, flaps }) =>
          pocket.width === upright!.pocket.width && flaps[3]!.side === upright!.flaps[3]!.side,
      )!;
      expect(same.front).toBe('along');
      expect(same.blank).toEqual({ width: upright!.blank.height, height: upright!.blank.width });
      expect(same.warnings).toEqual([]);
    }
  });
});

describe('recipes', () => {
  test('never none, all with whole lengths, and the card goes in without force', () => {
    fc.assert(
      fc.property(anyCard, anyNotcher, fc.constantFrom(...FOLDS), (card, notcher, fold) => {
        const recipes = fold.recipes(question(card, notcher));
        expect(recipes.length).toBeGreaterThan(0);
        for (const recipe of recipes) {
          expect(goesFreely(recipe.fit)).toBe(true);
          const lengths = [...Object.values(recipe.pocket), ...Object.values(recipe.blank), ...recipe.starts];
          expect(lengths.every(Number.isSafeInteger)).toBe(true);
          expect(recipe.clearance.width).toBe(recipe.pocket.width - card.width - card.bulk);
          expect(JSON.parse(JSON.stringify(recipe))).toEqual(recipe);
        }
      }),
      RUNS,
    );
  });

  test('even of a card or a step that no hand could cut, and of a step wider than the card', () => {
    for (const graduation of [length(10), inches(1 / 64), inches(1)]) {
      const notcher = { ...tool(), graduation };
      for (const card of [thin(1 / 64, 1 / 64), thin(1 / 64, 100), { ...thin(1 / 4, 3), bulk: length(0) }]) {
        for (const fit of WANTED_FITS) {
          const recipes = FOLDS.flatMap((fold) => fold.recipes(question(card, notcher, { fit })));
          expect(recipes.every(({ pocket }) => pocket.width > 0 && pocket.height > 0)).toBe(true);
        }
      }
    }
  });

  test.each(WANTED_FITS)('the fit wanted is the fit given: %s', (fit) => {
    for (const fold of FOLDS) {
      for (const recipe of fold.recipes(question(thin(5, 7), tool(1 / 32), { fit })).slice(0, 1))
        expect(recipe.fit).toBe(fit);
    }
  });

  test('a limit on the outer size is kept, turned or not', () => {
    for (const fold of FOLDS) {
      for (const [width, height] of [
        [7.125, 5.125],
        [5.125, 7.125],
      ]) {
        const largestOuter = { width: inches(width!), height: inches(height!) };
        const [best] = fold.recipes(question(thin(7, 5), tool(1 / 32), { largestOuter }));
        expect(best!.pocket.width).toBeLessThanOrEqual(inches(7.125));
        expect(best!.pocket.height).toBeLessThanOrEqual(inches(5.125));
        expect(goesFreely(best!.fit)).toBe(true);
      }
    }
  });

  test('the starts are read from either end of the blank with the flap', () => {
    const notcher = tool(1 / 16, { zeroOffset: inches(1 / 32) });
    for (const fold of FOLDS) {
      for (const recipe of fold.recipes(question(thin(7, 5), notcher))) {
        const { blank } = fold.flat(recipe)[0]!;
        const along = recipe.flaps[3]!.side === 'top' ? blank.height : blank.width;
        expect(recipe.starts[0] + recipe.starts[1] + 2 * notcher.zeroOffset).toBe(along);
      }
    }
  });

  test('the solver ranks the folds it is asked for, all of them when it isn’t, the notcher’s own first', () => {
    const asked = { card: thin(7, 5), notcher: tool() };
    const all = solveEnvelope({ ...asked, folds: FOLD_NAMES });
    expect(new Set(all.map(({ fold }) => fold))).toEqual(new Set(FOLD_NAMES));
    const firstLoose = all.findIndex(({ fit }) => fit !== 'easy');
    expect(all.slice(firstLoose).every(({ fit, warnings }) => fit !== 'easy' || warnings.length > 0)).toBe(
      true,
    );
    expect(solveEnvelope(asked)).toEqual(all);
    expect(all[0]!.fold).toBe('diagonal');
    expect(new Set(solveEnvelope({ ...asked, folds: ['side-seam'] }).map(({ fold }) => fold))).toEqual(
      new Set(['side-seam']),
    );
    const [best] = solveEnvelope({ ...asked, folds: FOLD_NAMES, want: { front: 'along' } });
    expect([best!.fit, best!.front]).toEqual(['easy', 'along']);
  });

  test('a recipe carries all its measures', () => {
    const one = {
      ...measuresFor({ width: inches(7.25), height: inches(5.25) }, 'right', inches(1 / 16)),
      finish: POINTED,
    };
    for (const form of [sideSeamForm, twoPieceForm])
      expect(straightOf(straightRecipe(form, one, question()))).toEqual(one);
  });

  test('a slip of a score is felt in one side of the pocket, one of the blank in none', () => {
    const [recipe] = sideSeam.recipes(question());
    for (const slip of recipe!.slips) {
      const moved =
        Math.abs(slip.pocket.width - recipe!.pocket.width) +
        Math.abs(slip.pocket.height - recipe!.pocket.height);
      expect(moved).toBe(slip.off === 'square' ? 0 : inches(1 / 16));
    }
    expect(recipe!.survives.square).toBe(true);
  });
});

describe('the steps', () => {
  test.each(FOLDS)(
    '$name: every score and flap of each blank once, blades and glue with their cautions',
    (fold) => {
      const [recipe] = fold.recipes(question());
      const steps = fold.steps(
        recipe!,
        'clockwise',
        fold.looks(recipe!, { print: { direction: 'upright' }, doubleSided: false })[0],
      );
      const layouts = fold.flat(recipe!);
      expect(steps.filter(({ kind }) => kind === 'score')).toHaveLength(
        layouts.flatMap(({ scores }) => scores).length,
      );
      expect(steps.filter(({ kind }) => kind === 'trim')).toHaveLength(4);
      expect(steps.filter(({ kind }) => kind === 'cut')).toHaveLength(layouts.length);
      for (const step of steps) {
        if (step.kind === 'cut' || step.kind === 'trim') expect(step.caution).toBe('blade');
        if (step.kind === 'glue') expect(step.caution).toBe('adhesive');
      }
      expect(steps.at(-1)).toMatchObject({ kind: 'close', flap: 'D' });
    },
  );
});

/** Of the two-piece fold's tabs only the inside could be seen, if it weren't under the back. */
const outerFaces = (fold: Fold, look: Look): Transform[] =>
  look.flaps
    .filter(({ letter }) => fold !== twoPiece || letter === 'C' || letter === 'D')
    .map(({ transform }) => transform);

describe('finishes of her own', () => {
  const INCHES = { unit: 'in', step: 16 } as const;

  test.each(FOLDS)('$name: the flap takes her shape, everything else stays', (fold) => {
    for (const recipe of fold.recipes(question())) {
      const D = { shape: 'straight', depth: length(recipe.flaps[3]!.depth - inches(0.25)) } as const;
      const finished = finishFlaps(recipe, { D });
      expect(finished.flaps[3]!.finish).toEqual(D);
      expect(finished.flaps[3]!.reach).toBe(D.depth);
      expect({ ...finished, flaps: [], warnings: [] }).toEqual({ ...recipe, flaps: [], warnings: [] });
      expect(finishFlaps(finished, {})).toEqual(recipe);
    }
  });

  test.each(FOLDS)('$name: a longer back leaves a smaller throat', (fold) => {
    const [recipe] = fold.recipes(question());
    const depth = length(recipe!.flaps[2]!.depth + inches(0.25));
    const finished = finishFlaps(recipe!, { C: { shape: 'straight', depth } });
    expect(finished.flaps[2]!.reach).toBe(depth);
    expect(finished.pocket).toEqual(recipe!.pocket);
  });

  test.each(FOLDS)('$name: what can’t be cut is refused beside its measure', (fold) => {
    const [recipe] = fold.recipes(question());
    const pocket = recipe!.pocket.width + recipe!.pocket.height;
    const check = (own: Finishes): string[] => refused(checkFinishes(recipe!, own, INCHES));
    expect(check({ D: { shape: 'straight', depth: inches(0.25) } })).toEqual(['dDepth']);
    expect(check({ D: { shape: 'rounded', radius: length(pocket) } })).toEqual(['dMore']);
    expect(check({ C: { shape: 'pointed' }, A: { shape: 'pointed' } })).toEqual(['aDepth', 'cDepth']);
    expect(check({ C: { shape: 'straight', depth: inches(0.5) } })).toEqual(['cDepth']);
    expect(check({ C: { shape: 'straight', depth: length(pocket) } })).toEqual(['cDepth']);
    expect(check({ D: { shape: 'pointed' } })).toEqual([]);
  });
});

describe('the looks', () => {
  test.each(FOLDS)(
    '$name: the print is never mirrored, comes from its blank, and runs as the recipe says',
    (fold) => {
      for (const front of ['across', 'along'] as const) {
        for (const recipe of fold.recipes(question(thin(7, 5), tool(), { front }))) {
          const looks = fold.looks(recipe, { print: { direction: 'upright' }, doubleSided: true });
          expect(looks).toHaveLength(4);
          expect(new Set(looks.map(({ id }) => id)).size).toBe(4);
          for (const look of looks) {
            for (const { a, b, c, d } of [look.front, ...outerFaces(fold, look)]) {
              expect(a * d - b * c).toBeCloseTo(1, 9);
            }
            const up = apply({ ...look.front, e: 0, f: 0 }, { x: 0, y: -1 });
            expect(Math.abs(front === 'across' ? up.y : up.x)).toBeCloseTo(1, 9);
            const word =
              { top: 'up', bottom: 'down' }[look.id.split('-')[1]!] ?? `to the ${look.id.split('-')[1]}`;
            expect(look.words).toContain(`its top ${word}`);
            expect(
              { up: up.y < -0.5, down: up.y > 0.5, 'to the left': up.x < -0.5, 'to the right': up.x > 0.5 }[
                word
              ],
            ).toBe(true);
          }
        }
      }
    },
  );

  test.each(FOLDS)('$name: the front’s corners come from the panel of the blank’s outer face', (fold) => {
    const [recipe] = fold.recipes(question());
    const layout = fold.flat(recipe!)[0]!;
    const [look] = fold.looks(recipe!, { print: { direction: 'any way' }, doubleSided: false });
    const outer = layout.pocket.map(({ x, y }) => ({ x: layout.blank.width - x, y }));
    const onFront = outer.map((at) => apply(look!.front, at));
    expect(sameCorners(onFront, fold.folded(recipe!).front.pocket)).toBe(true);
  });

  test.each(FOLDS)('$name: each flap’s print comes from where it is cut', (fold) => {
    const [recipe] = fold.recipes(question());
    const [look] = fold.looks(recipe!, { print: { direction: 'any way' }, doubleSided: false });
    const layouts = fold.flat(recipe!);
    for (const { letter, shape } of fold.folded(recipe!).back.flaps) {
      if (fold === twoPiece && letter === 'C') continue;
      const layout = layouts.find(({ flaps }) => flaps.some((flap) => flap.letter === letter))!;
      const cut = layout.flaps.find((flap) => flap.letter === letter)!.shape;
      const outer = cut.map(({ x, y }) => ({ x: layout.blank.width - x, y }));
      const { transform } = look!.flaps.find((one) => one.letter === letter)!;
      expect(
        sameCorners(
          outer.map((at) => apply(transform, at)),
          shape,
        ),
      ).toBe(true);
    }
  });
});

describe('measures of her own', () => {
  const one: Straight = {
    ...measuresFor({ width: inches(7.25), height: inches(5.25) }, 'top', inches(1 / 16)),
    finish: POINTED,
  };
  const check = (changes: Partial<Straight>, sheet: Length = inches(14)): string[] =>
    refused(checkStraight({ ...one, ...changes }, sheet));

  test('sound ones are accepted', () => {
    expect(check({})).toEqual([]);
    expect(check({ finish: { shape: 'pointed' } })).toEqual([]);
    expect(check({ finish: { shape: 'rounded', radius: inches(0.5) } })).toEqual([]);
  });

  test('seams wider than the pocket, a flap longer than the sheet, and what is nothing', () => {
    expect(check({ seam: inches(3.75) })).toEqual(['seam']);
    expect(check({}, inches(8))).toEqual(['flap']);
    expect(check({ seam: inches(0), depth: inches(0) })).toEqual(['seam', 'flap']);
    expect(check({ back: inches(6) })).toEqual(['back']);
  });

  test('finishes that can’t be cut or don’t cover the throat', () => {
    expect(check({ finish: { shape: 'straight', depth: inches(0.5) } })).toEqual(['depth']);
    expect(check({ finish: { shape: 'straight', depth: inches(-1) } })).toContain('depth');
    expect(check({ finish: { shape: 'tapered', depth: inches(2), taper: inches(4) } })).toEqual(['taper']);
    expect(check({ finish: { shape: 'rounded', radius: inches(3) } })).toEqual(['radius']);
  });

  test('a pointed flap leaves no gap beside the throat', () => {
    const flap = sideSeam.flat(
      straightRecipe(sideSeamForm, { ...one, finish: { shape: 'pointed' } }, question()),
    )[0]!.flaps[3]!;
    const widest = flap.shape
      .filter(({ x }) => x === Math.min(...flap.shape.map((at) => at.x)))
      .map(({ y }) => y);
    expect(toInches(Math.max(...widest) - Math.min(...widest))).toBeCloseTo(
      toInches(length(inches(5.25) - one.back)),
      6,
    );
    expect(area(flap.shape)).toBeGreaterThan(0);
  });
});
