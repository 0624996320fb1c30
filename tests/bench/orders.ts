/** Orders for the planner's bench: known instances from tests/fixtures/cutting, and seeded ones made here. Plans nothing. */
import { readFileSync } from 'node:fs';
import type { Order, Part, Piece } from '#core/cutting/order.ts';
import { type Chance, chance } from '#core/cutting/search/random.ts';
import { inches, millimetres } from '#shared/length.ts';

export interface Case {
  readonly name: string;
  readonly order: Order;
  readonly pieces: readonly Piece[];
  /** Sheets of the best plan there is, or of the one it was cut from. */
  readonly sheets: number;
}

/** A collection of instances; tests/fixtures/cutting/README.md names whose they are. */
export const readInstances = <T>(name: string): readonly T[] =>
  (
    JSON.parse(readFileSync(new URL(`../fixtures/cutting/${name}`, import.meta.url), 'utf8')) as {
      instances: T[];
    }
  ).instances;

interface Identical {
  readonly name: string;
  readonly stock: { readonly w: number; readonly h: number };
  readonly items: readonly { readonly w: number; readonly h: number; readonly copies: number }[];
  readonly sheets: { readonly noRotation: number; readonly rotation: number };
}

/** Berkey & Wang 1987 and Martello & Vigo 1998, with proven optima. */
export function identicalSheets(turns: boolean): Case[] {
  return readInstances<Identical>('sheets-identical.json').map(({ name, stock, items, sheets }) => {
    const parts = items.map((item, index) => ({
      id: `${index}`,
      width: item.w,
      height: item.h,
      copies: item.copies,
      upright: !turns,
    }));
    const copies = items.reduce((sum, item) => sum + item.copies, 0);
    const piece: Piece = {
      id: 'sheet',
      width: stock.w,
      height: stock.h,
      kind: 'sheet',
      copies,
      upright: !turns,
    };
    return { name, order: { parts }, pieces: [piece], sheets: turns ? sheets.rotation : sheets.noRotation };
  });
}

interface Craft {
  readonly name: string;
  readonly stock: readonly {
    readonly id: string;
    readonly w: number;
    readonly h: number;
    readonly copies: number;
    readonly new?: boolean;
  }[];
  readonly parts: readonly {
    readonly w: number;
    readonly h: number;
    readonly copies: number;
    readonly rot: boolean;
  }[];
  readonly reference: { readonly newSheets: number };
}

/** This project's own kind of order, with the best plans known. */
export function craftOrders(): Case[] {
  return readInstances<Craft>('craft.json').map(({ name, stock, parts, reference }) => ({
    name,
    order: {
      parts: parts.map((one, index) => ({
        id: `${index}`,
        width: one.w,
        height: one.h,
        copies: one.copies,
        upright: !one.rot,
      })),
    },
    pieces: stock.map(({ id, w, h, copies, new: sheet }) => ({
      id,
      width: w,
      height: h,
      copies,
      kind: sheet ? 'sheet' : 'offcut',
      upright: true,
    })),
    sheets: reference.newSheets,
  }));
}

const SIDE = 192;

/** Whole sheets cut into parts that may be turned, of which so many are left out that `free` of the area is not needed. */
export function backwardsOrders(count: number, free: number, grid = 4): Case[] {
  return Array.from({ length: count }, (_, index) => {
    const random = chance(1000 + index);
    const sheets = 3 + random.below(4);
    const sizes = Array.from({ length: sheets }, () =>
      cutUp(random, SIDE, SIDE, 5 + random.below(8), grid),
    ).flat();
    const parts = dropped(sizes, free * sheets * SIDE * SIDE).map(([width, height], part) => ({
      id: `${part}`,
      width,
      height,
      copies: 1,
    }));
    const pieces: Piece[] = [{ id: 'pad', width: SIDE, height: SIDE, kind: 'sheet', copies: sheets + 3 }];
    return { name: `backwards ${index + 1}`, order: { parts }, pieces, sheets };
  });
}

type Pair = [width: number, height: number];

/** Cuts the largest block so far in two until there are so many. */
function cutUp(random: Chance, width: number, height: number, many: number, grid: number): Pair[] {
  const blocks: Pair[] = [[width, height]];
  while (blocks.length < many) {
    blocks.sort((one, other) => other[0] * other[1] - one[0] * one[1]);
    const [wide, high] = blocks.shift()!;
    const share = 0.25 + 0.5 * random.next();
    const at = Math.round((Math.max(wide, high) * share) / grid) * grid;
    blocks.push(
      ...(wide >= high
        ? ([
            [at, high],
            [wide - at, high],
          ] as Pair[])
        : ([
            [wide, at],
            [wide, high - at],
          ] as Pair[])),
    );
  }
  return blocks;
}

/** Leaves out the largest part that is not too much, until enough is free; then the smallest. */
function dropped(sizes: readonly Pair[], free: number): Pair[] {
  const left = [...sizes].sort((one, other) => other[0] * other[1] - one[0] * one[1]);
  for (let missing = free; missing > 0; ) {
    const fitting = left.findIndex(([width, height]) => width * height <= missing);
    const [[width, height]] = left.splice(fitting < 0 ? left.length - 1 : fitting, 1) as [Pair];
    missing -= width * height;
  }
  return left;
}

/** Sixty parts of twelve sizes from three hundred pieces of forty sizes. */
export function crowdedShelves(count: number): Case[] {
  return Array.from({ length: count }, (_, index) => {
    const random = chance(2000 + index);
    const side = (least: number, most: number): number => least + random.below(most - least + 1);
    const parts: Part[] = Array.from({ length: 12 }, (_unused, part) => ({
      id: `part ${part}`,
      width: side(24, 110),
      height: side(24, 110),
      copies: 5,
      upright: random.next() < 0.4,
    }));
    const offcuts: Piece[] = Array.from({ length: 38 }, (_unused, piece) => ({
      id: `offcut ${piece}`,
      width: side(16, 96),
      height: side(16, 96),
      kind: 'offcut',
      copies: piece < 12 ? 7 : 6,
      upright: random.next() < 0.5,
    }));
    const sheets: Piece[] = [
      { id: 'twelve', width: 192, height: 192, kind: 'sheet', copies: 30, upright: true },
      { id: 'letter', width: 136, height: 176, kind: 'sheet', copies: 30 },
    ];
    return {
      name: `shelf ${index + 1}`,
      order: { parts, keepAtLeast: 16 },
      pieces: [...sheets, ...offcuts],
      sheets: 0,
    };
  });
}

/** One order in sixteenths of an inch, and the same with half of its parts and a pad in millimetres. */
export function mixedUnits(): { plain: Case; mixed: Case } {
  const sizes: Pair[] = [
    [68, 88],
    [64, 84],
    [60, 80],
    [32, 48],
    [70, 54],
    [40, 100],
  ];
  const parts = sizes.map(([width, height], index) => ({
    id: `${index}`,
    width: inches(width / 16),
    height: inches(height / 16),
    copies: 6,
  }));
  const metric = parts.map((part, index) =>
    index % 2 === 0
      ? part
      : { ...part, width: nearMillimetre(part.width), height: nearMillimetre(part.height) },
  );
  const letter: Piece = { id: 'letter', width: inches(8.5), height: inches(11), kind: 'sheet', copies: 20 };
  const a4: Piece = { id: 'a4', width: millimetres(210), height: millimetres(297), kind: 'sheet', copies: 4 };
  const twelve: Piece = { ...a4, width: inches(8), height: inches(12) };
  return {
    plain: { name: 'sixteenths only', order: { parts }, pieces: [letter, twelve], sheets: 0 },
    mixed: { name: 'inches and millimetres', order: { parts: metric }, pieces: [letter, a4], sheets: 0 },
  };
}

const nearMillimetre = (length: number): number => millimetres(Math.round(length / 40_000));
