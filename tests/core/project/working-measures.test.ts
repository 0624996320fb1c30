/** Checks which measures a project is known by, and in which order outcomes count. */
import { describe, expect, it, test } from 'vitest';
import { finishFlaps } from '#core/envelope/finish.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import type { Envelope, Outcome, Project } from '#core/project/journal.ts';
import { didWork, recipeToMake, workingMeasures } from '#core/project/working-measures.ts';
import { add, inches, length, subtract } from '#shared/length.ts';
import { FIRST, later, RECIPE } from '#tests/support/cast.ts';

const SQUARE = RECIPE.blank.width;
const [START] = RECIPE.starts;
const LONGER = add(START, inches(1 / 8));
const SHORTER = subtract(START, inches(1 / 8));

const project = (rest: Partial<Project> = {}): Project => ({
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
  ...rest,
});

const made = (number: number, told: Partial<Outcome> | null, rest: Partial<Envelope> = {}): Envelope => ({
  id: number,
  number,
  state: 'made',
  trial: number === 1,
  cut: 1,
  design: 1,
  start: null,
  outcome: told && {
    ...{ at: later(number), notcher: 1, felt: null, pocket: null, asMade: null, twin: false },
    ...{ finishes: null, wrong: '', savedBy: '', ...told },
  },
  ...rest,
});

const standing = (envelopes: readonly Envelope[], rest: Partial<Project> = {}) => {
  const { recipe, known, fit, envelope } = workingMeasures({ project: project(rest), envelopes })!;
  return { square: recipe.blank.width, start: recipe.starts[0], known, fit, from: envelope?.number };
};

test('an idea has none', () => {
  expect(workingMeasures({ project: project({ recipe: null }), envelopes: [] })).toBeUndefined();
  expect(recipeToMake({ project: project({ recipe: null }), envelopes: [] })).toBeNull();
});

describe('where nothing was made', () => {
  it('is the recipe, or the start changed under it, worked out', () => {
    expect(standing([])).toMatchObject({ start: START, known: 'worked out', from: undefined });
    expect(standing([], { start: LONGER })).toMatchObject({ start: LONGER, known: 'worked out' });
  });

  it('takes no word from a blank or a spoiled one', () => {
    const lost = made(1, { felt: 'easy' }, { state: 'spoiled' });
    expect(standing([lost, made(2, null, { state: 'blank' })]).known).toBe('worked out');
  });
});

describe('after a tight trial', () => {
  const trial = made(1, { felt: 'tight' });

  it('didn’t work, until the start is changed', () => {
    expect(standing([trial])).toMatchObject({ start: START, known: "didn't work", fit: 'tight', from: 1 });
    expect(standing([trial], { start: LONGER })).toMatchObject({ start: LONGER, known: 'worked out' });
  });

  it('is what was made to the changed start and went in', () => {
    const rest = made(2, { felt: 'easy' }, { start: LONGER });
    expect(standing([trial, rest], { start: LONGER })).toEqual({
      square: SQUARE,
      ...{ start: LONGER, known: 'made', fit: 'easy', from: 2 },
    });
  });

  it('is the changed start that didn’t work either, when nothing did', () => {
    const rest = made(2, { felt: "won't go" }, { start: LONGER });
    expect(standing([trial, rest], { start: LONGER })).toMatchObject({
      ...{ start: LONGER, known: "didn't work", fit: "won't go" },
    });
  });

  it('is what worked before, where a later change didn’t', () => {
    const [good, bad] = [made(2, { felt: 'easy' }, { start: LONGER }), made(3, { felt: 'tight' })];
    expect(standing([trial, good, bad], { start: null })).toMatchObject({ start: LONGER, from: 2 });
  });
});

describe('of several that worked', () => {
  const two = (one: Partial<Outcome> | null, other: Partial<Outcome> | null, rest: Partial<Project> = {}) =>
    standing([made(1, one), made(2, other, { start: LONGER })], rest).from;
  const POCKET = RECIPE.pocket;

  it.each([
    ['the fit wanted before another', { felt: 'easy' }, { felt: 'loose' }, 1],
    ['the fit wanted, though older and not measured', { felt: 'easy' }, { felt: 'snug', pocket: POCKET }, 1],
    ['as far off: snug before loose', { felt: 'loose' }, { felt: 'snug' }, 2],
    ['a measured pocket before none', { felt: 'easy', pocket: POCKET }, { felt: 'easy' }, 1],
    ['else the one made last', { felt: 'easy' }, { felt: 'easy' }, 2],
    ['one that tells how the card sits before one that does not', { felt: 'loose' }, null, 1],
  ] as const)('%s', (_, one, other, from) => {
    expect(two(one, other, { start: SHORTER })).toBe(from);
  });

  it('one without trouble, where she left the start of the one with trouble', () => {
    const [bowed, snug] = [{ felt: 'easy', wrong: 'The plates bowed.' }, { felt: 'snug' }] as const;
    expect(two(bowed, snug, { start: LONGER })).toBe(2);
    expect(two(bowed, snug, { start: null })).toBe(1);
  });

  it('the start in use, where they are alike, before one measured', () => {
    expect(two({ felt: 'easy' }, { felt: 'easy', pocket: POCKET }, { start: null })).toBe(1);
  });

  it('the fit that was wanted is the one that the recipe promised', () => {
    const snug = { ...RECIPE, fit: 'snug' } as const;
    const envelopes = [made(1, { felt: 'snug' }), made(2, { felt: 'easy' })];
    expect(standing(envelopes, { recipe: snug }).from).toBe(1);
  });
});

describe('as made', () => {
  it('carries the square and the start that were really used', () => {
    const asMade = { square: add(SQUARE, inches(1 / 8)), start: LONGER };
    const { recipe } = workingMeasures({
      project: project(),
      envelopes: [made(1, { felt: 'easy', asMade })],
    })!;
    const { card, notcher } = RECIPE;
    expect(recipe.pocket).toEqual(tryMeasures({ card, notcher, ...asMade }).pocket);
    expect(recipe.starts[0]).toBe(LONGER);
  });

  it('turns a start measured from the other corner into the one that gives the same pocket', () => {
    const told = { felt: 'easy', asMade: { square: SQUARE, start: RECIPE.starts[1] }, twin: true } as const;
    expect(standing([made(1, told)]).start).toBe(START);
  });

  it('carries the finishes that were really cut', () => {
    const finishes = { D: { shape: 'rounded', radius: inches(1 / 2) } } as const;
    const { recipe } = workingMeasures({
      project: project(),
      envelopes: [made(1, { felt: 'easy', finishes })],
    })!;
    expect(recipe.flaps).toEqual(finishFlaps(RECIPE, finishes).flaps);
  });

  it('has its pocket as measured, and its fit by that pocket where none was felt', () => {
    const { card } = RECIPE;
    const pocket = { width: length(card.width + card.bulk), height: add(card.height, inches(1)) };
    const told = workingMeasures({ project: project(), envelopes: [made(1, { pocket })] })!;
    expect(told).toMatchObject({ pocket, fit: 'tight', known: "didn't work" });
    expect(didWork(told)).toBe(false);
    expect(standing([made(1, { felt: 'easy', pocket })])).toMatchObject({ known: 'made and measured' });
  });

  it('stays with the recipe where a start was noted that no tool of hers could set', () => {
    const told = { felt: 'easy', asMade: { square: SQUARE, start: length(1) } } as const;
    expect(standing([made(1, told)]).start).toBe(START);
  });

  it('says nothing by silence where another made alike tells that it was tight', () => {
    expect(standing([made(1, { felt: 'tight' }), made(2, null)]).known).toBe("didn't work");
    expect(standing([made(1, null)])).toMatchObject({ known: 'made', fit: RECIPE.fit });
  });
});

describe('the next envelope', () => {
  const next = (envelopes: readonly Envelope[], rest: Partial<Project> = {}) =>
    recipeToMake({ project: project(rest), envelopes })!.starts[0];
  const asMade = { square: SQUARE, start: LONGER };

  it('is made to what worked on its square', () => {
    expect(next([made(1, { felt: 'easy', asMade })])).toBe(LONGER);
  });

  it('is made to the start she changed to, tried or not', () => {
    expect(next([made(1, { felt: 'easy' })], { start: LONGER })).toBe(LONGER);
  });

  it('keeps to its blank where what worked was another square', () => {
    const other = { ...asMade, square: add(SQUARE, inches(1 / 4)) };
    expect(next([made(1, { felt: 'easy', asMade: other })])).toBe(START);
  });
});
