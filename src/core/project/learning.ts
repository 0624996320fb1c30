/**
 * A maker's tool, and what her outcomes have taught about it. Inset and zero offset are worked out afresh whenever they
 * are read; only what she pinned, and when she started afresh, is given. Knows no database.
 */
import { type Calibration, calibrate, type Observation } from '#core/envelope/calibrate.ts';
import type { Notcher, Turning } from '#core/envelope/recipe.ts';
import type { Length } from '#shared/length.ts';
import type { Outcome } from './journal.ts';

export interface NewTool {
  readonly name: string;
  readonly kind: 'notcher' | 'ruler';
  readonly graduation: Length;
  readonly largestSheet: Length;
  readonly turning: Turning;
  /** Held to this value whatever outcomes say; null learns it. */
  readonly pinnedInset: Length | null;
  readonly pinnedZeroOffset: Length | null;
}

export interface Tool extends NewTool {
  readonly id: number;
  /** Outcomes up to here are not learned from. */
  readonly learningSince: string | null;
  /** The one in use. */
  readonly chosen: boolean;
}

/** A pocket measured on an envelope of a project, as the calibration reads it. */
export interface NotedObservation extends Observation {
  readonly envelope: number;
  readonly number: number;
  readonly project: { readonly id: number; readonly title: string };
  readonly at: string;
}

/** One pocket measured, whose outcome was written down for others of its project too. */
export interface Evidence extends NotedObservation {
  /** The numbers of those others: one pocket is one witness, however often it is noted. */
  readonly alike: readonly number[];
}

/** `learned` from so many pockets that agree, `pinned` by the maker, or neither yet. */
export type Source =
  | { readonly from: 'default' }
  | { readonly from: 'learned'; readonly pockets: number }
  | { readonly from: 'pinned' };

/** What the solver asks of a tool, where its two values come from, and what the outcomes say by themselves. */
export interface LearnedTool {
  readonly tool: Tool;
  readonly notcher: Notcher & { readonly turning: Turning };
  readonly inset: Source;
  readonly zeroOffset: Source;
  readonly observations: readonly Evidence[];
  /** Its outliers are indexes of `observations`. */
  readonly calibration: Calibration;
}

export function learn(tool: Tool, noted: readonly NotedObservation[]): LearnedTool {
  const observations = onePerPocket(noted);
  const calibration = calibrate(observations);
  const pockets = observations.length - calibration.outliers.length;
  const unpinned: Source = pockets > 0 ? { from: 'learned', pockets } : { from: 'default' };
  const sourceOf = (pin: Length | null): Source => (pin === null ? unpinned : { from: 'pinned' });
  return {
    tool,
    notcher: {
      inset: tool.pinnedInset ?? calibration.inset,
      zeroOffset: tool.pinnedZeroOffset ?? calibration.zeroOffset,
      graduation: tool.graduation,
      largestSheet: tool.largestSheet,
      turning: tool.turning,
    },
    inset: sourceOf(tool.pinnedInset),
    zeroOffset: sourceOf(tool.pinnedZeroOffset),
    observations,
    calibration,
  };
}

/** Whether this evidence is about that envelope, itself or as one alike. */
export const isAbout = (seen: Evidence, project: number, number: number): boolean =>
  seen.project.id === project && (seen.number === number || seen.alike.includes(number));

/** What an outcome tells of the tool; undefined unless its pocket and its measures as made were noted. */
export function observationIn({ asMade, pocket, twin }: Outcome): Observation | undefined {
  if (!asMade || !pocket) return undefined;
  return { ...asMade, pocket: twin ? { width: pocket.height, height: pocket.width } : pocket };
}

/** What was written for several at once has one time and the same measures: the first of them stands for all. */
function onePerPocket(noted: readonly NotedObservation[]): Evidence[] {
  const found: Evidence[] = [];
  for (const one of noted) {
    const at = found.findIndex((other) => samePocket(one, other));
    if (at < 0) found.push({ ...one, alike: [] });
    else found[at] = { ...found[at]!, alike: [...found[at]!.alike, one.number] };
  }
  return found;
}

const samePocket = (one: NotedObservation, other: NotedObservation): boolean =>
  one.project.id === other.project.id &&
  one.at === other.at &&
  one.square === other.square &&
  one.start === other.start &&
  one.pocket.width === other.pocket.width &&
  one.pocket.height === other.pocket.height;
