/**
 * The making of a diagonal fold as data, one step at a time: only the first notch is measured, each later one is found
 * by a quarter turn and the score before. Says nothing in words and draws nothing.
 */
import type { Look, Step, StepAction } from './fold.ts';
import type { FlapLetter, Recipe, Turning } from './recipe.ts';
import { gluedTo } from './seam.ts';
import { turnedSquareOf } from './turned-square.ts';

const NOTCHES = [1, 2, 3, 4] as const;

/** Notches and scores are numbered in the order made, as in the flat layout for the same turning. */
export function diagonalSteps(recipe: Recipe, turning: Turning, look?: Look): Step[] {
  return [
    step(0, { kind: 'cut', blank: recipe.blank }, { caution: 'blade' }),
    ...(look ? [step(0, { kind: 'lay', placement: look.placement })] : []),
    ...NOTCHES.flatMap((notch) => notchAndScore(notch, recipe, turning)),
    ...trims(recipe),
    step(0, { kind: 'fold', flaps: ['A', 'B'] }, { lit: { flaps: ['A', 'B'] } }),
    step(0, { kind: 'fold', flaps: ['C'] }, { lit: { flaps: ['C'] } }),
    ...glueOnto(gluedTo(turnedSquareOf(recipe), recipe.flaps)),
    step(0, { kind: 'close', flap: 'D' }, { lit: { flaps: ['D'] } }),
  ];
}

/** No step where nothing lies under C to be glued to. */
const glueOnto = (onto: readonly FlapLetter[]): Step[] =>
  onto.length === 0
    ? []
    : [step(0, { kind: 'glue', flap: 'C', onto }, { lit: { flaps: ['C'] }, caution: 'adhesive' })];

function notchAndScore(notch: number, { starts }: Recipe, turning: Turning): Step[] {
  const turns = quarterTurns(notch - 1, turning);
  const find: StepAction =
    notch === 1 ? { kind: 'measure', start: starts[0] } : { kind: 'turn', turning, lineUpWith: notch - 1 };
  return [
    step(turns, find, { lit: notch === 1 ? { notch } : { score: notch - 1 } }),
    step(turns, { kind: 'notch', notch }, { lit: { notch }, caution: 'blade' }),
    step(turns, { kind: 'score', score: notch }, { lit: { score: notch } }),
  ];
}

/** How the sheet lies after so many quarter turns, counted clockwise. */
const quarterTurns = (count: number, turning: Turning): number =>
  turning === 'clockwise' ? count : (4 - count) % 4;

const trims = ({ flaps }: Recipe): Step[] =>
  flaps
    .filter(({ finish }) => finish.shape !== 'pointed')
    .map(({ letter, finish }) =>
      step(0, { kind: 'trim', flap: letter, finish }, { lit: { flaps: [letter] }, caution: 'blade' }),
    );

const step = (
  turns: number,
  action: StepAction,
  extra: Partial<Pick<Step, 'lit' | 'caution'>> = {},
): Step => ({
  turns,
  lit: {},
  ...extra,
  ...action,
});
