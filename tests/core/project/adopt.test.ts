/** Whose envelope a project has once paper is taken for one: its own, or the one just chosen, and how many. */
import { expect, test } from 'vitest';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { adopted } from '#core/project/adopt.ts';
import { withStart } from '#core/project/in-use.ts';
import type { Project } from '#core/project/journal.ts';
import { add } from '#shared/length.ts';
import { CARD, FIRST, RECIPE, THANKS } from '#tests/support/cast.ts';

const IDEA: Project = {
  id: 1,
  title: 'For the neighbours',
  state: 'idea',
  card: null,
  quantity: 5,
  recipe: null,
  look: null,
  start: null,
  notcher: null,
  series: null,
  notes: '',
  lesson: '',
  createdAt: FIRST,
  changedAt: FIRST,
  finishedAt: null,
};

const soFar = (project: Project) => ({ project, envelopes: [] });

test('an idea gets card and envelope and keeps its title; it wants as many as were cut, where those are more', () => {
  const opened = { ...THANKS, title: 'Three envelopes', quantity: 3 };
  expect(adopted(soFar(IDEA), opened)).toEqual({ card: CARD, recipe: RECIPE, quantity: 5 });
  expect(adopted(soFar({ ...IDEA, quantity: 1 }), opened)).toMatchObject({ quantity: 3 });
});

test('a project with this envelope stays as it is; with another it changes and wants as many as before', () => {
  const known = soFar({ ...IDEA, recipe: RECIPE, quantity: 2 });
  expect(adopted(known, THANKS)).toBeUndefined();
  const other = solveEnvelope({ card: CARD, notcher: RECIPE.notcher })[1]!;
  expect(adopted(known, { ...THANKS, recipe: other, quantity: 7 })).toMatchObject({
    recipe: other,
    quantity: 2,
  });
});

test('a project whose start was changed keeps its recipe and its start, whichever of both starts is taken for', () => {
  const start = add(RECIPE.starts[0], RECIPE.notcher.graduation);
  const known = soFar({ ...IDEA, recipe: RECIPE, start });
  expect(adopted(known, THANKS)).toBeUndefined();
  expect(adopted(known, { ...THANKS, recipe: withStart(RECIPE, start) })).toBeUndefined();
});
