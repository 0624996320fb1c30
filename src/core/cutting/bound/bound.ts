/**
 * How good any plan could be: a copy of a part is priced by two dual feasible functions, a piece can hold only so much
 * at these prices, and what the offcuts cannot hold needs sheets. Knows nothing of the search; holds for every plan.
 */
import { fits, type Job, type Stock } from '../search/job.ts';
import { bestPricings, type Group, leastSheets, leastUnplaced } from './pricing.ts';
import { setBounds } from './sets.ts';

export interface Bound {
  /** No plan leaves fewer copies unplaced. */
  readonly unplaced: number;
  /** Parts that fit no piece that they may come from: all their copies are among the unplaced. */
  readonly hopeless: readonly number[];
  /** No plan that leaves so many copies opens less area of sheets, in grid units. */
  readonly sheetArea: (unplaced: number) => number;
}

/**
 * The product of two functions prices a part validly for any layout, cut edge to edge or not (Fekete & Schepers 2004);
 * where a part may be turned it takes the lower of its two prices, or both take the mean with the functions swapped.
 * Pins are left out, and matching but for what it costs by itself; when it is `late` fewer functions are tried. All that
 * can only make the bound weaker.
 */
export function bound(job: Job, late: () => boolean = () => false): Bound {
  const hopeless = hopelessParts(job);
  const groups = components(job, hopeless).map((group) => groupBound(job, group, late));
  const lost = hopeless.reduce((sum, part) => sum + job.copies[part]!, 0);
  const alone = {
    unplaced: groups.reduce((sum, one) => sum + one.unplaced, lost),
    sheetArea: (unplaced: number) => groups.reduce((sum, one) => sum + one.sheetArea(unplaced - lost), 0),
  };
  const matched = matchedBound(job, hopeless, late);
  return {
    hopeless,
    unplaced: Math.max(alone.unplaced, matched.unplaced),
    sheetArea: (unplaced) => Math.max(alone.sheetArea(unplaced), matched.sheetArea(unplaced)),
  };
}

/** What both bounds on the same job say together. */
export const tighter = (one: Bound, other: Bound): Bound => ({
  hopeless: one.hopeless,
  unplaced: Math.max(one.unplaced, other.unplaced),
  sheetArea: (unplaced) => Math.max(one.sheetArea(unplaced), other.sheetArea(unplaced)),
});

/** Labels leave out copies of their own, whatever the others do; the sheets that one needs may serve the others. */
function matchedBound(job: Job, hopeless: readonly number[], late: () => boolean): Omit<Bound, 'hopeless'> {
  const labels = setBounds(job, late);
  const counted = new Set(labels.flatMap(({ parts }) => parts));
  const lost = hopeless.reduce((sum, part) => sum + (counted.has(part) ? 0 : job.copies[part]!), 0);
  const unplaced = labels.reduce((sum, one) => sum + one.unplaced, lost);
  return {
    unplaced,
    sheetArea: (left) =>
      labels.reduce((most, one) => Math.max(most, one.sheetArea(left - unplaced + one.unplaced)), 0),
  };
}

/** Parts that fit no piece that they may come from. */
function hopelessParts(job: Job): number[] {
  return job.parts.flatMap((_, part) => (job.stocks.some((stock) => fits(job, part, stock)) ? [] : [part]));
}

/** Parts and pieces that have nothing to do with each other are bounded apart. */
function components(job: Job, hopeless: readonly number[]): Group[] {
  const left = new Set(job.parts.keys());
  for (const part of hopeless) left.delete(part);
  const groups: Group[] = [];
  for (const first of left) {
    const parts = [first];
    const stocks = new Set<Stock>();
    left.delete(first);
    for (let at = 0; at < parts.length; at += 1) {
      for (const stock of job.stocks) {
        if (stocks.has(stock) || !fits(job, parts[at]!, stock)) continue;
        stocks.add(stock);
        for (const other of left) {
          if (!fits(job, other, stock)) continue;
          left.delete(other);
          parts.push(other);
        }
      }
    }
    groups.push({ parts, stocks: [...stocks] });
  }
  return groups;
}

function groupBound(job: Job, group: Group, late: () => boolean): Omit<Bound, 'hopeless'> {
  const pricings = bestPricings(job, group, late);
  const copies = group.parts.map((part) => job.copies[part]!);
  const unplaced = Math.max(0, ...pricings.map((pricing) => leastUnplaced(pricing, copies, group.stocks)));
  return {
    unplaced,
    sheetArea: (left) =>
      pricings.reduce((most, pricing) => Math.max(most, leastSheets(pricing, copies, group.stocks, left)), 0),
  };
}
