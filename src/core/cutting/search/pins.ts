/**
 * Puts parts that are pinned to an edge or a place of a piece where they belong, cuts the piece apart around them and
 * closes its border to all others. Knows nothing of what fills the rest.
 */
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

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Fixed extends Box {
  readonly part: number;
}

/**
 * As many of the available pinned parts as find their place and can be cut apart; with `lively`, sometimes fewer, so that
 * a search can spread them over several pieces. Undefined when there are none, and no border.
 */
export function frame(
  job: Job,
  stock: Stock,
  available: Int32Array,
  random: Chance,
  lively: boolean,
): Frame | undefined {
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
interface Rules {
  readonly longestCut: number;
  readonly line: number;
}

/** A block without pinned parts: open as far as the border, which comes off it in one cut. */
function unfixed({ y, width, height }: Box, { longestCut, line }: Rules): Frame {
  if (y + height <= line) return { kind: 'open' };
  if (y >= line || width > longestCut) return { kind: 'closed' };
  return { kind: CUT_Y, at: line - y, parts: [{ kind: 'open' }, { kind: 'closed' }] };
}

function fixedParts(job: Job, { lies }: Paper, whole: Box, available: Int32Array): Fixed[] {
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
function freePlace(job: Job, part: number, whole: Box, fixed: readonly Fixed[]): Box | undefined {
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
  whole: Box,
  fixed: readonly Fixed[],
): Box[] {
  if (edge === 'top' || edge === 'bottom') {
    const y = edge === 'top' ? 0 : whole.height - size.height;
    return [0, ...fixed.map((one) => one.x + one.width)].sort(rising).map((x) => ({ x, y, ...size }));
  }
  const x = edge === 'left' ? 0 : whole.width - size.width;
  return [0, ...fixed.map((one) => one.y + one.height)].sort(rising).map((y) => ({ x, y, ...size }));
}

const rising = (one: number, other: number): number => one - other;

const inside = (box: Box, block: Box): boolean =>
  box.x >= block.x &&
  box.y >= block.y &&
  box.x + box.width <= block.x + block.width &&
  box.y + box.height <= block.y + block.height;

const overlap = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width &&
  other.x < one.x + one.width &&
  one.y < other.y + other.height &&
  other.y < one.y + one.height;

/** Cuts a block apart around the parts fixed in it, edge to edge; undefined where that cannot be done. */
function apart(fixed: readonly Fixed[], block: Box, rules: Rules): Frame | undefined {
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
  readonly halves: readonly [Box, Box];
}

/** Cuts along a side of a fixed part that cross none, those that free the largest empty block first. */
function cutsOf(fixed: readonly Fixed[], block: Box, longestCut: number): Division[] {
  const cuts: Division[] = [];
  const { x, y, width, height } = block;
  if (height <= longestCut) {
    for (const at of new Set(fixed.flatMap((one) => [one.x - x, one.x + one.width - x]))) {
      if (at <= 0 || at >= width) continue;
      cuts.push({
        kind: CUT_X,
        at,
        halves: [
          { x, y, width: at, height },
          { x: x + at, y, width: width - at, height },
        ],
      });
    }
  }
  if (width <= longestCut) {
    for (const at of new Set(fixed.flatMap((one) => [one.y - y, one.y + one.height - y]))) {
      if (at <= 0 || at >= height) continue;
      cuts.push({
        kind: CUT_Y,
        at,
        halves: [
          { x, y, width, height: at },
          { x, y: y + at, width, height: height - at },
        ],
      });
    }
  }
  const clean = cuts.filter(({ halves }) => fixed.every((one) => halves.some((half) => inside(one, half))));
  const freed = ({ halves }: Division): number =>
    Math.max(
      ...halves.map((half) => (fixed.some((one) => inside(one, half)) ? 0 : half.width * half.height)),
    );
  return clean.sort((one, other) => freed(other) - freed(one));
}
