/**
 * Plans and fills in worker threads, so that the server stays responsive: as many at once as there are cores, each
 * started when it is first needed, a short queue behind them, each stopped by a shared flag. Knows nothing of requests or of the database.
 */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Fill } from '#core/cutting/one-piece/fill.ts';
import type { PlanSoFar } from '#core/cutting/order.ts';
import type { FillRequest, Planner, PlanRequest } from '#core/cutting/planner.ts';

/** Every plan and fill has passed the judge; what is under way when it is closed is rejected. */
export interface PlanningPool extends Planner {
  readonly close: () => Promise<void>;
}

const QUEUE_LIMIT = 16;

export function planningPool(workers = availableParallelism(), queueLimit = QUEUE_LIMIT): PlanningPool {
  const pool = new Pool(workers, queueLimit);
  return {
    start: (request) => {
      const asked = pool.ask<CutPlan>({ kind: 'plan', ...request });
      if (asked === 'busy') return asked;
      const { answer: plan, progress, stop } = asked;
      return { plan, progress, stop };
    },
    fill: (request) => {
      const asked = pool.ask<Fill>({ kind: 'fill', ...request });
      return asked === 'busy' ? asked : { fill: asked.answer, stop: asked.stop };
    },
    close: () => pool.close(),
  };
}

export type Question = ({ readonly kind: 'plan' } & PlanRequest) | ({ readonly kind: 'fill' } & FillRequest);

/** A question under way: what a worker will answer it with is for the asker to know. */
interface Asked<Answer> {
  readonly answer: Promise<Answer>;
  readonly progress: () => PlanSoFar | undefined;
  readonly stop: () => void;
}

interface Task {
  readonly question: Question;
  readonly stop: SharedArrayBuffer;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (problem: Error) => void;
  progress?: PlanSoFar;
}

type Told =
  | { readonly kind: 'ready' }
  | { readonly kind: 'progress'; readonly progress: PlanSoFar }
  | { readonly kind: 'done'; readonly answer: unknown }
  | { readonly kind: 'failed'; readonly message: string };

class Pool {
  private readonly most: number;
  private readonly queueLimit: number;
  private readonly queue: Task[] = [];
  private readonly idle: Worker[] = [];
  private readonly busy = new Map<Worker, Task>();
  private readonly workers = new Set<Worker>();
  private readonly loaded = new Set<Worker>();
  private closed = false;
  /** Why the last worker was lost. */
  private problem: Error | undefined;

  constructor(most: number, queueLimit: number) {
    this.most = most;
    this.queueLimit = queueLimit;
  }

  private addWorker(): void {
    const worker = new Worker(new URL('./worker.mjs', import.meta.url));
    this.workers.add(worker);
    worker.unref();
    worker.on('message', (told: Told) => this.hear(worker, told));
    worker.on('error', (problem) => this.lose(worker, problem));
    worker.on('exit', (code) => this.lose(worker, new Error(`the planner ended with ${code}`)));
  }

  ask<Answer>(question: Question): Asked<Answer> | 'busy' {
    if (this.closed) throw new Error('invalid planning: the pool is closed');
    const free = this.most - this.busy.size;
    if (this.queue.length >= this.queueLimit + free) return 'busy';
    const stop = new SharedArrayBuffer(4);
    const { promise, resolve, reject } = withResolvers<Answer>();
    const task: Task = { question, stop, resolve: (answer) => resolve(answer as Answer), reject };
    this.queue.push(task);
    if (this.idle.length === 0 && this.workers.size < this.most) this.addWorker();
    this.serve();
    return {
      answer: promise,
      progress: () => task.progress,
      stop: () => void Atomics.store(new Int32Array(stop), 0, 1),
    };
  }

  async close(): Promise<void> {
    this.closed = true;
    const gone = new Error('invalid planning: the pool is closed');
    for (const task of [...this.queue, ...this.busy.values()]) task.reject(gone);
    this.queue.length = 0;
    this.busy.clear();
    await Promise.all([...this.workers].map((worker) => worker.terminate()));
  }

  private serve(): void {
    while (this.idle.length > 0 && this.queue.length > 0) {
      const [worker, task] = [this.idle.pop()!, this.queue.shift()!];
      this.busy.set(worker, task);
      worker.ref();
      worker.postMessage({ ...task.question, stop: task.stop });
    }
    if (this.workers.size === 0 && this.problem)
      for (const task of this.queue.splice(0)) task.reject(this.problem);
  }

  private hear(worker: Worker, told: Told): void {
    const task = this.busy.get(worker);
    if (told.kind === 'progress') {
      if (task) task.progress = told.progress;
      return;
    }
    if (told.kind === 'ready') this.loaded.add(worker);
    if (told.kind === 'done') task?.resolve(told.answer);
    if (told.kind === 'failed') task?.reject(new Error(told.message));
    this.busy.delete(worker);
    worker.unref();
    this.idle.push(worker);
    this.serve();
  }

  /** A worker that broke down is replaced, unless it could not even load; what it was at fails. */
  private lose(worker: Worker, problem: Error): void {
    if (!this.workers.delete(worker)) return;
    this.busy.get(worker)?.reject(problem);
    this.busy.delete(worker);
    if (this.idle.includes(worker)) this.idle.splice(this.idle.indexOf(worker), 1);
    if (this.closed) return;
    if (this.loaded.has(worker)) this.addWorker();
    this.problem = problem;
    this.serve();
  }
}

interface Resolvers<T> {
  readonly promise: Promise<T>;
  readonly resolve: (value: T) => void;
  readonly reject: (problem: Error) => void;
}

/** As Promise.withResolvers, which Node 20 lacks. */
function withResolvers<T>(): Resolvers<T> {
  let resolve!: (value: T) => void;
  let reject!: (problem: Error) => void;
  const promise = new Promise<T>((accept, refuse) => {
    [resolve, reject] = [accept, refuse];
  });
  return { promise, resolve, reject };
}
