/** Checks where envelopes differ from the recipe in use, and which of them are told together. */
import { describe, expect, it } from 'vitest';
import { finishFlaps } from '#core/envelope/finish.ts';
import { foldOf } from '#core/envelope/folds.ts';
import { alike, asMade, leftOpen } from '#core/project/as-made.ts';
import { paperInUse, recipeInUse, recipeOf, withStart } from '#core/project/in-use.ts';
import type { Envelope, Outcome, Project } from '#core/project/journal.ts';
import type { Design } from '#core/stash/stash.ts';
import { add, inches } from '#shared/length.ts';
import { FIRST, HEM, MEADOW, RECIPE } from '#tests/support/cast.ts';

const PROJECT: Project = {
  id: 1,
  title: 'Thank you',
  state: 'cut',
  card: RECIPE.card,
  quantity: 4,
  recipe: RECIPE,
  look: null,
  start: null,
  notcher: 1,
  series: null,
  notes: '',
  lesson: '',
  createdAt: FIRST,
  changedAt: FIRST,
  finishedAt: null,
};

const SQUARE = RECIPE.blank.width;
const [START, TWIN] = RECIPE.starts;
const LATER_START = add(START, RECIPE.notcher.graduation);

const noted = (rest: Partial<Outcome> = {}): Outcome => ({
  at: FIRST,
  notcher: 1,
  felt: 'easy',
  pocket: null,
  asMade: null,
  twin: false,
  finishes: null,
  wrong: '',
  savedBy: '',
  ...rest,
});

const made = (number: number, rest: Partial<Envelope> = {}): Envelope => ({
  id: number,
  number,
  state: 'made',
  trial: false,
  cut: 1,
  design: 1,
  start: null,
  outcome: noted(),
  ...rest,
});

describe('what a flap really cut leaves open', () => {
  it('is told of that envelope alone, its other flaps as planned', () => {
    const short = made(1, {
      outcome: noted({ finishes: { D: { shape: 'straight', depth: inches(1 / 2) } } }),
    });
    expect(leftOpen(PROJECT, short)?.message).toContain('at the right along the top');
    expect(leftOpen(PROJECT, made(2))).toBeUndefined();
    const planned = finishFlaps(RECIPE, { C: { shape: 'straight', depth: inches(1 / 2) } });
    const both = leftOpen({ ...PROJECT, recipe: planned }, short)!;
    expect(both.area).toBeGreaterThan(2 * leftOpen(PROJECT, short)!.area!);
    expect(leftOpen({ ...PROJECT, recipe: null }, short)).toBeUndefined();
  });
});

describe('as made', () => {
  it('is nothing where the recipe was followed, from either corner', () => {
    expect(asMade(PROJECT, made(1))).toBeUndefined();
    expect(asMade(PROJECT, made(1, { outcome: null }))).toBeUndefined();
    const either = [
      noted({ asMade: { square: SQUARE, start: START } }),
      noted({ asMade: { square: SQUARE, start: TWIN }, twin: true }),
      noted({ finishes: { C: RECIPE.flaps.find(({ letter }) => letter === 'C')!.finish } }),
    ];
    for (const outcome of either) expect(asMade(PROJECT, made(1, { outcome }))).toBeUndefined();
  });

  it('names only what differs', () => {
    const outcome = noted({
      asMade: { square: SQUARE, start: inches(3) },
      finishes: { C: { shape: 'rounded', radius: inches(0.25) } },
    });
    expect(asMade(PROJECT, made(1, { outcome }))).toEqual({
      twin: false,
      start: inches(3),
      finishes: { C: { shape: 'rounded', radius: inches(0.25) } },
    });
  });

  it('tells the start of what was folded before it was changed', () => {
    const project = { ...PROJECT, start: LATER_START };
    expect(asMade(project, made(1))).toEqual({ twin: false, start: START });
    expect(asMade(project, made(2, { start: LATER_START }))).toBeUndefined();
    expect(asMade(project, made(3, { state: 'blank', outcome: null }))).toBeUndefined();
  });

  it('is nothing for an idea', () => {
    expect(asMade({ ...PROJECT, recipe: null }, made(1))).toBeUndefined();
  });
});

describe('alike', () => {
  it('are neighbours of whom the same is noted, whenever it was', () => {
    const other = made(3, { outcome: noted({ felt: 'tight' }) });
    const groups = alike([
      made(1),
      made(2, { outcome: noted({ at: '2026-05-01T10:00:00.000Z' }) }),
      other,
      made(4),
    ]);
    expect(groups.map((group) => group.map(({ number }) => number))).toEqual([[1, 2], [3], [4]]);
  });

  it('are not a trial and the batch, nor two starts, nor two states', () => {
    const different = [
      made(1),
      made(2, { trial: true }),
      made(3, { start: LATER_START }),
      made(4, { state: 'blank' }),
    ];
    expect(alike(different)).toHaveLength(4);
    expect(alike([])).toEqual([]);
  });
});

describe('the recipe in use', () => {
  it('is the planned one until a start is changed, then the same square with the pocket that start gives', () => {
    expect(recipeInUse(PROJECT)).toBe(RECIPE);
    expect(withStart(RECIPE, START)).toBe(RECIPE);
    const used = recipeInUse({ ...PROJECT, start: LATER_START })!;
    expect(used.blank).toEqual(RECIPE.blank);
    expect(used.starts[0]).toBe(LATER_START);
    // Plane geometry: the start off by e moves either side of the pocket by e·√2.
    const step = RECIPE.notcher.graduation * Math.SQRT2;
    expect(Math.abs(used.pocket.height - RECIPE.pocket.height - step)).toBeLessThanOrEqual(1);
    expect(Math.abs(RECIPE.pocket.width - used.pocket.width - step)).toBeLessThanOrEqual(1);
  });

  it('keeps finishes of her own, and cuts the others anew', () => {
    const own = { shape: 'straight', depth: inches(2) } as const;
    const used = withStart(finishFlaps(RECIPE, { C: own }), LATER_START);
    expect(used.flaps.find(({ letter }) => letter === 'C')!.finish).toEqual(own);
    expect(used.flaps.find(({ letter }) => letter === 'D')!.finish).toEqual(
      withStart(RECIPE, LATER_START).flaps.find(({ letter }) => letter === 'D')!.finish,
    );
  });

  it('of an envelope is what it was folded to, or what it waits for', () => {
    const project = { ...PROJECT, start: LATER_START };
    expect(recipeOf(project, made(1))!.starts[0]).toBe(START);
    expect(recipeOf(project, made(1, { state: 'blank' }))!.starts[0]).toBe(LATER_START);
  });
});

describe('paper in use', () => {
  const hem: Design = { ...HEM, id: 1, sheets: 2, pad: { ...MEADOW, id: 1 } };
  const looks = foldOf(RECIPE).looks(RECIPE, HEM);

  it('shows its border only where a look was chosen that does', () => {
    const plain = paperInUse(PROJECT, RECIPE, hem)!;
    expect(plain.piece.print).toEqual({ direction: 'upright' });
    expect(plain.look.border).toBeUndefined();
    const chosen = looks.at(-1)!;
    const bordered = paperInUse({ look: chosen }, RECIPE, hem)!;
    expect(bordered.piece.print).toEqual(HEM.print);
    expect(bordered.look).toEqual(chosen);
  });

  it('takes the plainest look for one that this paper can’t have', () => {
    const look = { ...looks[0]!, id: 'gone' };
    expect(paperInUse({ look }, RECIPE, hem)!.look).toEqual(looks[0]);
  });
});
