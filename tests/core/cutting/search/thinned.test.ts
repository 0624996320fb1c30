/** Parts left out of a pattern become rest, and nothing else about it changes. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { prepare } from '#core/cutting/search/job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, REST, TURNED } from '#core/cutting/search/nodes.ts';
import { thinned } from '#core/cutting/search/thinned.ts';

const [front, tag] = [0, 1];
const job = prepare(
  {
    parts: [
      { id: 'front', width: 6, height: 4, copies: 4 },
      { id: 'tag', width: 3, height: 2, copies: 9 },
    ],
    keepAtLeast: 3,
  },
  [{ id: 'offcut', width: 13, height: 6, kind: 'offcut' }],
);
const stock = job.stocks[0]!;

/** Two fronts below, two tags and a strip above, a sliver beside them. */
const pattern: Pattern = {
  nodes: Int32Array.from(
    [
      [CUT_X, 12, CUT_Y, 4, CUT_X, 6, AS_IS, front, AS_IS, front],
      [CUT_X, 3, AS_IS, tag, CUT_X, 3, AS_IS, tag, REST, 0, REST, 0],
    ].flat(),
  ),
  parts: Int32Array.of(front, front, tag, tag),
  area: 60,
  left: 0,
};

/** The same nodes with these blocks, counted as leaves in order, as rest. */
function restAt(...leaves: number[]): number[] {
  const nodes = [...pattern.nodes];
  let leaf = 0;
  for (let at = 0; at < nodes.length; at += 2) {
    if (nodes[at] === CUT_X || nodes[at] === CUT_Y) continue;
    if (leaves.includes(leaf)) nodes.splice(at, 2, REST, 0);
    leaf += 1;
  }
  return nodes;
}

it('keeps everything that is there', () => {
  const available = Int32Array.of(4, 9);
  const whole = thinned(job, stock, pattern, available);
  expect(whole).toEqual(pattern);
  expect([...available]).toEqual([2, 7]);
});

it('turns what is not there into rest, with its worth where it is wide enough to keep', () => {
  const before = [...pattern.nodes];
  const available = Int32Array.of(1, 1);
  const less = thinned(job, stock, pattern, available);
  expect([...less.nodes]).toEqual(restAt(1, 3));
  expect([[...less.parts], less.area, less.left]).toEqual([[front, tag], 30, 6 * 4 * 4]);
  expect([...available]).toEqual([0, 0]);
  expect([...pattern.nodes]).toEqual(before);
});

it('leaves out turned parts, too', () => {
  const turned = { nodes: Int32Array.of(CUT_X, 4, TURNED, front, REST, 0), parts: Int32Array.of(front) };
  const block = { ...stock, width: 8, height: 6 };
  const none = thinned(job, block, { ...turned, area: 24, left: 96 }, Int32Array.of(0, 0));
  expect([[...none.nodes], [...none.parts], none.area, none.left]).toEqual([
    [CUT_X, 4, REST, 0, REST, 0],
    [],
    0,
    2 * 4 * 6 * 4,
  ]);
});

it('places as many as there are, and counts their area', () => {
  fc.assert(
    fc.property(fc.nat({ max: 3 }), fc.nat({ max: 3 }), (fronts, tags) => {
      const available = Int32Array.of(fronts, tags);
      const { parts, area } = thinned(job, stock, pattern, available);
      const placed = [Math.min(2, fronts), Math.min(2, tags)];
      expect([front, tag].map((part) => parts.filter((one) => one === part).length)).toEqual(placed);
      expect(area).toBe(placed[0]! * 24 + placed[1]! * 6);
      expect([...available]).toEqual([fronts - placed[0]!, tags - placed[1]!]);
    }),
    { seed: 5, numRuns: 40 },
  );
});
