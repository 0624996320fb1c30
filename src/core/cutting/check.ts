/**
 * An independent judge of plans, written from the definition: it replays every cut on paper and counts what comes off.
 * Shares with the search what a plan is made of and nothing else; knows no way to find a plan.
 */
import type { Problem } from '#shared/checked.ts';
import {
  type CutSheet,
  type CutTree,
  isCut,
  type PlacedPart,
  type PlannedCuts,
  type Rectangle,
  type UsedPiece,
} from './cuts.ts';
import type { Limits, Order, Part, Piece } from './order.ts';
import { checkSteps } from './trimmer/check-steps.ts';

/** Floating sums of areas and worth may differ in their last digits. */
const SLACK = 1e-9;

/**
 * Every way in which the plan breaks the order, the pieces, its own figures or its own steps, where it has any; empty for
 * a sound plan. Fields are paths such as `used[2].cuts`.
 */
export function checkPlan(
  order: Order,
  pieces: readonly Piece[],
  plan: PlannedCuts & Partial<CutSheet>,
): Problem[] {
  const problems: Problem[] = [];
  const say = (field: string, message: string): void => void problems.push({ field, message });
  const limits = limitsOf(order, plan.limits ?? {}, say);
  const parts = new Map(order.parts.map((part) => [part.id, part]));
  plan.used.forEach((used, index) => {
    const piece = pieces.find((one) => one.id === used.piece);
    if (piece)
      checkPiece(used, piece, parts, limits, (field, message) => say(`used[${index}].${field}`, message));
    else say(`used[${index}].piece`, `There is no piece “${used.piece}”.`);
  });
  checkPieceCopies(pieces, plan, say);
  checkPartCopies(order, plan, say);
  checkMatching(order, pieces, plan, say);
  checkFigures(pieces, plan, limits, say);
  checkProof(plan, say);
  if (plan.steps && plan.patterns)
    checkSteps(pieces, { ...plan, steps: plan.steps, patterns: plan.patterns }, say);
  return problems;
}

type Say = (field: string, message: string) => void;

/** What the order asks for, to which the plan's own limits are held. */
function limitsOf(order: Order, made: Limits, say: Say): Required<Limits> {
  const { longestCut = Infinity, keepAtLeast = 0 } = order;
  if ((made.longestCut ?? longestCut) > longestCut)
    say('limits.longestCut', 'The plan allows longer cuts than the order.');
  if ((made.keepAtLeast ?? keepAtLeast) !== keepAtLeast)
    say('limits.keepAtLeast', 'The plan has another keeping size than the order.');
  return { longestCut, keepAtLeast };
}

interface Leaves {
  readonly parts: PlacedPart[];
  readonly leftovers: Rectangle[];
  waste: number;
}

function checkPiece(
  used: UsedPiece,
  piece: Piece,
  parts: Map<string, Part>,
  limits: Required<Limits>,
  say: Say,
): void {
  const whole = { x: 0, y: 0, width: piece.width, height: piece.height };
  const leaves: Leaves = { parts: [], leftovers: [], waste: 0 };
  replay(used.cuts, whole, limits, leaves, say);
  for (const one of leaves.parts) checkPart(one, piece, parts.get(one.part), say);
  if (leaves.parts.length === 0) say('cuts', 'Nothing is cut from this piece.');
  compare('rectangles', used.rectangles.map(describePart), leaves.parts.map(describePart), say);
  compare('leftovers', used.leftovers.map(describe), leaves.leftovers.map(describe), say);
  checkApart([...used.rectangles, ...used.leftovers], whole, say);
  const area = [...used.rectangles, ...used.leftovers].reduce(
    (sum, one) => sum + one.width * one.height,
    leaves.waste,
  );
  if (!near(area, piece.width * piece.height))
    say('rectangles', 'Parts, leftovers and waste don’t add up to the piece.');
}

function replay(node: CutTree, block: Rectangle, limits: Required<Limits>, leaves: Leaves, say: Say): void {
  if (isCut(node)) {
    const halves = cutBlock(node.at, node.along, block);
    if (!halves || node.parts.length !== 2) {
      say('cuts', `A cut at ${node.at} doesn’t divide ${describe(block)}.`);
      return;
    }
    const long = node.along === 'x' ? block.height : block.width;
    if (long > limits.longestCut)
      say('cuts', `A cut of ${long} is longer than the trimmer’s ${limits.longestCut}.`);
    for (const index of [0, 1] as const) replay(node.parts[index], halves[index], limits, leaves, say);
  } else if ('part' in node) {
    leaves.parts.push({ part: node.part, ...block, turned: node.turned });
  } else if ('leftover' in node || 'waste' in node) {
    const keeps = Math.min(block.width, block.height) >= limits.keepAtLeast;
    if ('leftover' in node && !keeps)
      say('cuts', `A leftover of ${describe(block)} is under the keeping size.`);
    if ('waste' in node && keeps) say('cuts', `${describe(block)} is wide enough to keep, not waste.`);
    if ('leftover' in node) leaves.leftovers.push(block);
    else leaves.waste += block.width * block.height;
  } else say('cuts', `It isn’t said what becomes of ${describe(block)}.`);
}

function cutBlock(at: number, along: 'x' | 'y', block: Rectangle): [Rectangle, Rectangle] | undefined {
  if (along !== 'x' && along !== 'y') return undefined;
  const { x, y, width, height } = block;
  const first = along === 'x' ? at - x : at - y;
  if (!Number.isSafeInteger(at) || first <= 0 || first >= (along === 'x' ? width : height)) return undefined;
  return along === 'x'
    ? [
        { ...block, width: first },
        { ...block, x: at, width: width - first },
      ]
    : [
        { ...block, height: first },
        { ...block, y: at, height: height - first },
      ];
}

function checkPart(placed: PlacedPart, piece: Piece, part: Part | undefined, say: Say): void {
  if (!part) {
    say('rectangles', `There is no part “${placed.part}”.`);
    return;
  }
  const [width, height] = placed.turned ? [part.height, part.width] : [part.width, part.height];
  if (placed.width !== width || placed.height !== height) {
    say('rectangles', `“${part.id}” comes out as ${describe(placed)} instead of ${width} × ${height}.`);
  }
  if (placed.turned && part.upright && piece.upright)
    say('rectangles', `“${part.id}” lies across the print.`);
  if (part.designs && !part.designs.includes(piece.design as string)) {
    say('rectangles', `“${part.id}” may not come from this design.`);
  }
  if (!part.pin && placed.y + placed.height > piece.height - (piece.border ?? 0))
    say('rectangles', `“${part.id}” reaches into the border.`);
  if (part.pin && !pinned(placed, piece, part.pin))
    say('rectangles', `“${part.id}” isn’t where it is pinned.`);
}

function pinned(placed: PlacedPart, piece: Piece, pin: NonNullable<Part['pin']>): boolean {
  if (placed.turned) return false;
  if ('x' in pin) return piece.kind === 'sheet' && placed.x === pin.x && placed.y === pin.y;
  const has = piece.edges ?? (piece.kind === 'sheet' ? ['top', 'right', 'bottom', 'left'] : []);
  if (!has.includes(pin.edge)) return false;
  if (pin.edge === 'top') return placed.y === 0;
  if (pin.edge === 'left') return placed.x === 0;
  if (pin.edge === 'right') return placed.x + placed.width === piece.width;
  return placed.y + placed.height === piece.height;
}

function compare(field: string, listed: string[], cut: string[], say: Say): void {
  const [one, other] = [listed.toSorted(), cut.toSorted()];
  if (one.length !== other.length || one.some((text, index) => text !== other[index])) {
    say(field, `The list of ${field} is not what the cuts make.`);
  }
}

function checkApart(rectangles: readonly Rectangle[], whole: Rectangle, say: Say): void {
  rectangles.forEach((one, index) => {
    if (
      ![one.x, one.y, one.width, one.height].every(Number.isSafeInteger) ||
      one.width <= 0 ||
      one.height <= 0
    ) {
      say('rectangles', `${describe(one)} isn’t made of whole lengths.`);
    }
    if (one.x < 0 || one.y < 0 || one.x + one.width > whole.width || one.y + one.height > whole.height) {
      say('rectangles', `${describe(one)} reaches over the edge of the piece.`);
    }
    for (const other of rectangles.slice(0, index)) {
      const overlapX = one.x < other.x + other.width && other.x < one.x + one.width;
      const overlapY = one.y < other.y + other.height && other.y < one.y + one.height;
      if (overlapX && overlapY) say('rectangles', `${describe(one)} and ${describe(other)} overlap.`);
    }
  });
}

function checkPieceCopies(pieces: readonly Piece[], plan: PlannedCuts, say: Say): void {
  const used = tally(plan.used.map((one) => one.piece));
  for (const piece of pieces) {
    const count = used.get(piece.id) ?? 0;
    if (piece.keep && count > 0) say('used', `“${piece.id}” is to be kept.`);
    if (count > (piece.copies ?? 1))
      say('used', `${count} of “${piece.id}” are used and there are ${piece.copies ?? 1}.`);
  }
}

function checkPartCopies(order: Order, plan: PlannedCuts, say: Say): void {
  const placed = tally(plan.used.flatMap((one) => one.rectangles.map((rectangle) => rectangle.part)));
  const missing = new Map(plan.unplaced.map((one) => [one.part, one.copies]));
  if (missing.size !== plan.unplaced.length) say('unplaced', 'A part is named twice.');
  for (const part of order.parts) {
    const count = placed.get(part.id) ?? 0;
    if (count > part.copies)
      say('used', `${count} copies of “${part.id}” are cut and ${part.copies} wanted.`);
    if (count + (missing.get(part.id) ?? 0) !== part.copies) {
      say(
        'unplaced',
        `“${part.id}”: ${count} placed and ${missing.get(part.id) ?? 0} not, of ${part.copies}.`,
      );
    }
    missing.delete(part.id);
  }
  for (const id of missing.keys()) say('unplaced', `There is no part “${id}”.`);
}

/**
 * Copies can be numbered so that copy k of every part of a label comes from one design. With the parts in order of
 * rising copies, design d needs max n(i, d) of the first c(j) numbers over all i ≤ j, and these must fit for every j.
 */
function checkMatching(order: Order, pieces: readonly Piece[], plan: PlannedCuts, say: Say): void {
  const designOf = new Map(pieces.map((piece) => [piece.id, piece.design ?? '']));
  for (const label of new Set(order.parts.flatMap((part) => part.match ?? []))) {
    const members = order.parts.filter((part) => part.match === label);
    const needed = new Map<string, number>();
    for (const part of members.toSorted((one, other) => one.copies - other.copies)) {
      for (const [design, count] of countByDesign(part.id, plan, designOf)) {
        needed.set(design, Math.max(needed.get(design) ?? 0, count));
      }
      const sets = [...needed.values()].reduce((sum, one) => sum + one, 0);
      if (sets > part.copies)
        say('used', `Copies of “${part.id}” don’t match in design with others of “${label}”.`);
    }
    if (members.some((part) => part.oneDesign) && needed.size > 1)
      say('used', `“${label}” comes from several designs.`);
  }
}

const countByDesign = (part: string, plan: PlannedCuts, designOf: Map<string, string>): Map<string, number> =>
  tally(
    plan.used.flatMap((one) =>
      one.rectangles.flatMap((placed) => (placed.part === part ? [designOf.get(one.piece) ?? ''] : [])),
    ),
  );

function checkFigures(pieces: readonly Piece[], plan: PlannedCuts, limits: Required<Limits>, say: Say): void {
  const used = plan.used.flatMap((one) => pieces.find((piece) => piece.id === one.piece) ?? []);
  const sheets = used.filter((piece) => piece.kind === 'sheet');
  const offcuts = used.filter((piece) => piece.kind === 'offcut');
  const left = plan.used.flatMap((one) => one.leftovers);
  const expected = {
    placed: plan.used.reduce((sum, one) => sum + one.rectangles.length, 0),
    newSheets: sheets.length,
    newSheetArea: total(sheets.map((piece) => piece.width * piece.height)),
    offcutAreaUsed: total(offcuts.map((piece) => piece.width * piece.height)),
    worthLost:
      total(used.map((piece) => shelfValue(piece, limits))) -
      total(left.map((one) => shelfValue(one, limits))),
  };
  const scale = total(used.map((piece) => shelfValue(piece, limits)));
  for (const [name, figure] of Object.entries(expected)) {
    const stated = plan[name as keyof typeof expected];
    if (!near(stated, figure, name === 'worthLost' ? scale : 1))
      say(name, `The plan says ${stated}; counting gives ${figure}.`);
  }
}

/** What a piece is worth to the shelf, in cubic units. */
export const shelfValue = (
  { width, height }: { width: number; height: number },
  { keepAtLeast }: Pick<Required<Limits>, 'keepAtLeast'>,
): number => (Math.min(width, height) < keepAtLeast ? 0 : width * height * Math.min(width, height));

function checkProof(plan: PlannedCuts, say: Say): void {
  const unplaced = total(plan.unplaced.map((one) => one.copies));
  const { bounds } = plan;
  if (!(bounds.unplaced <= unplaced)) say('bounds.unplaced', 'The plan beats its own bound.');
  if (!(bounds.newSheetArea <= plan.newSheetArea * (1 + SLACK)))
    say('bounds.newSheetArea', 'The plan beats its own bound.');
  const meets = bounds.unplaced === unplaced && near(bounds.newSheetArea, plan.newSheetArea);
  if (plan.proved && !meets) say('proved', 'The plan is called proved and doesn’t meet its bounds.');
}

const total = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

const near = (one: number, other: number, scale = 1): boolean =>
  Math.abs(one - other) <= SLACK * Math.max(scale, Math.abs(one), Math.abs(other));

function tally(names: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return counts;
}

const describe = ({ x, y, width, height }: Rectangle): string => `${width} × ${height} at ${x}, ${y}`;

const describePart = (one: PlacedPart): string =>
  `${one.part} ${describe(one)}${one.turned ? ' turned' : ''}`;
