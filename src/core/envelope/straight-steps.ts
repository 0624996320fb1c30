/**
 * The making of straight-sided envelopes as data: what each of their folds does to a sheet, step by step. Says nothing
 * in words and draws nothing.
 */
import { type Length, length } from '#shared/length.ts';
import type { FlatLayout, Look, ScoreLine, Step } from './fold.ts';

/** Cutting, laying down, scoring and trimming one sheet: all that comes before folding. */
export function sheetSteps(layout: FlatLayout, sheet: number, look?: Look): Step[] {
  const here = { lit: {}, turns: 0, sheet };
  return [
    { ...here, kind: 'cut', blank: layout.blank, caution: 'blade' },
    ...(look ? [{ ...here, kind: 'lay', placement: look.placement } as const] : []),
    ...layout.scores.map(
      (line): Step => ({
        ...here,
        kind: 'score',
        score: line.order,
        at: placeOf(line),
        lit: { score: line.order },
      }),
    ),
    ...layout.flaps.map(
      ({ letter, finish }): Step => ({
        ...here,
        kind: 'trim',
        flap: letter,
        finish,
        lit: { flaps: [letter] },
        caution: 'blade',
      }),
    ),
  ];
}

/** Every line is measured from the same edge as the one opposite, so that the pocket doesn't ask how true the blank is. */
function placeOf({ from, to }: ScoreLine): { from: 'left' | 'top'; distance: Length } {
  const upright = Math.abs(from.x - to.x) < Math.abs(from.y - to.y);
  return { from: upright ? 'left' : 'top', distance: length(Math.round(upright ? from.x : from.y)) };
}
