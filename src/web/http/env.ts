/** What every request carries: the database, the clock and the reader's settings. Holds types only. */

import type { Context } from 'hono';
import type { Planner, Planning } from '#core/cutting/planner.ts';
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
  /** Looks for plans and fills beside the server's own work. */
  readonly planner: Planner;
  /** Where the book lies; a book in memory lies nowhere. */
  readonly folder?: string;
  /** Whether the design language is shown, under /style. */
  readonly showsStyle?: boolean;
}

/** A plan being looked for. */
export interface UnderWay extends Planning {
  /** When it was asked for. */
  readonly since: string;
}

export interface Env {
  Variables: {
    services: Services;
    db: Database;
    settings: Settings;
    units: Units;
    /** By the number of the plan. */
    plannings: Map<number, UnderWay>;
  };
}

export type Request = Context<Env>;
