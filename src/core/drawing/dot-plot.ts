/**
 * Lengths as dots along a ruler, row by row, dots alike piled up (after Wilkinson, "Dot plots", 1999, from memory), with
 * lines where something begins. Filled dots count, hollow ones don't. Knows only lengths, not what was measured.
 */
import { inches, type Length, length, millimetres, printExact, type Units } from '#shared/length.ts';
import { textWidth } from './boxes.ts';
import { area, type Drawing, label, line, type Shape, TEXT, WIDEST } from './drawing.ts';

export interface Dot {
  readonly at: Length;
  readonly counts: boolean;
}

export interface DotRow {
  readonly name: string;
  readonly dots: readonly Dot[];
}

export interface DotPlot {
  readonly title: string;
  readonly words: string;
  readonly rows: readonly DotRow[];
  /** Lines down through all rows, named above. */
  readonly marks: readonly { readonly at: Length; readonly text: string }[];
  /** The ends of the ruler; a dot beyond stands at its end. */
  readonly from: Length;
  readonly to: Length;
  /** What filled and hollow dots mean. */
  readonly key: readonly [string, string];
  /** A line across before that row, with its words. */
  readonly across?: { readonly before: number; readonly text: string } | undefined;
}

export function dotPlot(plot: DotPlot, units: Units): Drawing {
  const left = Math.max(...plot.rows.map(({ name }) => textWidth(name, TEXT.caption))) + 2 * GAP;
  const scale = (WIDEST - left - RIGHT) / Math.max(1, plot.to - plot.from);
  const along = (at: number): number =>
    left + (Math.min(plot.to, Math.max(plot.from, at)) - plot.from) * scale;
  const top = plot.marks.length * LINE + GAP;
  const rows = laid(plot, along, top);
  const bottom = rows.bottom;
  return {
    ...{ title: plot.title, words: plot.words, width: WIDEST, height: bottom + 2 * LINE + 4 * GAP },
    shapes: [
      ...plot.marks.map(({ at }, index) =>
        line('score', [
          { x: along(at), y: (index + 1) * LINE },
          { x: along(at), y: bottom },
        ]),
      ),
      ...rows.shapes,
      ...ruler(plot, along, bottom, units),
      ...plot.marks.map(({ at, text }, index) => markLabel(text, along(at), (index + 0.5) * LINE)),
      ...keyUnder(plot, bottom + 1.5 * LINE + 2 * GAP),
    ],
  };
}

const GAP = 6;
const LINE = 17;
const RIGHT = 26;
const RADIUS = 3.2;
/** Dots nearer than this along the ruler are piled up. */
const BIN = 2 * RADIUS + 0.8;

function laid({ rows, across }: DotPlot, along: (at: number) => number, top: number) {
  const shapes: Shape[] = [];
  let y = top;
  for (const [index, { name, dots }] of rows.entries()) {
    if (across?.before === index) {
      y += LINE;
      shapes.push(label('note', { x: WIDEST - GAP, y: y - LINE / 2 }, across.text, { anchor: 'end' }));
      shapes.push(line('hidden', [{ x: 0, y }, { x: WIDEST, y }])); // biome-ignore format: one line of two points
    }
    const piles = new Map<number, number>();
    const placed = dots.map(({ at, counts }) => {
      const bin = Math.round(along(at) / BIN);
      const pile = piles.get(bin) ?? 0;
      piles.set(bin, pile + 1);
      return { x: along(at), pile, counts };
    });
    y += Math.max(LINE, Math.max(1, ...piles.values()) * BIN + GAP);
    const floor = y - GAP / 2;
    shapes.push(line('cross', [{ x: along(Number.NEGATIVE_INFINITY), y }, { x: WIDEST - RIGHT, y }])); // biome-ignore format: one line of two points
    shapes.push(label('caption', { x: GAP / 2, y: y - LINE / 2 }, name, { anchor: 'start' }));
    shapes.push(...placed.map(({ x, pile, counts }) => dot(x, floor - RADIUS - pile * BIN, counts)));
  }
  return { shapes, bottom: y };
}

/** A dot as an octagon. */
const dot = (x: number, y: number, counts: boolean): Shape =>
  area(
    counts ? 'notch' : 'card',
    Array.from({ length: 8 }, (_, corner) => {
      const turn = ((corner + 0.5) * Math.PI) / 4;
      return { x: x + RADIUS * Math.cos(turn), y: y + RADIUS * Math.sin(turn) };
    }),
  );

/** Beside its line, on the side where there is room. */
function markLabel(text: string, x: number, y: number): Shape {
  const after = x + GAP + textWidth(text, TEXT.caption) < WIDEST;
  return label('caption', { x: after ? x + GAP / 2 : x - GAP / 2, y }, text, {
    anchor: after ? 'start' : 'end',
  });
}

const STEPS = {
  in: [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8].map(inches),
  mm: [0.5, 1, 2, 5, 10, 20, 50, 100, 200].map(millimetres),
};
const PER_LABEL = 50;

function ruler({ from, to }: DotPlot, along: (at: number) => number, y: number, units: Units): Shape[] {
  const room = (along(to) - along(from)) / PER_LABEL;
  const steps = STEPS[units.unit];
  const step = steps.find((one) => (to - from) / one <= room) ?? steps.at(-1)!;
  const first = Math.ceil(from / step);
  const ticks = Array.from({ length: Math.floor(to / step) - first + 1 }, (_, index) =>
    length((first + index) * step),
  );
  return [
    line('dimension', [
      { x: along(from), y },
      { x: along(to), y },
    ]),
    ...ticks.flatMap((at) => [
      line('dimension', [
        { x: along(at), y },
        { x: along(at), y: y + GAP },
      ]),
      label('caption', { x: along(at), y: y + GAP + LINE / 2 }, printExact(at, units)),
    ]),
  ];
}

function keyUnder({ rows, key }: DotPlot, y: number): Shape[] {
  const shown = [true, false].filter((counts) =>
    rows.some(({ dots }) => dots.some((one) => one.counts === counts)),
  );
  let x = GAP;
  return shown.flatMap((counts) => {
    const word = key[counts ? 0 : 1];
    const shapes = [dot(x, y, counts), label('caption', { x: x + GAP + 2, y }, word, { anchor: 'start' })];
    x += textWidth(word, TEXT.caption) + 4 * GAP;
    return shapes;
  });
}
