/** A batch asked once more, for what has come about since. Knows neither shelf nor planner. */

import type { ProjectSoFar } from '#core/project/journal.ts';
import { lacking } from '#core/project/next.ts';
import { type Batch, partsLeft } from './batch.ts';
import type { Plan } from './planned.ts';

export interface Otherwise {
  /** A piece to leave alone besides those left alone before, by its name in the order. */
  readonly keep?: string | undefined;
  /** The one design that the envelopes, and what matches them, are to be of. */
  readonly design?: number | undefined;
}

/** The batch of a plan without the parts that its trial has cut; `last` is the last plan asked for the project. */
export function stillAsked(plan: Plan, last: Plan | undefined): Batch {
  if (!last?.trial || !last.cut || last.insteadOf !== plan.id) return plan.batch;
  return { ...plan.batch, parts: partsLeft(plan.batch, last) };
}

/**
 * As it was asked, less the blanks that came from elsewhere meanwhile. `known` is the batch's own project and whichever
 * others still lack blanks; blanks of any other are asked for no more.
 */
export function batchAgain(
  batch: Batch,
  own: ProjectSoFar,
  { others, keep, design }: Otherwise & { readonly others: readonly ProjectSoFar[] },
): Batch {
  const known = [own, ...others];
  const blanks = batch.blanks.flatMap((one) => {
    const now = known.find(({ project }) => project.id === one.project);
    if (!now) return [];
    const missing = lacking(now);
    return [{ ...one, missing, copies: Math.max(0, one.copies - Math.max(0, one.missing - missing)) }];
  });
  return {
    ...batch,
    blanks,
    keep: keep === undefined ? batch.keep : [...new Set([...batch.keep, keep])],
    ...(design !== undefined && fromDesign(batch, design)),
  };
}

const fromDesign = ({ parts }: Batch, design: number) => ({
  paper: { of: 'design' as const, design },
  parts: parts.map((part) => (part.match ? { ...part, paper: { of: 'design' as const, design } } : part)),
});
