/** Checks where a dimension's line and figure stand, and that figures read from the bottom or the right. */
import { describe, expect, it } from 'vitest';
import { dimension, readingTurn } from '#core/drawing/dimension.ts';
import type { Label } from '#core/drawing/drawing.ts';
import type { Point } from '#core/geometry/point.ts';

const drawn = (from: Point, to: Point, text: string, away: number) => {
  const shapes = dimension(from, to, text, { away });
  return {
    runs: shapes.filter((shape) => shape.kind === 'line' && shape.role === 'dimension'),
    figure: shapes.find((shape): shape is Label => shape.kind === 'label')!,
  };
};

describe('dimension', () => {
  it('breaks a long line round its figure, above a line that runs right', () => {
    const { runs, figure } = drawn({ x: 0, y: 50 }, { x: 200, y: 50 }, '4⅞″', 20);
    expect(runs).toHaveLength(2);
    expect(figure.at).toEqual({ x: 100, y: 30 });
    expect(figure.turn).toBe(0);
  });

  it('puts the figure past the end of a line shorter than it', () => {
    const { runs, figure } = drawn({ x: 0, y: 50 }, { x: 8, y: 50 }, '4⅞″', 20);
    expect(runs).toHaveLength(1);
    expect(figure.at.x).toBeGreaterThan(8);
    expect(figure.anchor).toBe('start');
  });

  it.each([
    [{ x: 1, y: 0 }, 0],
    [{ x: -1, y: 0 }, 0],
    [{ x: 0, y: 1 }, 90 - 180],
    [{ x: 0, y: -1 }, -90],
    [{ x: 1, y: 1 }, 45],
    [{ x: -1, y: 1 }, -45],
  ])('turns a figure along %o so that it can be read', (along, turn) => {
    expect(readingTurn(along)).toBeCloseTo(turn);
  });
});
