/** A flap's finish in words, told from its score line. Knows no shapes. */
import type { Finish } from '#shared/fold.ts';
import { printExact, type Units } from '#shared/length.ts';

/** What to do, after the flap's name: `cut straight, 2¾″ from its score`. */
export function sayFinish(finish: Finish, units: Units): string {
  switch (finish.shape) {
    case 'pointed':
      return 'left with its point';
    case 'straight':
      return `cut straight, ${printExact(finish.depth, units)} from its score`;
    case 'tapered':
      return `cut back to ${printExact(finish.depth, units)} from its score, both sides tapered ${printExact(finish.taper, units)} in`;
    case 'rounded':
      return `tip rounded, radius ${printExact(finish.radius, units)}`;
  }
}
