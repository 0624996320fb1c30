/** Prints a plan's lengths and areas in the unit in which its order came in. Knows plans and units; plans nothing. */
import { type Length, length, PER_INCH, PER_MILLIMETRE, typedLength } from '#shared/length.ts';
import { type CutPlan, type CutTree, isCut, type Remedy } from './cuts.ts';

/**
 * As it is for `given`; else with lengths as text (`4 7/8 in`, `133 mm`) and areas and worth as numbers of square and
 * cubic inches or millimetres, named in `unit`.
 */
export function inUnitsGiven(plan: CutPlan, unit: 'given' | 'in' | 'mm'): unknown {
  if (unit === 'given') return plan;
  const per = unit === 'in' ? PER_INCH : PER_MILLIMETRE;
  const text = (units: number): string => withUnit(length(units), unit);
  const texts = <T extends object>(lengths: T): unknown =>
    Object.fromEntries(
      Object.entries(lengths).map(([key, value]) => [key, typeof value === 'number' ? text(value) : value]),
    );
  return {
    unit,
    ...plan,
    unplaced: plan.unplaced.map((one) => ({
      ...one,
      remedies: one.remedies.map((remedy) => (MEASURED.includes(remedy.kind) ? texts(remedy) : remedy)),
    })),
    newSheetArea: tidy(plan.newSheetArea / per ** 2),
    offcutAreaUsed: tidy(plan.offcutAreaUsed / per ** 2),
    worthLost: tidy(plan.worthLost / per ** 3),
    bounds: { ...plan.bounds, newSheetArea: tidy(plan.bounds.newSheetArea / per ** 2) },
    limits: texts(plan.limits),
    used: plan.used.map((used) => ({
      ...used,
      rectangles: used.rectangles.map(texts),
      leftovers: used.leftovers.map(texts),
      cuts: cutsAsText(used.cuts, text),
    })),
    patterns: plan.patterns.map((pattern) => ({ ...pattern, rectangles: pattern.rectangles.map(texts) })),
    steps: plan.steps.map((step) => ({
      ...step,
      set: text(step.set),
      laid: step.laid.map((one) => ({
        ...one,
        block: texts(one.block),
        kept: one.kept.map(texts),
        rest: texts(one.rest),
      })),
    })),
  };
}

/** Remedies whose numbers are lengths. */
const MEASURED: readonly Remedy['kind'][] = ['smaller', 'longer cut'];

function withUnit(length: Length, unit: 'in' | 'mm'): string {
  const typed =
    unit === 'in' ? typedLength(length, { unit: 'in', step: 32 }) : typedLength(length, { unit: 'mm' });
  return typed.endsWith('mm') ? typed : `${typed} ${unit}`;
}

const cutsAsText = (node: CutTree, text: (length: number) => string): unknown =>
  isCut(node)
    ? { ...node, at: text(node.at), parts: node.parts.map((part) => cutsAsText(part, text)) }
    : node;

/** Without the last digits of a floating division. */
const tidy = (amount: number): number => Number(amount.toPrecision(12));
