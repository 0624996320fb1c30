/**
 * Something that has to go into something: what fits into a box, tin or pocket, and what holds a given set. Knows
 * insides and thicknesses, no recipes.
 */
import type { Checked, Problem } from '#shared/checked.ts';
import { add, inches, type Length, subtract, times } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { ifSound, negativeProblem, sizeProblems } from './part.ts';

/** The inside: envelopes lie on width × height and are stacked along the depth. */
export interface Holder extends Size {
  readonly depth: Length;
}

export interface HolderWish {
  readonly holder: Holder;
  /** Room for fingers, in all, along width and along height. */
  readonly play: Length;
  /** What the envelope is larger than its card, in all, in either direction. */
  readonly clearance: Length;
  /** One finished set: its card in its envelope. */
  readonly setBulk: Length;
}

export interface InHolder {
  readonly envelope: Size;
  readonly card: Size;
  /** How many sets the depth takes, one on another; at least one. */
  readonly sets: number;
}

/** The largest envelope and card that lie flat in the holder, and how many sets go on one another. */
export function fitsInto(wish: HolderWish): Checked<InHolder> {
  const envelope = less(wish.holder, wish.play);
  const card = less(envelope, wish.clearance);
  return ifSound(holderProblems(wish, card), () => ({
    envelope,
    card,
    sets: Math.floor(wish.holder.depth / wish.setBulk),
  }));
}

export interface SetsWish {
  readonly envelope: Size;
  readonly setBulk: Length;
  readonly sets: number;
  readonly play: Length;
}

/** The inside that a holder for these sets needs. */
export function holderFor(wish: SetsWish): Checked<Holder> {
  const problems = [
    ...sizeProblems(wish.envelope),
    ...bulkProblems(wish.setBulk),
    ...negativeProblem(wish.play, 'play', 'Play'),
    ...(Number.isInteger(wish.sets) && wish.sets >= 1
      ? []
      : [{ field: 'sets', message: 'Type a whole number from 1.' }]),
  ];
  return ifSound(problems, () => ({
    width: add(wish.envelope.width, wish.play),
    height: add(wish.envelope.height, wish.play),
    depth: times(wish.setBulk, wish.sets),
  }));
}

/** No card that anyone folds is smaller: a choice of ours. */
const SMALLEST_CARD = inches(1);

const less = (size: Size, by: Length): Size => ({
  width: subtract(size.width, by),
  height: subtract(size.height, by),
});

const bulkProblems = (bulk: Length): Problem[] =>
  bulk > 0 ? [] : [{ field: 'setBulk', message: 'This has to be more than zero.' }];

function holderProblems({ holder, play, clearance, setBulk }: HolderWish, card: Size): Problem[] {
  const sides = (['width', 'height'] as const).filter((side) => card[side] < SMALLEST_CARD);
  return [
    ...negativeProblem(play, 'play', 'Play'),
    ...negativeProblem(clearance, 'clearance', 'A clearance'),
    ...bulkProblems(setBulk),
    ...sides.map((side) => ({ field: `holder.${side}`, message: 'This leaves room for no card.' })),
    ...(setBulk > 0 && holder.depth < setBulk
      ? [{ field: 'holder.depth', message: 'Not even one set is this thin.' }]
      : []),
  ];
}
