/** Turns parts joined edge to edge into the packed tree of cuts of a piece. Knows both forms; chooses only how to trim. */

import type { Assembly, Lay } from '../one-piece/unlimited.ts';
import type { Sides } from '../order.ts';
import { keepsMoreBeside } from '../worth.ts';
import type { Job, Stock } from './job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, REST, readPattern, TURNED } from './nodes.ts';

/** The assembly goes to the corner of the stock; for a trimmer that can make every cut. */
export function patternOf(job: Job, stock: Stock, assembly: Assembly, lays: readonly Lay[]): Pattern {
  const writing: Writing = { keepAtLeast: job.keepAtLeast, lays, nodes: [] };
  write(writing, assembly, stock);
  return readPattern(job, stock, Int32Array.from(writing.nodes));
}

interface Writing {
  readonly keepAtLeast: number;
  readonly lays: readonly Lay[];
  readonly nodes: number[];
}

/** Trims a block down to the assembly, in the order that leaves more worth; then cuts the assembly itself. */
function write(writing: Writing, assembly: Assembly, block: Sides): void {
  const { nodes, lays, keepAtLeast } = writing;
  const { width, height } = assembly;
  if (width < block.width || height < block.height) {
    const beside =
      height === block.height || (width < block.width && keepsMoreBeside(block, assembly, keepAtLeast));
    nodes.push(beside ? CUT_X : CUT_Y, beside ? width : height);
    write(writing, assembly, beside ? { width, height: block.height } : { width: block.width, height });
    nodes.push(REST, 0);
  } else if ('lay' in assembly) {
    const { part, turned } = lays[assembly.lay]!;
    nodes.push(turned ? TURNED : AS_IS, part);
  } else {
    const { along, first, second } = assembly;
    nodes.push(along === 'x' ? CUT_X : CUT_Y, along === 'x' ? first.width : first.height);
    write(writing, first, along === 'x' ? { width: first.width, height } : { width, height: first.height });
    write(
      writing,
      second,
      along === 'x' ? { width: width - first.width, height } : { width, height: height - first.height },
    );
  }
}
