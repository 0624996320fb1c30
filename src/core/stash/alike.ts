/** Offcuts that are alike: of one design, of one size, and with or without its border. Knows no shelf. */
import type { Offcut } from './stash.ts';

/** Several may lie in different places; the newest comes first. */
export interface Alike {
  readonly offcuts: readonly [Offcut, ...Offcut[]];
  /** Of all of them together. */
  readonly count: number;
}

/** In the order in which the first of each comes. */
export function alikeIn(offcuts: readonly Offcut[]): Alike[] {
  const found = new Map<string, [Offcut, ...Offcut[]]>();
  for (const offcut of offcuts) {
    const { design, width, height, border } = offcut;
    const key = [design.id, width, height, border].join();
    const others = found.get(key);
    if (others) others.push(offcut);
    else found.set(key, [offcut]);
  }
  return [...found.values()].map((alike) => ({
    offcuts: alike,
    count: alike.reduce((sum, { count }) => sum + count, 0),
  }));
}
