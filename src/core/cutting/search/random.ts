/** A small seeded source of chance, so that a search can be repeated exactly. Knows nothing of what it decides. */

export interface Chance {
  /** In [0, 1). */
  readonly next: () => number;
  /** A whole number in [0, limit). */
  readonly below: (limit: number) => number;
}

/** Xorshift with 32 bits of state (Marsaglia 2003); any seed will do. */
export function chance(seed: number): Chance {
  let state = (Math.imul(seed | 0, 0x9e3779b1) ^ 0x5bd1e995) | 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
  for (let warm = 0; warm < 8; warm += 1) next();
  return { next, below: (limit) => Math.floor(next() * limit) };
}
