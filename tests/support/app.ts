/** The app on a database in memory, asked as a browser would ask it, without a server. */
import type { Hono } from 'hono';
import { checkFill } from '#core/cutting/one-piece/check-fill.ts';
import { fillPiece, planCuts } from '#core/cutting/plan.ts';
import type { Planner } from '#core/cutting/planner.ts';
import type { Database } from '#stores/database.ts';
import { createApp } from '#web/app.ts';
import type { Env, Services } from '#web/http/env.ts';
import { FIRST } from './cast.ts';
import { freshDatabase } from './fresh-database.ts';

const HOST = '127.0.0.1:4870';

export interface App {
  readonly db: Database;
  readonly app: Hono<Env>;
  readonly get: (path: string, headers?: Record<string, string>) => Promise<Response>;
  readonly post: (path: string, fields: Fields, headers?: Record<string, string>) => Promise<Response>;
}

/** Plans and fills at once and the same each time. */
export const DIRECT: Planner = {
  start: ({ order, pieces }) => ({
    plan: Promise.resolve(planCuts(order, pieces, { work: 60, seed: 1 })),
    progress: () => undefined,
    stop: () => {},
  }),
  fill: ({ piece, parts, options }) => {
    const fill = fillPiece(piece, parts, { ...options, work: 2000, seed: 1 });
    const [problem] = checkFill(piece, parts, fill, options);
    return {
      fill: problem ? Promise.reject(new Error(problem.message)) : Promise.resolve(fill),
      stop: () => {},
    };
  },
};

export type Fields = Record<string, string> | [string, string][];

export async function openApp(
  planner: Planner = DIRECT,
  book?: Pick<Services, 'db' | 'folder'>,
): Promise<App> {
  const { db, ...place } = book ?? { db: await freshDatabase() };
  const tokens = Array.from({ length: 1000 }, (_, one) => `token-${String(one).padStart(8, '0')}`);
  const app = createApp({
    db,
    now: () => new Date(FIRST),
    token: () => tokens.shift()!,
    loadDemo: async () => {},
    hosts: [HOST],
    ...place,
    planner,
  });
  const ask = async (path: string, init: RequestInit): Promise<Response> =>
    app.request(`http://${HOST}${path}`, init);
  return {
    db,
    app,
    get: (path, headers = {}) => ask(path, { headers: { Host: HOST, ...headers } }),
    post: (path, fields, headers = {}) =>
      ask(path, {
        method: 'POST',
        body: new URLSearchParams(fields),
        headers: { Host: HOST, Origin: `http://${HOST}`, ...headers },
      }),
  };
}
