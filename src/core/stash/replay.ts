/**
 * Cuts a recorded piece up again by its tree and compares what comes off with what was written down. Written from the
 * definition of a cut, apart from whatever laid the piece out.
 */
import { type CutTree, isCut, type Leaf, type Rectangle } from '#core/cutting/cuts.ts';
import type { PieceCut } from './stash.ts';

/** What does not agree, in plain words; empty for a sound record. */
export function problemsOfCut(cut: PieceCut): string[] {
  const leaves: [Leaf, Rectangle][] = [];
  const outside = replay(cut.cuts, { x: 0, y: 0, width: cut.width, height: cut.height }, leaves);
  if (outside) return [outside];
  const partsOff = leaves.flatMap(([leaf, at]) => ('part' in leaf ? [sign(at, leaf.part, leaf.turned)] : []));
  const partsNoted = cut.parts.map((part) => sign(part, part.part, part.turned));
  const left = leaves.flatMap(([leaf, at]) => ('leftover' in leaf ? [sign(at)] : []));
  const leftNoted = cut.leftovers.map((one) => sign(one));
  return [
    ...(alike(partsOff, partsNoted) ? [] : ['the parts that come off are not those written down']),
    ...(alike(left, leftNoted) ? [] : ['the leftovers are not those written down']),
  ];
}

/** Collects the leaves; answers with the first cut that misses its block. */
function replay(tree: CutTree, block: Rectangle, leaves: [Leaf, Rectangle][]): string | undefined {
  if (!isCut(tree)) {
    leaves.push([tree, block]);
    return undefined;
  }
  const across = tree.along === 'x';
  const near = tree.at - (across ? block.x : block.y);
  const far = (across ? block.width : block.height) - near;
  if (near <= 0 || far <= 0) return `a cut at ${tree.at} along ${tree.along} misses its block`;
  const [first, second]: [Rectangle, Rectangle] = across
    ? [
        { ...block, width: near },
        { ...block, x: tree.at, width: far },
      ]
    : [
        { ...block, height: near },
        { ...block, y: tree.at, height: far },
      ];
  return replay(tree.parts[0], first, leaves) ?? replay(tree.parts[1], second, leaves);
}

const sign = ({ x, y, width, height }: Rectangle, ...more: unknown[]): string =>
  JSON.stringify([x, y, width, height, ...more]);

const alike = (one: readonly string[], other: readonly string[]): boolean =>
  JSON.stringify([...one].sort()) === JSON.stringify([...other].sort());
