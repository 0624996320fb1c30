/** The line that a blade follows round a finished blank: one closed outline. Knows no flaps, only what is cut away. */
import { cross, distance, minus, type Point, type Polygon } from '#core/geometry/point.ts';
import { cutAway } from './cut-away.ts';

/** The outline less the cuts, without the leavings of clipping: no corner that a blade could not tell from its neighbour. */
export function cutLine(outline: Polygon, cuts: readonly Polygon[]): Polygon {
  let line = cutAway(outline, cuts);
  for (let idle = line.findIndex(isIdle); idle >= 0; idle = line.findIndex(isIdle)) {
    line = line.toSpliced(idle, 1);
  }
  return line;
}

/** 0.0025 mm: a hundred times what clipping rounds, and a tenth of what a plotter resolves. */
const HAIR = 100;

/** Whether a corner lies on a straight run, repeats the one before, or is the tip of a spike. */
function isIdle(at: Point, index: number, line: Polygon): boolean {
  const [before, after] = [line.at(index - 1)!, line[(index + 1) % line.length]!];
  const run = distance(before, after);
  if (run < HAIR || distance(before, at) < HAIR) return true;
  return Math.abs(cross(minus(after, before), minus(at, before))) / run < HAIR;
}
