/**
 * The judge of a plan's steps: it lays every block to the fence as they say, cuts it, and compares what comes out with
 * what the plan says is cut. Shares with what makes steps only what they are made of.
 */
import type { Block, CutPlan, Laid, Pattern, Rectangle, Step } from '../cuts.ts';
import type { Piece } from '../order.ts';

type Say = (field: string, message: string) => void;

export function checkSteps(pieces: readonly Piece[], plan: CutPlan, say: Say): void {
  checkPatterns(pieces, plan, say);
  const there = plan.patterns.map(({ pieces: [id] }) => {
    const piece = pieces.find((one) => one.id === id);
    return new Map<string, Block['becomes'] | 'whole'>(
      piece ? [[keyOf({ x: 0, y: 0, width: piece.width, height: piece.height }), 'whole']] : [],
    );
  });
  plan.steps.forEach((step, index) => {
    const at = (message: string): void => say(`steps[${index}]`, message);
    if (plan.steps.findIndex(({ number }) => number === step.number) !== index) at('Its number is taken.');
    for (const laid of step.laid) checkLaid(step, laid, there[laid.pattern], at);
    const cuts = step.laid.map(
      ({ kept, pattern }) => kept.length * (plan.patterns[pattern]?.used.length ?? 0),
    );
    if (sum(cuts) !== step.times) at(`It says ${step.times} cuts and has ${sum(cuts)}.`);
    const named = [...new Set(step.laid.map(({ pattern }) => pattern))];
    if (!same(named, step.patterns)) at('It names other patterns than it cuts.');
  });
  plan.patterns.forEach((pattern, index) => {
    checkOutcome(plan, pattern, there[index]!, (message) => say(`patterns[${index}]`, message));
    const steps = plan.steps.filter(({ patterns }) => patterns.includes(index)).map(({ number }) => number);
    if (!same(steps, pattern.steps)) say(`patterns[${index}].steps`, 'Other steps cut this pattern.');
  });
}

/** Each piece used is in one pattern, and all of a pattern are of one size and cut alike. */
function checkPatterns(pieces: readonly Piece[], { used, patterns }: CutPlan, say: Say): void {
  const listed = patterns.flatMap((one) => one.used);
  if (
    !same(
      listed,
      used.map((_, index) => index),
    )
  )
    say('patterns', 'They don’t have each piece used once.');
  const size = (id: string): string => {
    const piece = pieces.find((one) => one.id === id);
    return piece ? `${piece.width} × ${piece.height}` : id;
  };
  patterns.forEach((pattern, index) => {
    const field = `patterns[${index}]`;
    const members = pattern.used.flatMap((one) => used[one] ?? []);
    if (
      !same(
        pattern.pieces,
        members.map(({ piece }) => piece),
      )
    )
      say(field, 'It names other pieces.');
    if (new Set(pattern.pieces.map(size)).size !== 1) say(field, 'Its pieces differ in size.');
    const cut = new Set(members.map((one) => JSON.stringify([one.rectangles, one.leftovers])));
    if (cut.size !== 1 || !cut.has(JSON.stringify([pattern.rectangles, members[0]?.leftovers])))
      say(field, 'Its pieces aren’t cut alike.');
  });
}

function checkLaid(
  { set, along, keeps }: Step,
  { block, fence, kept, rest }: Laid,
  there: Map<string, Block['becomes'] | 'whole'> | undefined,
  say: (message: string) => void,
): void {
  if (!there?.delete(keyOf(block))) {
    say(`There is no block ${keyOf(block)} to lay.`);
    return;
  }
  const edges = along === 'x' ? ['left', 'right'] : ['top', 'bottom'];
  if (!edges.includes(fence)) say(`It can’t be cut along ${along} with its ${fence} edge to the fence.`);
  const [at, side] = along === 'x' ? (['x', 'width'] as const) : (['y', 'height'] as const);
  let left: Rectangle = bare(block);
  for (const one of kept) {
    const start = fence === 'left' || fence === 'top' ? left[at] : left[at] + left[side] - set;
    const off = { ...left, [at]: start, [side]: set };
    const goesOn = start === left[at] ? start + set : left[at];
    left = { ...left, [at]: goesOn, [side]: left[side] - set };
    if (left[side] <= 0) say(`The knife at ${set} doesn’t come down on ${keyOf(block)}.`);
    if (keyOf(off) !== keyOf(one)) say(`At ${set}, ${keyOf(off)} lies at the fence, not ${keyOf(one)}.`);
    there.set(keyOf(one), one.becomes);
    const { kind } = one.becomes;
    if (
      kind === 'part' || kind === 'more'
        ? keeps !== (kind === 'part' ? 'part' : 'block')
        : keeps !== 'leftover'
    )
      say(`It keeps a ${keeps}, and ${keyOf(one)} is ${kind}.`);
  }
  if (keyOf(left) !== keyOf(rest)) say(`What is left is ${keyOf(left)}, not ${keyOf(rest)}.`);
  there.set(keyOf(rest), rest.becomes);
}

/** Once every step is made, the parts and leftovers of the plan lie there, and nothing that is to be cut on. */
function checkOutcome(
  { used }: CutPlan,
  { rectangles, used: [first] }: Pattern,
  there: ReadonlyMap<string, Block['becomes'] | 'whole'>,
  say: (message: string) => void,
): void {
  const left = used[first!]?.leftovers ?? [];
  for (const one of rectangles) {
    const becomes = there.get(keyOf(one));
    const whole = becomes === 'whole' && rectangles.length === 1;
    const right = typeof becomes === 'object' && becomes.kind === 'part' && becomes.part === one.part;
    if (!whole && !right) say(`“${one.part}” at ${one.x}, ${one.y} does not come out.`);
  }
  for (const [key, becomes] of there) {
    if (becomes === 'whole' ? rectangles.length !== 1 : becomes.kind === 'more') say(`${key} is not cut on.`);
    else if (becomes !== 'whole' && becomes.kind === 'leftover' && key !== keyOfMaybe(left[becomes.leftover]))
      say(`${key} is no leftover of the plan.`);
  }
}

const keyOfMaybe = (one: Rectangle | undefined): string => (one ? keyOf(one) : '');

const bare = ({ x, y, width, height }: Rectangle): Rectangle => ({ x, y, width, height });

const keyOf = ({ x, y, width, height }: Rectangle): string => `${width} × ${height} at ${x}, ${y}`;

const same = (one: readonly unknown[], other: readonly unknown[]): boolean =>
  one.length === other.length && one.toSorted().join() === other.toSorted().join();

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
