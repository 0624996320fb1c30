/**
 * Checks the measures of a straight-sided envelope as a maker may type them, and says everything that is wrong in
 * plain words. Works nothing out.
 */
import { accept, type Checked, type Problem } from '#shared/checked.ts';
import type { Length } from '#shared/length.ts';
import type { FinishProblem } from './fold.ts';
import { axisOf, closingReach, mouthOf, type Straight, throatOf } from './straight.ts';

/** Every problem stands beside `width`, `height`, `seam`, `back`, `flap`, or the finish's `depth`, `taper`, `radius`. */
export function checkStraight(one: Straight, largestSheet: Length): Checked<Straight> {
  const problems = [
    ...sizeProblems(one),
    ...seamProblems(one),
    ...lengthProblems(one, largestSheet),
    ...finishProblems(one).map(({ measure, message }) => ({
      field: measure === 'depth' && !('depth' in one.finish) ? 'flap' : measure,
      message,
    })),
  ];
  return problems.length === 0 ? accept(one) : { ok: false, problems };
}

/** What is wrong with the closing flap's finish alone. */
export function finishProblems(one: Straight): FinishProblem[] {
  if (one.depth <= 0 || mouthOf(one) <= 0) return [];
  const wrong = shapeProblem(one);
  return [...shortProblem(one), ...(wrong ? [wrong] : [])];
}

function sizeProblems({ pocket, seam, back, depth }: Straight): Problem[] {
  const sizes = { width: pocket.width, height: pocket.height, seam, back, flap: depth };
  return Object.entries(sizes)
    .filter(([, size]) => !(size > 0))
    .map(([field]) => ({ field, message: NOTHING }));
}

function seamProblems(one: Straight): Problem[] {
  const wide = 2 * one.seam > mouthOf(one);
  const long = one.back > axisOf(one);
  return [
    ...(wide ? [{ field: 'seam', message: 'The two seams together are wider than the pocket.' }] : []),
    ...(long ? [{ field: 'back', message: 'The back is longer than the pocket.' }] : []),
  ];
}

const lengthProblems = (one: Straight, largestSheet: Length): Problem[] =>
  axisOf(one) + one.back + one.depth > largestSheet
    ? [{ field: 'flap', message: 'With this flap the blank is longer than your largest sheet.' }]
    : [];

const shortProblem = (one: Straight): FinishProblem[] =>
  closingReach(one) > throatOf(one)
    ? []
    : [{ measure: 'depth', message: 'A flap this short leaves the pocket open.' }];

function shapeProblem(one: Straight): FinishProblem | undefined {
  const { finish, depth } = one;
  if ('depth' in finish && finish.depth <= 0) return { measure: 'depth', message: NOTHING };
  if ('depth' in finish && finish.depth > depth) {
    return { measure: 'depth', message: 'The flap isn’t as long as that.' };
  }
  if (finish.shape === 'tapered' && (finish.taper < 0 || 2 * finish.taper > mouthOf(one))) {
    return { measure: 'taper', message: 'The taper takes more than there is at the cut’s end.' };
  }
  const most = Math.min(depth, mouthOf(one) / 2);
  if (finish.shape === 'rounded' && (finish.radius <= 0 || finish.radius > most)) {
    return { measure: 'radius', message: 'The radius has to be smaller than the flap.' };
  }
  return undefined;
}

const NOTHING = 'This has to be more than zero.';
