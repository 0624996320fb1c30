/**
 * A year's paper as bars, bought beside used, with what came from offcuts hatched and what was spoiled crossed, so that it
 * is read without colour. Scales and ticks are d3's. Knows areas already turned into the reader's unit.
 */
import { max } from 'd3-array';
import { type ScaleBand, type ScaleLinear, scaleBand, scaleLinear } from 'd3-scale';
import type { Point } from '#core/geometry/point.ts';
import type { YearSums } from '#core/stash/year.ts';
import { type Area, area, type Drawing, label, line, rectangle, type Shape, WIDEST } from './drawing.ts';

export interface YearBars {
  readonly title: string;
  readonly words: string;
  /** What the scale counts, such as `sq ft`. */
  readonly unit: string;
  readonly bars: readonly (YearSums & { readonly name: string })[];
}

const LEFT = 40;
const RIGHT = 4;
const TOP = 48;
const HEIGHT = 170;
const BENEATH = 26;
const TICKS = 5;

export function yearDrawing({ title, words, unit, bars }: YearBars): Drawing {
  const highest = max(bars, ({ bought, used }) => Math.max(bought, used)) || 1;
  const up = scaleLinear([0, highest], [TOP + HEIGHT, TOP]).nice(TICKS);
  const across = scaleBand<number>(
    bars.map((_, index) => index),
    [LEFT, WIDEST - RIGHT],
  ).paddingInner(0.18);
  return {
    title,
    words,
    width: WIDEST,
    height: TOP + HEIGHT + BENEATH,
    shapes: [
      ...legend(),
      ...scale(up, unit),
      ...bars.flatMap((one, index) => [
        ...barsOf(one, across(index)!, across, up),
        label('caption', { x: across(index)! + across.bandwidth() / 2, y: TOP + HEIGHT + 13 }, one.name),
      ]),
      line('outline', [
        { x: LEFT, y: TOP + HEIGHT },
        { x: WIDEST - RIGHT, y: TOP + HEIGHT },
      ]),
    ],
  };
}

/** Bought is empty; used stands beside it on three storeys: from sheets, from offcuts, spoiled. */
function barsOf(
  { bought, used, fromOffcuts, spoiled }: YearSums,
  left: number,
  across: ScaleBand<number>,
  up: ScaleLinear<number, number>,
): Shape[] {
  const wide = Math.min(across.bandwidth() / 2, 34);
  const begin = left + across.bandwidth() / 2 - wide;
  const storey = (role: Area['role'], x: number, from: number, to: number): Shape[] =>
    to > from ? box(role, rectangle(x, up(to), wide, up(from) - up(to))) : [];
  const sound = Math.max(0, used - spoiled);
  const offcuts = Math.min(Math.max(0, fromOffcuts), sound);
  return [
    ...storey('part', begin, 0, bought),
    ...storey('notch', begin + wide, 0, sound - offcuts),
    ...storey('left', begin + wide, sound - offcuts, sound),
    ...storey('waste', begin + wide, sound, used),
  ];
}

function scale(up: ScaleLinear<number, number>, unit: string): Shape[] {
  const format = up.tickFormat(TICKS);
  return [
    label('caption', { x: 0, y: TOP - 14 }, unit, { anchor: 'start' }),
    ...up.ticks(TICKS).flatMap((tick) => [
      line('witness', [
        { x: LEFT, y: up(tick) },
        { x: WIDEST - RIGHT, y: up(tick) },
      ]),
      label('caption', { x: LEFT - 6, y: up(tick) }, format(tick), { anchor: 'end' }),
    ]),
  ];
}

function legend(): Shape[] {
  const keys: readonly [number, Area['role'], string][] = [
    [0, 'part', 'bought'],
    [70, 'notch', 'used'],
    [128, 'left', 'of it from offcuts'],
    [268, 'waste', 'of it spoiled'],
  ];
  return keys.flatMap(([x, role, text]) => [
    ...box(role, rectangle(x + 1, 6, 14, 12)),
    label('caption', { x: x + 19, y: 12 }, text, { anchor: 'start' }),
  ]);
}

/** What is spoiled has no edge of its own. */
function box(role: Area['role'], outline: Point[]): Shape[] {
  return [area(role, outline), ...(role === 'waste' ? [line('arrow', [...outline, outline[0]!])] : [])];
}
