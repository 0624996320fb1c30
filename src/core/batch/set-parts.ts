/** All parts of a project's set: its envelopes, and what its plans were asked to cut beside them. Knows no paper. */
import { foldOf } from '#core/envelope/folds.ts';
import type { ProjectSoFar } from '#core/project/journal.ts';
import { missingBlanks } from '#core/project/next.ts';
import { workingMeasures } from '#core/project/working-measures.ts';
import type { PartAsked } from '#shared/batch.ts';
import type { Size } from '#shared/size.ts';
import { isTyped } from './identity.ts';
import type { Plan } from './planned.ts';

export interface SetRow extends Size {
  /** Undefined for the envelope's own blanks. */
  readonly name: string | undefined;
  readonly count: number;
  /** Not cut yet, or spoiled since. */
  readonly missing: number;
}

/** `plans` in the order in which they were asked. */
export const partsOfSet = (soFar: ProjectSoFar, plans: readonly Plan[]): SetRow[] => [
  ...blankRows(soFar),
  ...tallyParts(plans).map(({ part, wanted, done }) => ({
    name: part.name,
    width: part.width,
    height: part.height,
    count: wanted,
    missing: Math.max(0, wanted - done),
  })),
];

/** The parts as they were asked for, each with all of its copies. */
export const partsAskedIn = (plans: readonly Plan[]): PartAsked[] =>
  tallyParts(plans).map(({ part, wanted }) => ({ ...part, copies: wanted }));

function blankRows(soFar: ProjectSoFar): SetRow[] {
  const recipe = workingMeasures(soFar)?.recipe;
  if (!recipe) return [];
  const { quantity } = soFar.project;
  const missing = missingBlanks(quantity, soFar.envelopes);
  return foldOf(recipe)
    .blanks(recipe)
    .map((blank) => ({ ...blank, name: undefined, count: quantity, missing }));
}

interface Tally {
  readonly part: PartAsked;
  readonly wanted: number;
  readonly done: number;
}

/** What a plan asks for comes on top of what was cut before it; a plan asked in place of another asks for the same again. */
function tallyParts(plans: readonly Plan[]): Tally[] {
  const parts = new Map<string, Tally>();
  for (const plan of plans) {
    const before = new Map(parts);
    plan.batch.parts.forEach((part, index) => {
      const key = JSON.stringify([part.name, part.width, part.height]);
      const done = before.get(key)?.done ?? 0;
      const known = parts.get(key) ?? { part, wanted: 0, done };
      const wanted = Math.max(known.wanted, done + part.copies);
      parts.set(key, { part, wanted, done: known.done + (plan.cut ? cutOf(plan, index) : 0) });
    });
  }
  return [...parts.values()];
}

function cutOf({ order, plan, spoiled }: Plan, typed: number): number {
  const id = order.parts.find((one) => isTyped(one) && one.of.typed === typed)?.id;
  const cut = (plan?.used ?? []).flatMap((one) => one.rectangles).filter((one) => one.part === id);
  return cut.length - spoiled.filter((one) => one.part === id).length;
}
