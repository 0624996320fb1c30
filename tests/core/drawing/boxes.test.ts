/** Checks the judge of label collisions itself: it must see touching, turned and escaping labels, and let others be. */
import { describe, expect, it } from 'vitest';
import { boxOf, labelTroubles, overlap } from '#core/drawing/boxes.ts';
import { type Drawing, label } from '#core/drawing/drawing.ts';

const at = (x: number, y: number, turn = 0) => label('note', { x, y }, 'seven words', { turn });
const boxAt = (x: number, y: number, turn = 0) => boxOf(at(x, y, turn));

describe('label boxes', () => {
  it('sees labels that touch, level or turned', () => {
    expect(overlap(boxAt(100, 100), boxAt(110, 105))).toBe(true);
    expect(overlap(boxAt(100, 100), boxAt(100, 130, 90))).toBe(true);
  });

  it('lets labels be that stand close: a diagonal one whose bounding box alone would reach', () => {
    expect(overlap(boxAt(100, 100), boxAt(100, 113))).toBe(false);
    expect(overlap(boxAt(100, 100, 45), boxAt(124, 88, 45))).toBe(false);
  });

  it('reaches as far as its anchor says', () => {
    const [topLeft, topRight] = boxOf(label('note', { x: 50, y: 50 }, 'abc', { anchor: 'end' })).corners;
    expect(topRight!.x).toBeCloseTo(50);
    expect(topLeft!.x).toBeLessThan(35);
  });

  it('names what is wrong with a drawing', () => {
    const drawing: Drawing = {
      title: '',
      words: '',
      width: 200,
      height: 60,
      shapes: [at(60, 20), at(70, 22), at(195, 50)],
    };
    expect(labelTroubles(drawing)).toEqual([
      '“seven words” leaves the drawing',
      '“seven words” touches “seven words”',
    ]);
  });
});
