/** The worker before anything is built, for tests and benchmarks: teaches its thread TypeScript, then is worker.ts. */
import { register } from 'tsx/esm/api';

register();
await import('./worker.ts');
