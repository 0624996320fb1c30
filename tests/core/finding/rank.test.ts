/** The order of what is found. */
import { expect, test } from 'vitest';
import { type Candidate, rank } from '#core/finding/rank.ts';
import { readQuery } from '#core/finding/read-query.ts';
import type { FindKind } from '#core/finding/vocabulary.ts';

const INCHES = { unit: 'in', step: 16 } as const;

const candidate = (id: number, kind: FindKind, title: string, rest: Partial<Candidate> = {}): Candidate => ({
  ...{ id, kind, title, belongs: id, number: 0, text: '', about: '', reading: 0, off: 0 },
  ...rest,
});

const order = (typed: string, candidates: readonly Candidate[]): number[] =>
  rank(readQuery(typed, INCHES), candidates).map(({ id }) => id);

test('title before text before elsewhere, whole words before beginnings, newer before older', () => {
  const found = [
    candidate(1, 'project', 'Other', { about: 'hare' }),
    candidate(2, 'project', 'Other', { text: 'harebell' }),
    candidate(3, 'project', 'Other', { text: 'a hare' }),
    candidate(4, 'project', 'Harebells ring'),
    candidate(5, 'project', 'Hare and moon'),
    candidate(6, 'project', 'Hare and sun'),
    candidate(7, 'project', 'Hare'),
  ];
  expect(order('hare', found)).toEqual([7, 6, 5, 4, 3, 2, 1]);
});

test('a kind that is named comes first', () => {
  const found = [candidate(1, 'project', 'Striped offcut'), candidate(2, 'offcut', 'K7 Deck')];
  expect(order('striped offcut', found)).toEqual([2, 1]);
});

test('what is called after a project comes after it', () => {
  const found = [candidate(2, 'lesson', 'Hare', { text: 'slow' }), candidate(1, 'project', 'A hare card')];
  expect(order('hare', found)).toEqual([1, 2]);
});

test('the nearest measure comes first', () => {
  const found = [
    candidate(1, 'offcut', 'K7', { off: 63_500 }),
    candidate(2, 'offcut', 'CC', { off: 15_875 }),
  ];
  expect(order('5 3/8', found)).toEqual([2, 1]);
});

test('each comes once, and the code stands before all', () => {
  const found = [
    candidate(1, 'offcut', 'CC Fern'),
    candidate(2, 'project', 'cc'),
    candidate(1, 'offcut', 'CC Fern', { reading: -1 }),
  ];
  expect(order('cc', found)).toEqual([1, 2]);
});
