/** Turns parts joined edge to edge into the packed tree of cuts of a piece. Knows both forms; chooses only how to trim. */

import type { Assembly, Lay } from '../one-piece/unlimited.ts';
import { worth } from '../worth.ts';
import type { Job, Stock } from './job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, REST, TURNED } from './nodes.ts';

/** The assembly goes to the corner of the stock; for a trimmer that can make every cut. */
export function patternOf(job: Job, stock: Stock, assembly: Assembly, lays: readonly Lay[]): Pattern {
  const writing: Writing = { job, lays, nodes: [], parts: [], area: 0, left: 0 };
  write(writing, assembly, stock.width, stock.height);
  return {
    nodes: Int32Array.from(writing.nodes),
    parts: Int32Array.from(writing.parts),
    area: writing.area,
    left: writing.left,
  };
}

/** The parts of an assembly, one entry for each copy. */
export function partsOf(assembly: Assembly, lays: readonly Lay[]): number[] {
  if ('lay' in assembly) return [lays[assembly.lay]!.part];
  return [...partsOf(assembly.first, lays), ...partsOf(assembly.second, lays)];
}

interface Writing {
  readonly job: Job;
  readonly lays: readonly Lay[];
  readonly nodes: number[];
  readonly parts: number[];
  area: number;
  left: number;
}

/** Trims a block down to the assembly, in the order that leaves more worth; then cuts the assembly itself. */
function write(writing: Writing, assembly: Assembly, width: number, height: number): void {
  const { width: wide, height: high } = assembly;
  if (wide < width || high < height) {
    const sideFirst = high === height || (wide < width && isSideFirst(writing, wide, high, width, height));
    writing.nodes.push(sideFirst ? CUT_X : CUT_Y, sideFirst ? wide : high);
    write(writing, assembly, sideFirst ? wide : width, sideFirst ? height : high);
    writing.nodes.push(REST, 0);
    writing.left += sideFirst
      ? worthOf(writing, width - wide, height)
      : worthOf(writing, width, height - high);
  } else if ('lay' in assembly) {
    const { part, turned } = writing.lays[assembly.lay]!;
    writing.nodes.push(turned ? TURNED : AS_IS, part);
    writing.parts.push(part);
    writing.area += wide * high;
  } else {
    const across = assembly.along === 'x';
    const at = across ? assembly.first.width : assembly.first.height;
    writing.nodes.push(across ? CUT_X : CUT_Y, at);
    write(writing, assembly.first, across ? at : wide, across ? high : at);
    write(writing, assembly.second, across ? wide - at : wide, across ? high : high - at);
  }
}

function isSideFirst(writing: Writing, wide: number, high: number, width: number, height: number): boolean {
  const side = worthOf(writing, width - wide, height) + worthOf(writing, wide, height - high);
  return side >= worthOf(writing, width, height - high) + worthOf(writing, width - wide, high);
}

const worthOf = ({ job }: Writing, width: number, height: number): number =>
  worth({ width, height }, job.keepAtLeast);
