/** What every request carries: the database, the clock and the reader's settings. Holds types only. */

import type { Context } from 'hono';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Fill } from '#core/cutting/one-piece/fill.ts';
import type { FillGoal, FillPart } from '#core/cutting/one-piece/wants.ts';
import type { Limits, Order, Piece, Progress } from '#core/cutting/order.ts';
import type { Units } from '#shared/length.ts';
import type { Database } from '#stores/database.ts';
import type { Settings } from '#stores/settings.ts';

/** What the entry point hands to the web; nothing below reads clock, paths or environment itself. */
export interface Services {
  readonly db: Database;
  readonly now: () => Date;
  /** Random text for form tokens. */
  readonly token: () => string;
  readonly loadDemo: (db: Database, now: Date) => Promise<void>;
  /** Host names, with port, that requests may be addressed to. */
  readonly hosts: readonly string[];
  readonly planner: Planner;
}

/** Looks for cutting plans beside the server's own work. */
export interface Planner {
  /** `busy` when as many are waiting as may. */
  readonly start: (asked: PlanRequest) => Planning | 'busy';
  /** The most that comes out of one piece, looked for in the same queue. */
  readonly fill: (asked: FillRequest) => Filling | 'busy';
}

interface PlanRequest {
  readonly order: Order;
  readonly pieces: readonly Piece[];
  readonly options: { readonly timeMs: number };
}

interface FillRequest {
  readonly piece: Piece;
  readonly parts: readonly FillPart[];
  readonly options: Limits & { readonly goal: FillGoal; readonly timeMs: number };
}

/** A fill that is being looked for. */
interface Filling {
  readonly fill: Promise<Fill>;
  /** Ends it with the best found so far. */
  readonly stop: () => void;
}

/** A plan that is being looked for. */
export interface Planning {
  readonly plan: Promise<CutPlan>;
  /** The best so far; undefined before there is one. */
  readonly progress: () => Progress | undefined;
  /** Ends it with the best found so far. */
  readonly stop: () => void;
}

export interface Env {
  Variables: {
    services: Services;
    db: Database;
    settings: Settings;
    units: Units;
    /** By the number of the plan. */
    plannings: Map<number, Planning>;
  };
}

export type Request = Context<Env>;
