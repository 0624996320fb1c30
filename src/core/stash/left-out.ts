/**
 * The paper that an order is not cut from, with the reasons: what stands before any claim about the best plan. Knows no
 * words; what suits is said by suits.ts.
 */
import type { Piece } from './stash.ts';
import type { Unsuited } from './suits.ts';

/** `kept` on the shelf as the maker asked. */
export type WhyLeftOut = Unsuited | { readonly why: 'kept' };

/** Paper of one design left out for one reason: its sheets, or some of its offcuts. */
export interface LeftOut {
  /** The part that it is left out for; null where no part at all comes from it. */
  readonly part: string | null;
  readonly why: WhyLeftOut;
  readonly design: number;
  readonly sheets: boolean;
  /** The first few of them. */
  readonly offcuts: readonly number[];
  readonly count: number;
}

interface Judged {
  readonly piece: Piece;
  readonly kept: boolean;
  /** By part, in the order's order. */
  readonly why: readonly (Unsuited | undefined)[];
}

/** More offcuts of one design are only counted. */
const MOST_TOLD = 6;

/** In the order in which the pieces are given; of several reasons for one piece that of the first part counts. */
export function leftOutOf(parts: readonly string[], judged: readonly Judged[]): LeftOut[] {
  const found = new Map<string, LeftOut>();
  const add = (part: string | null, why: WhyLeftOut, { design, offcut }: Piece): void => {
    const key = JSON.stringify([part, why, design.id, offcut === null]);
    const before = found.get(key) ?? { part, why, design: design.id, sheets: !offcut, offcuts: [], count: 0 };
    const offcuts = offcut && before.count < MOST_TOLD ? [...before.offcuts, offcut.id] : before.offcuts;
    found.set(key, { ...before, offcuts, count: before.count + 1 });
  };
  for (const { piece, kept, why } of judged) {
    const first = why[0];
    if (kept) add(null, { why: 'kept' }, piece);
    else if (first && why.every((one) => one !== undefined)) add(null, first, piece);
    else for (const [index, one] of why.entries()) if (one) add(parts[index]!, one, piece);
  }
  return [...found.values()];
}
