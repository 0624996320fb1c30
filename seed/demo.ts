/** Tells the demo through the stores' own verbs. */
import type { Database } from '#stores/database.ts';

export async function seedDemo(_db: Database, _now: Date): Promise<void> {}
