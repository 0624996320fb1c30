/** The key under a drawing: a sample of each kind of line or filling with its word. */
import { textWidth } from './boxes.ts';
import { type AreaRole, area, type LineRole, label, line, rectangle, type Shape, TEXT } from './drawing.ts';

export type LegendItem =
  | { readonly line: LineRole; readonly word: string }
  | { readonly area: AreaRole; readonly word: string };

/** The items in rows no wider than `width` from `top` down, and how high they stand in all. */
export function legend(
  items: readonly LegendItem[],
  top: number,
  width: number,
): { shapes: Shape[]; height: number } {
  let [x, y] = [INDENT, top + ROW / 2];
  const shapes: Shape[] = [];
  for (const item of items) {
    const room = SAMPLE + GAP + textWidth(item.word, TEXT.caption);
    if (x + room > width) [x, y] = [INDENT, y + ROW];
    shapes.push(sample(item, x, y));
    shapes.push(label('caption', { x: x + SAMPLE + GAP, y }, item.word, { anchor: 'start' }));
    x += room + BETWEEN;
  }
  return { shapes, height: items.length === 0 ? 0 : y + ROW / 2 - top };
}

const INDENT = 4;
const SAMPLE = 22;
const GAP = 5;
const BETWEEN = 14;
const ROW = 20;

const sample = (item: LegendItem, x: number, y: number): Shape =>
  'line' in item
    ? line(item.line, [
        { x, y },
        { x: x + SAMPLE, y },
      ])
    : area(item.area, rectangle(x, y - 6, SAMPLE, 12));
