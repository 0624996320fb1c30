/** How far a project has come, from what has been done. */
import { describe, expect, it } from 'vitest';
import { projectState } from '#core/project/states.ts';

const NOTHING = { hasRecipe: false, cuts: 0, blanks: 0, made: 0, quantity: 3, finished: false };

describe('a project', () => {
  it.each([
    ['idea', {}],
    ['planned', { hasRecipe: true }],
    ['cut', { cuts: 1 }],
    ['cut', { hasRecipe: true, cuts: 1, blanks: 3 }],
    ['cut', { hasRecipe: true, cuts: 1, blanks: 1, made: 2 }],
    ['made', { hasRecipe: true, cuts: 1, made: 3 }],
    ['made', { hasRecipe: true, cuts: 2, blanks: 1, made: 4 }],
    ['made', { finished: true }],
  ] as const)('is %s with %o', (state, done) => {
    expect(projectState({ ...NOTHING, ...done })).toBe(state);
  });
});
