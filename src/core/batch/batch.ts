/**
 * What the maker asks to have cut together: blanks still missing in her projects, and parts typed in. Knows names and
 * numbers; which pieces will do is for order.ts to say.
 */
import type { CutPlan } from '#core/cutting/cuts.ts';
import { ENVELOPE_PART } from '#core/stash/stash.ts';
import type { Match, PaperAsked, PartAsked } from '#shared/batch.ts';
import { type BatchOrder, isTyped } from './identity.ts';

/** `missing` is how many blanks the project lacked when this was asked. */
export interface BlanksAsked {
  readonly project: number;
  readonly copies: number;
  readonly missing: number;
}

export interface Batch {
  /** The plan's own project first; any others belong to its series. */
  readonly blanks: readonly BlanksAsked[];
  readonly paper: PaperAsked;
  readonly parts: readonly PartAsked[];
  readonly match: Match;
  /** Pieces left alone, by their names in the order. */
  readonly keep: readonly string[];
}

/** `piece` counts from 0: a fold of two pieces has two blanks for each envelope. */
export function blankName(own: boolean, project: number, piece: number): string {
  const name = piece === 0 ? ENVELOPE_PART : `${ENVELOPE_PART}, piece ${piece + 1}`;
  return own ? name : `${name} (project ${project})`;
}

/** The names of the typed parts in the order, each used once and none taken for an envelope. */
export function partNames(parts: readonly Pick<PartAsked, 'name'>[]): string[] {
  const taken = new Set<string>();
  return parts.map(({ name }) => {
    const start = name.toLowerCase().startsWith(ENVELOPE_PART) ? `Part ${name}` : name;
    let free = start;
    for (let count = 2; taken.has(free); count += 1) free = `${start} ${count}`;
    taken.add(free);
    return free;
  });
}

/** What is still to be cut of the typed parts, once what the plan placed is cut and `spoiled` of it is lost. */
export function partsLeft(
  { parts }: Batch,
  done: {
    readonly order: BatchOrder;
    readonly plan: CutPlan | null;
    readonly spoiled: readonly { readonly part: string }[];
  },
): PartAsked[] {
  const cut = (done.plan?.used ?? []).flatMap((one) => one.rectangles);
  return parts.flatMap((part, index) => {
    const ordered = done.order.parts.find((one) => isTyped(one) && one.of.typed === index)?.id;
    const had = cut.filter((one) => one.part === ordered).length;
    const lost = done.spoiled.filter((one) => one.part === ordered).length;
    const copies = part.copies - had + lost;
    return copies > 0 ? [{ ...part, copies }] : [];
  });
}
