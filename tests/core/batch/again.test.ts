/** A batch asked once more: less what came meanwhile, with a piece kept or a design picked, without what a trial cut. */
import { expect, test } from 'vitest';
import { batchAgain } from '#core/batch/again.ts';
import type { Batch } from '#core/batch/batch.ts';
import type { Envelope, Project, ProjectSoFar } from '#core/project/journal.ts';
import { lacking } from '#core/project/next.ts';
import type { PartAsked } from '#shared/batch.ts';
import { FIRST, RECIPE, size } from '#tests/support/cast.ts';

const soFar = (id: number, quantity: number, blanks: number): ProjectSoFar => {
  const project: Project = {
    id,
    title: `Project ${id}`,
    state: 'planned',
    card: RECIPE.card,
    quantity,
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
  const envelope = (number: number): Envelope => ({
    ...{ id: number, number, state: 'blank', trial: false },
    ...{ cut: 1, design: 1, start: null, outcome: null },
  });
  return { project, envelopes: Array.from({ length: blanks }, (_, one) => envelope(one + 1)) };
};

const PART: PartAsked = {
  ...{ ...size(5, 3), name: 'Front', copies: 3, print: 'any way' },
  ...{ paper: { of: 'any' }, grammage: null, match: false },
};

const BATCH: Batch = {
  blanks: [
    { project: 1, copies: 5, missing: 5 },
    { project: 2, copies: 2, missing: 3 },
  ],
  paper: { of: 'any' },
  parts: [PART, { ...PART, name: 'Liner', match: true }],
  match: 'each set',
  keep: ['C1'],
};

const others = [soFar(2, 3, 0)];

test('nothing is missing before the envelope is worked out, then what the quantity lacks', () => {
  const { project, envelopes } = soFar(1, 5, 2);
  expect(lacking({ project, envelopes })).toBe(3);
  expect(lacking({ project: { ...project, recipe: null }, envelopes })).toBe(0);
});

test('the same is asked where nothing has changed', () => {
  expect(batchAgain(BATCH, soFar(1, 5, 0), { others })).toEqual(BATCH);
});

test('blanks that were taken meanwhile are asked for no more, and a project that lacks none is left out', () => {
  expect(batchAgain(BATCH, soFar(1, 5, 3), { others }).blanks).toEqual([
    { project: 1, copies: 2, missing: 2 },
    { project: 2, copies: 2, missing: 3 },
  ]);
  expect(batchAgain(BATCH, soFar(1, 5, 9), { others: [] }).blanks).toEqual([
    { project: 1, copies: 0, missing: 0 },
  ]);
});

test('a piece is kept besides those kept before, once', () => {
  expect(batchAgain(BATCH, soFar(1, 5, 0), { others, keep: 'C2' }).keep).toEqual(['C1', 'C2']);
  expect(batchAgain(BATCH, soFar(1, 5, 0), { others, keep: 'C1' }).keep).toEqual(['C1']);
});

test('a design picked is that of the envelopes and of what matches them, of nothing else', () => {
  const { paper, parts } = batchAgain(BATCH, soFar(1, 5, 0), { others, design: 7 });
  expect(paper).toEqual({ of: 'design', design: 7 });
  expect(parts.map((part) => part.paper)).toEqual([{ of: 'any' }, { of: 'design', design: 7 }]);
});
