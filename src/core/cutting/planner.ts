/** Plans and fills looked for beside other work: what is asked, and how it is waited for or ended. Holds types only. */
import type { CutPlan } from './cuts.ts';
import type { Fill, FillOptions } from './one-piece/fill.ts';
import type { FillPart } from './one-piece/wants.ts';
import type { Order, Piece, PlanOptions, PlanSoFar } from './order.ts';

export interface Planner {
  /** Starts or queues a plan; `busy` when as many are waiting as may. */
  readonly start: (asked: PlanRequest) => Planning | 'busy';
  /** The most that comes out of one piece, looked for in the same queue. */
  readonly fill: (asked: FillRequest) => Filling | 'busy';
}

export interface PlanRequest {
  readonly order: Order;
  readonly pieces: readonly Piece[];
  /** Plain values only: the planner brings the clock. */
  readonly options?: Omit<PlanOptions, 'now' | 'shouldStop' | 'onProgress'>;
}

export interface FillRequest {
  readonly piece: Piece;
  readonly parts: readonly FillPart[];
  /** Plain values only: the planner brings the clock. */
  readonly options?: Omit<FillOptions, 'now' | 'shouldStop'>;
}

/** A plan under way, or waiting for its turn. */
export interface Planning {
  /** Rejects where planning failed or the planner was closed. */
  readonly plan: Promise<CutPlan>;
  /** The best so far; undefined before there is one. */
  readonly progress: () => PlanSoFar | undefined;
  /** Ends it with the best plan found so far: at once, or as soon as it has its turn. */
  readonly stop: () => void;
}

/** A fill under way, or waiting for its turn. */
export interface Filling {
  /** Rejects where filling failed or the planner was closed. */
  readonly fill: Promise<Fill>;
  /** Ends it with the best fill found so far: at once, or as soon as it has its turn. */
  readonly stop: () => void;
}
