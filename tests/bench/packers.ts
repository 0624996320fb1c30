/**
 * Bench section: what general-purpose packing libraries give on the same identical sheets. `benchPackers()` answers with
 * a markdown table, and counts the layouts that cannot be cut edge to edge.
 */
import { createRequire } from 'node:module';
import { type Case, identicalSheets } from './orders.ts';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

type Packer = (one: Case, turns: boolean) => Box[][];

const require = createRequire(import.meta.url);
const { MaxRectsPacker } = require('maxrects-packer') as typeof import('maxrects-packer');
const guillotine = require('guillotine-packer') as {
  packer: (bin: object, options: object) => (Box & { bin: number })[][] | null;
};
const ShelfPack = require('@mapbox/shelf-pack') as new (
  width: number,
  height: number,
) => {
  packOne: (width: number, height: number) => { x: number; y: number; w: number; h: number } | null;
};

const PACKERS: readonly (readonly [name: string, pack: Packer, turns: boolean])[] = [
  ['maxrects-packer', maxRects, true],
  ['guillotine-packer', guillotinePacker, true],
  ['shelf-pack, tallest first', shelves, false],
];

export async function benchPackers(): Promise<string> {
  const rows = [false, true].flatMap((turns) => {
    const cases = identicalSheets(turns);
    const best = cases.reduce((sum, one) => sum + one.sheets, 0);
    const words = turns ? 'with turns' : 'no turns';
    return PACKERS.filter(([, , canTurn]) => canTurn || !turns).map(([name, pack]) => {
      const layouts = cases.map((one) => pack(one, turns));
      const sheets = layouts.reduce((sum, bins) => sum + bins.length, 0);
      const optimal = layouts.filter((bins, index) => bins.length === cases[index]!.sheets).length;
      const uncuttable = layouts.filter((bins) => !bins.every(edgeToEdge)).length;
      return `| ${name}, ${words} | ${cases.length} | ${optimal} | ${sheets} | ${best} | ${uncuttable} |`;
    });
  });
  return [
    '| general packer | orders | optimal | sheets | fewest possible | cannot be cut edge to edge |',
    '| --- | ---: | ---: | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}

const sizesOf = ({ order }: Case): { width: number; height: number }[] =>
  order.parts.flatMap(({ width, height, copies }) =>
    Array.from({ length: copies }, () => ({ width, height })),
  );

function maxRects(one: Case, turns: boolean): Box[][] {
  const [sheet] = one.pieces;
  const options = { smart: false, pot: false, square: false, allowRotation: turns, border: 0 };
  const packer = new MaxRectsPacker(sheet!.width, sheet!.height, 0, options);
  packer.addArray(sizesOf(one).map((size) => ({ ...size, x: 0, y: 0 })) as never);
  return packer.bins.map((bin) => bin.rects as unknown as Box[]);
}

function guillotinePacker(one: Case, turns: boolean): Box[][] {
  const [sheet] = one.pieces;
  const items = sizesOf(one).map((size, index) => ({ name: `${index}`, ...size }));
  return (
    guillotine.packer(
      { binWidth: sheet!.width, binHeight: sheet!.height, items },
      { allowRotation: turns },
    ) ?? []
  );
}

function shelves(one: Case): Box[][] {
  const [sheet] = one.pieces;
  const bins: { shelf: InstanceType<typeof ShelfPack>; boxes: Box[] }[] = [];
  for (const { width, height } of sizesOf(one).sort((first, second) => second.height - first.height)) {
    const put = (bin: (typeof bins)[number]): boolean => {
      const place = bin.shelf.packOne(width, height);
      if (place) bin.boxes.push({ x: place.x, y: place.y, width, height });
      return place !== null;
    };
    if (bins.some(put)) continue;
    bins.push({ shelf: new ShelfPack(sheet!.width, sheet!.height), boxes: [] });
    put(bins.at(-1)!);
  }
  return bins.map((bin) => bin.boxes);
}

/** Whether boxes can be separated by cuts that each go through all of what is left. */
export function edgeToEdge(boxes: readonly Box[]): boolean {
  if (boxes.length <= 1) return true;
  for (const [start, size] of [
    ['x', 'width'],
    ['y', 'height'],
  ] as const) {
    const sorted = boxes.toSorted((one, other) => one[start] - other[start]);
    let reach = 0;
    for (let index = 0; index < sorted.length; index += 1) {
      if (index > 0 && sorted[index]![start] >= reach)
        return edgeToEdge(sorted.slice(0, index)) && edgeToEdge(sorted.slice(index));
      reach = Math.max(reach, sorted[index]![start] + sorted[index]![size]);
    }
  }
  return false;
}
