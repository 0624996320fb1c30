/** A flap's finish in words, told from its score line. Knows no shapes. */
import type { Finish } from '#shared/fold.ts';
import { printLength, type Units } from '#shared/length.ts';

/** What to do, after the flap's name: `cut straight, 2¾″ from its score`. */
export function sayFinish(finish: Finish, units: Units): string {
  switch (finish.shape) {
    case 'pointed':
      return 'left with its point';
    case 'straight':
      return `cut straight, ${printLength(finish.depth, units)} from its score`;
    case 'tapered':
      return `cut back to ${printLength(finish.depth, units)} from its score, both sides tapered ${printLength(finish.taper, units)} in`;
    case 'rounded':
      return `tip rounded, radius ${printLength(finish.radius, units)}`;
  }
}
