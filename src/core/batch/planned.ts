/**
 * A plan as it is kept, with what can be read off it: the pieces it opens, what is kept, what is lost, what it proves.
 * Knows no words and no database.
 */

import type { CutPlan, UsedPiece } from '#core/cutting/cuts.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { areaOf } from '#shared/size.ts';
import type { Batch } from './batch.ts';
import type { Cutting } from './to-order.ts';

export interface NewPlan extends Cutting {
  readonly project: number;
  readonly batch: Batch;
  /** Its envelopes try the measures before the rest. */
  readonly trial?: boolean;
  /** The plan that this one was asked in place of. */
  readonly insteadOf?: number | null;
}

/** `plan` is null while it is looked for, and for good where there is a `fault`. */
export interface Plan extends Required<NewPlan> {
  readonly id: number;
  readonly askedAt: string;
  readonly plan: CutPlan | null;
  readonly fault: string | null;
  /** Null as long as it is not cut, and again once its cut is undone. */
  readonly cut: { readonly id: number; readonly at: string } | null;
  readonly ticks: readonly number[];
  readonly spoiled: readonly SpoiledPart[];
}

export interface SpoiledPart {
  readonly part: string;
  readonly wrong: string;
  readonly at: string;
}

/** One that was found. */
export interface FoundPlan extends Plan {
  readonly plan: CutPlan;
}

export const isFound = (plan: Plan): plan is FoundPlan => plan.plan !== null;

/** Square units, as plain numbers. */
export interface Areas {
  readonly used: number;
  readonly parts: number;
  readonly kept: number;
  /** Of what is used, neither part nor kept; from 0 to 1. */
  readonly waste: number;
}

export function areasOf({ plan, pieces }: FoundPlan): Areas {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const used = sum(plan.used.map((one) => areaOf(byId.get(one.piece)!)));
  const parts = sum(plan.used.flatMap((one) => one.rectangles.map(areaOf)));
  const kept = sum(plan.used.flatMap((one) => one.leftovers.map(areaOf)));
  return { used, parts, kept, waste: used === 0 ? 0 : (used - parts - kept) / used };
}

export interface Proof {
  readonly unplaced: number;
  /** At least so many copies are left out by any plan. */
  readonly leastUnplaced: number;
  readonly newSheets: number;
  /** Any plan that places as many opens at least so many sheets. */
  readonly leastSheets: number;
  /** No plan places more, or as many with less new paper. */
  readonly proved: boolean;
}

export function proofOf({ plan, pieces }: FoundPlan): Proof {
  return {
    unplaced: leftOut(plan),
    leastUnplaced: plan.bounds.unplaced,
    newSheets: plan.newSheets,
    leastSheets: leastSheets(pieces, plan.bounds.newSheetArea),
    proved: plan.proved,
  };
}

/** How many pieces it was looked for among: fewer than `suitable` where these were too many. */
export const lookedAt = ({ pieces }: { readonly pieces: readonly Piece[] }): number =>
  pieces.filter(({ keep }) => !keep).length;

/** Copies that the plan does not place. */
const leftOut = ({ unplaced }: CutPlan): number => sum(unplaced.map(({ copies }) => copies));

/**
 * Of two plans for the same order and paper the one that places more, or as many with less new paper, with all that both
 * prove; the first where neither does.
 */
export function betterOf(first: CutPlan, second: CutPlan): CutPlan {
  const goals = [leftOut(second) - leftOut(first), second.newSheetArea - first.newSheetArea];
  const [best, other] = (goals.find((goal) => goal !== 0) ?? 0) < 0 ? [second, first] : [first, second];
  const alike = leftOut(best) === leftOut(other);
  const bounds = {
    unplaced: Math.max(best.bounds.unplaced, other.bounds.unplaced),
    newSheetArea: Math.max(best.bounds.newSheetArea, alike ? other.bounds.newSheetArea : 0),
  };
  const proved = bounds.unplaced === leftOut(best) && bounds.newSheetArea === best.newSheetArea;
  return { ...best, bounds, proved };
}

/** Sets that are complete, one of each part, of one design where they have to match. */
export interface WholeSets {
  readonly whole: number;
  readonly of: number;
}

/** Undefined where the parts do not come in sets: a single part, or not as many of each. */
export function wholeSets({
  order,
  plan,
  pieces,
}: {
  readonly order: Order;
  readonly plan: CutPlan;
  readonly pieces: readonly Piece[];
}): WholeSets | undefined {
  const matched = order.parts.filter(({ match }) => match !== undefined);
  const parts = matched.length > 1 ? matched : order.parts;
  const [first] = parts;
  if (!first || parts.length < 2 || parts.some(({ copies }) => copies !== first.copies)) return undefined;
  const designs = new Map(pieces.map(({ id, design = '' }) => [id, parts === matched ? design : '']));
  const placedFrom = (design: string, part: string): number =>
    sum(plan.used.map((one) => (designs.get(one.piece) === design ? copiesIn(one, part) : 0)));
  const whole = [...new Set(designs.values())].map((design) =>
    Math.min(...parts.map(({ id }) => placedFrom(design, id))),
  );
  return { whole: sum(whole), of: first.copies };
}

const copiesIn = ({ rectangles }: UsedPiece, part: string): number =>
  rectangles.filter((one) => one.part === part).length;

/** Whether its bound leaves hope for what it does not place. */
export const mayPlaceMore = (plan: CutPlan): boolean => leftOut(plan) > plan.bounds.unplaced;

/** A bound of area as one of number: no sheet on offer is larger than the largest. */
export function leastSheets(pieces: readonly Piece[], newSheetArea: number): number {
  const largest = Math.max(0, ...pieces.filter(isOffered).map(areaOf));
  return largest === 0 ? 0 : Math.ceil(newSheetArea / largest - SLACK);
}

const SLACK = 1e-6;

const isOffered = ({ kind, keep }: Piece): boolean => kind === 'sheet' && !keep;

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
