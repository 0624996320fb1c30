/** Each making step in words: the instruction itself, one sentence on how, and the usual caution. Knows no drawings. */
import { sideOf } from '#core/drawing/paper.ts';
import type { Caution, Placement, Step } from '#core/envelope/fold.ts';
import { placementWords } from '#core/envelope/placement.ts';
import type { HingedLetter, Recipe } from '#core/envelope/recipe.ts';
import { printExact, printExactSize, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { capital, listed } from '#views/common/words.ts';
import { sayFinish } from '../common/finish.ts';

export interface Instruction {
  readonly what: string;
  readonly how: string;
}

export function sayStep(step: Step, recipe: Recipe, units: Units): Instruction {
  switch (step.kind) {
    case 'cut':
      return {
        what: `Cut ${blankWords(step.blank, units)}.`,
        how: 'If it lies cut in front of you, measure both sides once and go on.',
      };
    case 'lay':
      return { what: `${capital(placementWords(step.placement))}.`, how: layWhy(step.placement) };
    case 'measure':
      return {
        what: `Set the edge to ${printExact(step.start, units)}.`,
        how: 'From the left corner along the top edge. It is the only place you measure.',
      };
    case 'turn':
      return {
        what: `Turn a quarter, ${step.turning}.`,
        how: `Line score ${step.lineUpWith} up with the tool. It is the guide for the next notch: no measuring.`,
      };
    case 'notch':
      return { what: `Notch ${step.notch}.`, how: 'Hold the sheet flat against the edge and press once.' };
    case 'score':
      return {
        what: step.at
          ? `Score ${step.score}, ${printExact(step.at.distance, units)} from the ${step.at.from} edge.`
          : `Score ${step.score}.`,
        how: 'Press just until the line shows on the other side. Where fibres lift, ease off: a torn score splits.',
      };
    case 'trim':
      return trimWords(step.flap, sayFinish(step.finish, units));
    case 'fold':
      return foldWords(step.flaps, recipe);
    case 'glue':
      return glueWords(step.flap, step.onto);
    case 'close':
      return {
        what: `Fold ${step.flap} over to close.`,
        how: 'The flap stays open until the card is in. That is the envelope.',
      };
  }
}

export const SAY_CAUTION: Record<Caution, string> = {
  blade: 'Blade: a fresh one, along a metal edge, fingers well behind it.',
  adhesive: 'Adhesive: off the skin, and air the room. Hot glue burns: don’t press it with bare fingers.',
};

/** `a square, 8″`; `a piece, 6 × 14″`. */
const blankWords = (blank: Size, units: Units): string =>
  blank.width === blank.height
    ? `a square, ${printExact(blank.width, units)}`
    : `a piece, ${printExactSize(blank, units)}`;

const layWhy = ({ faceDown }: Placement): string =>
  faceDown === 'print'
    ? 'The inside of the envelope looks up at you from now on.'
    : 'So the back of the paper comes out, and the print lines the envelope.';

const trimWords = (flap: HingedLetter, finish: string): Instruction => ({
  what: `Flap ${flap}: ${finish}.`,
  how: 'The hatched part comes off. Measure from the score line, not from the tip.',
});

function foldWords(flaps: readonly HingedLetter[], recipe: Recipe): Instruction {
  const sides = flaps.map((letter) => sideOf(recipe, letter));
  const what = `Fold in ${listed(flaps)}, ${listed(sides)}.`;
  return flaps.length > 1
    ? { what, how: 'Crease along the scores, from their middle outwards.' }
    : { what, how: 'Over the two before it. Crease it and see that it lies flat.' };
}

/** Where the closing flap's own piece takes the glue, the fold is made of two. */
const glueWords = (flap: HingedLetter, onto: readonly HingedLetter[]): Instruction =>
  flap === 'D'
    ? {
        what: 'Glue the two pieces together.',
        how: `A thin line inside the dotted bands; then the other piece on it, its tabs ${listed(onto)} inside.`,
      }
    : {
        what: `Glue ${flap} onto ${listed(onto)}.`,
        how: 'Open it once more. A thin line inside the dotted bands, never across the gap between them.',
      };
