/** Which lessons come up where: by a stated order of what they share with the place, two at the most. */
import { describe, expect, test } from 'vitest';
import { comeUp, type Lesson, type LessonFeatures, type Place, sizeClassOf } from '#core/project/lessons.ts';
import { inches } from '#shared/length.ts';
import type { LessonStep } from '#shared/lesson.ts';
import { size } from '#tests/support/cast.ts';

const UNKNOWN: LessonFeatures = {
  part: 'envelope',
  design: null,
  kind: null,
  tool: null,
  size: null,
  fold: null,
};

const lesson = (
  id: number,
  step: LessonStep | null,
  features: Partial<LessonFeatures> = {},
  rest: Partial<Lesson> = {},
): Lesson => ({
  id,
  project: { id: 100 + id, title: `Project ${id}` },
  envelope: 1,
  words: `lesson ${id}`,
  savedBy: '',
  step,
  chosen: false,
  always: false,
  features: { ...UNKNOWN, ...features },
  ...rest,
});

/** Design 7, vellum, on tool 1, a medium card in a diagonal fold. */
const HERE: Place = {
  steps: ['glue'],
  parts: ['envelope'],
  project: 1,
  designs: [7],
  kinds: ['vellum'],
  tool: 1,
  size: 'medium',
  fold: 'diagonal',
};

const idsOf = (lessons: readonly Lesson[], place: Partial<Place> = {}): number[] =>
  comeUp(lessons, { ...HERE, ...place }).map(({ id }) => id);

describe('a lesson matters', () => {
  test.each<[LessonStep, Partial<LessonFeatures>, boolean]>([
    ['glue', { kind: 'vellum' }, true],
    ['glue', { design: 7 }, true],
    ['glue', { kind: 'kraft' }, false],
    ['glue', { tool: 1, size: 'medium', fold: 'diagonal' }, false],
    ['paper', { kind: 'vellum' }, true],
    ['paper', { fold: 'diagonal' }, false],
    ['cut', { design: 7 }, true],
    ['cut', { tool: 1 }, false],
    ['notch', { tool: 1 }, true],
    ['notch', { tool: 2, design: 7 }, false],
    ['score', { kind: 'vellum' }, true],
    ['score', { tool: 1 }, false],
    ['fold', { fold: 'diagonal' }, true],
    ['fold', { fold: 'two-piece' }, false],
    ['fit', { size: 'medium' }, true],
    ['fit', { size: 'large', design: 7 }, false],
    ['glue', {}, false],
  ])('at %s by %j: %s', (step, features, does) => {
    expect(idsOf([lesson(1, step, features)], { steps: [step] })).toEqual(does ? [1] : []);
  });

  test('at its own step alone, and nowhere without one', () => {
    const vellum = { kind: 'vellum' } as const;
    expect(idsOf([lesson(1, 'score', vellum), lesson(2, null, vellum)])).toEqual([]);
    expect(idsOf([lesson(1, 'score', vellum)], { steps: ['paper', 'score'] })).toEqual([1]);
  });

  test('of another part only where that part is made, whatever the step', () => {
    const liner = lesson(1, 'glue', { part: 'liner', kind: 'vellum' });
    expect(idsOf([liner])).toEqual([]);
    expect(idsOf([liner], { parts: ['liner'], steps: [], kinds: [] })).toEqual([1]);
    expect(idsOf([{ ...liner, step: null }], { parts: ['base', 'liner'], steps: [] })).toEqual([1]);
    expect(idsOf([lesson(2, 'glue', { kind: 'vellum' })], { parts: ['liner'] })).toEqual([]);
  });
});

describe('of those that matter', () => {
  /** Each outweighs all that stand below it together. */
  const WEIGHTIEST_FIRST: readonly (readonly [string, Partial<LessonFeatures>])[] = [
    ['the design', { design: 7 }],
    ['kind, tool, size and fold', { kind: 'vellum', tool: 1, size: 'medium', fold: 'diagonal' }],
    ['kind and tool', { kind: 'vellum', tool: 1 }],
    ['kind, size and fold', { kind: 'vellum', size: 'medium', fold: 'diagonal' }],
    ['kind and fold', { kind: 'vellum', fold: 'diagonal' }],
    ['the kind', { kind: 'vellum' }],
  ];

  test.each(WEIGHTIEST_FIRST.slice(1).map((_, index) => index))('rank %i goes before the next', (index) => {
    const [first, second] = [WEIGHTIEST_FIRST[index]![1], WEIGHTIEST_FIRST[index + 1]![1]];
    expect(idsOf([lesson(9, 'glue', second), lesson(1, 'glue', first)])).toEqual([1, 9]);
  });

  test('two come up, the newer of equals first', () => {
    const vellum = { kind: 'vellum' } as const;
    expect(idsOf([1, 3, 2].map((id) => lesson(id, 'glue', vellum)))).toEqual([3, 2]);
  });

  test('what is to come up always leads, and needs to share nothing but the step', () => {
    const always = lesson(1, 'glue', {}, { always: true });
    expect(idsOf([lesson(2, 'glue', { design: 7 }), always])).toEqual([1, 2]);
    expect(idsOf([always], { steps: ['score'] })).toEqual([]);
  });

  test('the same words come once', () => {
    const said = { words: 'Dry tape only.' };
    const lessons = [1, 2, 3].map((id) => lesson(id, 'glue', { kind: 'vellum' }, id < 3 ? {} : said));
    expect(idsOf([...lessons, lesson(4, 'glue', { kind: 'vellum' }, said)])).toEqual([4, 2]);
  });
});

test.each([
  [3.5, 2, 'small'],
  [2, 3.51, 'medium'],
  [6, 4, 'medium'],
  [4, 6.01, 'large'],
])('a card of %d × %d in is %s', (width, height, expected) => {
  expect(sizeClassOf(size(width, height))).toBe(expected);
  expect(sizeClassOf({ width: inches(height), height: inches(width) })).toBe(expected);
});
