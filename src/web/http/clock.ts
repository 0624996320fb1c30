/** The moment at which a request is answered, as the ledger writes it. */
import type { Request } from './env.ts';

export const nowIn = (c: Request): string => c.get('services').now().toISOString();
