/**
 * How fast paper goes, from what was taken for projects. A batch is one project's takings; the pace is the mean over the
 * last twelve months, and nothing is said of it before there were two batches. Knows no ledger.
 */

/** Sheets taken for projects since `paceSince`, takings undone left out; `known` is the first line of its ledger. */
export interface Use {
  readonly sheets: number;
  readonly batches: number;
  readonly known: string;
}

/** `perMonth` is null where the paper has been known for less than two months. */
export interface Pace {
  readonly perBatch: number;
  readonly perMonth: number | null;
}

const DAY = 24 * 60 * 60 * 1000;
const YEAR = 365 * DAY;
const MONTH = YEAR / 12;
const FEWEST_BATCHES = 2;
const FEWEST_MONTHS = 2;

/** The moment from which takings count towards the pace. */
export const paceSince = (now: string): string => new Date(Date.parse(now) - YEAR).toISOString();

/** Undefined where too little is known to say anything. */
export function paceOf({ sheets, batches, known }: Use, now: string): Pace | undefined {
  if (batches < FEWEST_BATCHES || sheets <= 0) return undefined;
  const months = (Date.parse(now) - Math.max(Date.parse(known), Date.parse(paceSince(now)))) / MONTH;
  return { perBatch: sheets / batches, perMonth: months < FEWEST_MONTHS ? null : sheets / months };
}

/** Whole batches that so many sheets last for at this pace. */
export const batchesLeft = (sheets: number, { perBatch }: Pace): number => Math.floor(sheets / perBatch);

/** A project that paper was taken for; 0 sheets where only offcuts of it were. */
export interface ProjectUse {
  readonly project: number;
  readonly title: string;
  readonly sheets: number;
}

/** `month` as in `2026-03`. */
export interface MonthUse {
  readonly month: string;
  readonly sheets: number;
  readonly batches: number;
}
