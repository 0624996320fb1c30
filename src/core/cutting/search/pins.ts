/**
 * Puts parts that are pinned to an edge or a place of a piece where they belong, cuts the piece apart around them and
 * closes its border to all others. Knows nothing of what fills the rest.
 */
import type { Rectangle } from '../cuts.ts';
import { halvesOf } from '../trimmer/tree.ts';
import type { Job, Paper, Stock } from './job.ts';
import { CUT_X, CUT_Y } from './nodes.ts';
import type { Chance } from './random.ts';

/** A piece cut apart around its pinned parts; `open` blocks are still to be filled, `closed` ones stay empty. */
export type Frame =
  | {
      readonly kind: typeof CUT_X | typeof CUT_Y;
      readonly at: number;
      readonly parts: readonly [Frame, Frame];
    }
  | { readonly kind: 'part'; readonly part: number }
  | { readonly kind: 'open' }
  | { readonly kind: 'closed' };

interface Pinning {
  readonly available: Int32Array;
  readonly random: Chance;
  readonly lively: boolean;
}

interface Fixed extends Rectangle {
  readonly part: number;
}

/**
 * As many of the available pinned parts as find their place and can be cut apart; with `lively`, sometimes fewer, so that
 * a search can spread them over several pieces. Undefined when there are none, and no border.
 */
export function frame(job: Job, stock: Stock, { available, random, lively }: Pinning): Frame | undefined {
  const paper = job.papers[stock.paper]!;
  const whole = { x: 0, y: 0, width: stock.width, height: stock.height };
  const fixed = fixedParts(job, paper, whole, available);
  if (lively && random.next() < 0.3) fixed.length = random.below(fixed.length + 1);
  const line = stock.height - stock.border;
  for (; fixed.length > 0; fixed.pop()) {
    const cut = apart(fixed, whole, { longestCut: job.longestCut, line });
    if (cut) return cut;
  }
  return stock.border > 0 ? unfixed(whole, { longestCut: job.longestCut, line }) : undefined;
}

/** The longest cut, and from where on down the paper is closed. */
interface CutRules {
  readonly longestCut: number;
  readonly line: number;
}

/** A block without pinned parts: open as far as the border, which comes off it in one cut. */
function unfixed({ y, width, height }: Rectangle, { longestCut, line }: CutRules): Frame {
  if (y + height <= line) return { kind: 'open' };
  if (y >= line || width > longestCut) return { kind: 'closed' };
  return { kind: CUT_Y, at: line - y, parts: [{ kind: 'open' }, { kind: 'closed' }] };
}

function fixedParts(job: Job, { lies }: Paper, whole: Rectangle, available: Int32Array): Fixed[] {
  const fixed: Fixed[] = [];
  lies.forEach((lie, part) => {
    if (lie !== 3) return;
    for (let copy = available[part]!; copy > 0; copy -= 1) {
      const box = freePlace(job, part, whole, fixed);
      if (!box) break;
      fixed.push({ ...box, part });
    }
  });
  return fixed;
}

/** The pinned place, or the free place on the edge that is nearest its beginning. */
function freePlace(job: Job, part: number, whole: Rectangle, fixed: readonly Fixed[]): Rectangle | undefined {
  const { pin } = job.parts[part]!;
  const size = { width: job.width[part]!, height: job.height[part]! };
  if (!pin || size.width > whole.width || size.height > whole.height) return undefined;
  const places =
    'edge' in pin
      ? alongEdge(pin.edge, size, whole, fixed)
      : [{ x: pin.x / job.grid, y: pin.y / job.grid, ...size }];
  return places.find((box) => inside(box, whole) && !fixed.some((other) => overlap(box, other)));
}

function alongEdge(
  edge: string,
  size: { width: number; height: number },
  whole: Rectangle,
  fixed: readonly Fixed[],
): Rectangle[] {
  if (edge === 'top' || edge === 'bottom') {
    const y = edge === 'top' ? 0 : whole.height - size.height;
    return [0, ...fixed.map((one) => one.x + one.width)].sort(rising).map((x) => ({ x, y, ...size }));
  }
  const x = edge === 'left' ? 0 : whole.width - size.width;
  return [0, ...fixed.map((one) => one.y + one.height)].sort(rising).map((y) => ({ x, y, ...size }));
}

const rising = (one: number, other: number): number => one - other;

const inside = (box: Rectangle, block: Rectangle): boolean =>
  box.x >= block.x &&
  box.y >= block.y &&
  box.x + box.width <= block.x + block.width &&
  box.y + box.height <= block.y + block.height;

const overlap = (one: Rectangle, other: Rectangle): boolean =>
  one.x < other.x + other.width &&
  other.x < one.x + one.width &&
  one.y < other.y + other.height &&
  other.y < one.y + one.height;

/** Cuts a block apart around the parts fixed in it, edge to edge; undefined where that cannot be done. */
function apart(fixed: readonly Fixed[], block: Rectangle, rules: CutRules): Frame | undefined {
  const [only] = fixed;
  if (!only) return unfixed(block, rules);
  if (fixed.length === 1 && only.width === block.width && only.height === block.height) {
    return { kind: 'part', part: only.part };
  }
  for (const { kind, at, halves } of cutsOf(fixed, block, rules.longestCut)) {
    const parts = halves.map((half) =>
      apart(
        fixed.filter((one) => inside(one, half)),
        half,
        rules,
      ),
    );
    if (parts[0] && parts[1]) return { kind, at, parts: [parts[0], parts[1]] };
  }
  return undefined;
}

interface Division {
  readonly kind: typeof CUT_X | typeof CUT_Y;
  readonly at: number;
  readonly halves: readonly [Rectangle, Rectangle];
}

/** Cuts along a side of a fixed part that cross none, those that free the largest empty block first. */
function cutsOf(fixed: readonly Fixed[], block: Rectangle, longestCut: number): Division[] {
  const cuts = (['x', 'y'] as const).flatMap((along) => {
    const [side, across] = along === 'x' ? (['width', 'height'] as const) : (['height', 'width'] as const);
    if (block[across] > longestCut) return [];
    const places = new Set(fixed.flatMap((one) => [one[along], one[along] + one[side]]));
    return [...places]
      .filter((at) => at > block[along] && at < block[along] + block[side])
      .map((at): Division => {
        const kind = along === 'x' ? CUT_X : CUT_Y;
        return { kind, at: at - block[along], halves: halvesOf({ at, along }, block) };
      });
  });
  const clean = cuts.filter(({ halves }) => fixed.every((one) => halves.some((half) => inside(one, half))));
  const freed = ({ halves }: Division): number =>
    Math.max(
      ...halves.map((half) => (fixed.some((one) => inside(one, half)) ? 0 : half.width * half.height)),
    );
  return clean.sort((one, other) => freed(other) - freed(one));
}
