/** The batch that a project made again asks for: the parts and papers of the one before, or what takes a paper's place. */
import type { Envelope } from '#core/project/journal.ts';
import type { Design } from '#core/stash/stash.ts';
import type { PaperAsked } from '#shared/batch.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { Batch } from './batch.ts';
import type { Plan } from './planned.ts';
import { partsAskedIn } from './set-parts.ts';

interface Before {
  /** In the order in which they were asked. */
  readonly plans: readonly Plan[];
  readonly envelopes: readonly Envelope[];
}

interface OnShelf {
  /** Every design that the project before names. */
  readonly designs: ReadonlyMap<number, Design>;
  /** Of which something is left. */
  readonly left: ReadonlySet<number>;
  readonly kinds: readonly PaperKind[];
}

/** A design that is used up, and the paper that is asked for in its place. */
export interface PaperGone {
  readonly name: string;
  readonly instead: PaperAsked;
}

/** Of a design that is used up its kind is asked for, and any paper where none of that kind is left. */
export function batchFrom(
  before: Before,
  shelf: OnShelf,
): { readonly batch: Omit<Batch, 'blanks'>; readonly gone: readonly PaperGone[] } {
  const last = before.plans.findLast(({ trial }) => !trial);
  const parts = partsAskedIn(before.plans);
  const paper = last?.batch.paper ?? paperOf(before.envelopes);
  const standIn = (asked: PaperAsked): PaperAsked => insteadOf(asked, shelf) ?? asked;
  const named = new Set([paper, ...parts.map((part) => part.paper)].flatMap(designOf));
  return {
    batch: {
      paper: standIn(paper),
      parts: parts.map((part) => ({ ...part, paper: standIn(part.paper) })),
      match: last?.batch.match ?? 'each set',
      keep: [],
    },
    gone: [...named].flatMap((design) => {
      const instead = insteadOf({ of: 'design', design }, shelf);
      return instead ? [{ name: shelf.designs.get(design)?.name ?? 'A design', instead }] : [];
    }),
  };
}

/** The designs that a batch like this would name. */
export const designsNamed = ({ plans, envelopes }: Before): number[] => [
  ...new Set(
    [
      paperOf(envelopes),
      ...plans.flatMap(({ batch }) => [batch.paper, ...batch.parts.map((part) => part.paper)]),
    ].flatMap(designOf),
  ),
];

/** The one design that all its envelopes are of; any paper where they are of several or none. */
function paperOf(envelopes: readonly Envelope[]): PaperAsked {
  const used = new Set(
    envelopes.flatMap(({ design, state }) => (design === null || state === 'spoiled' ? [] : [design])),
  );
  const [design] = used;
  return used.size === 1 && design !== undefined ? { of: 'design', design } : { of: 'any' };
}

function insteadOf(asked: PaperAsked, { designs, left, kinds }: OnShelf): PaperAsked | undefined {
  if (asked.of !== 'design' || left.has(asked.design)) return undefined;
  const kind = designs.get(asked.design)?.pad.kind;
  return kind && kinds.includes(kind) ? { of: 'kind', kind } : { of: 'any' };
}

const designOf = (asked: PaperAsked): number[] => (asked.of === 'design' ? [asked.design] : []);
