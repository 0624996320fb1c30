/** The thumbnail of a cut: the fence outside the block's edge, what comes off lit, all inside the picture. */
import { describe, expect, test } from 'vitest';
import { labelTroubles } from '#core/drawing/boxes.ts';
import { cutSettingDrawing, cutStepDrawing, type DrawnStep, settingScale } from '#core/drawing/cut-step.ts';

const STEP: DrawnStep = {
  piece: { width: 120, height: 80 },
  blocks: [{ x: 20, y: 10, width: 60, height: 40 }],
  kept: [
    { x: 20, y: 10, width: 15, height: 40 },
    { x: 35, y: 10, width: 15, height: 40 },
  ],
  fence: 'left',
};

const shapesOf = (fence: DrawnStep['fence']) => cutStepDrawing({ ...STEP, fence }, 'left edge', 0.5).shapes;

describe.each([
  ['left', 'x', 20],
  ['right', 'x', 80],
  ['top', 'y', 10],
  ['bottom', 'y', 50],
] as const)('with the %s edge at the fence', (fence, axis, at) => {
  test('the fence lies along it, just outside', () => {
    const shapes = shapesOf(fence);
    const fences = shapes.filter((shape) => shape.kind === 'line');
    expect(fences).toHaveLength(1);
    const [from, to] = fences[0]!.points;
    expect(from![axis]).toBe(to![axis]);
    const blocks = shapes.filter((shape) => shape.kind === 'area')[1]!.outline.map((point) => point[axis]);
    const edge = fence === 'left' || fence === 'top' ? Math.min(...blocks) : Math.max(...blocks);
    expect(Math.abs(from![axis] - edge)).toBe(3);
    expect(
      edge - Math.min(...(shapes[0]!.kind === 'area' ? shapes[0]!.outline.map((point) => point[axis]) : [])),
    ).toBe(at / 2);
  });
});

test('what is kept is lit, and nothing else but the fence', () => {
  const lit = shapesOf('left').filter((shape) => 'weight' in shape && shape.weight === 'lit');
  expect(lit.map(({ kind }) => kind)).toEqual(['area', 'area', 'line']);
});

test('a fence at the very edge of the piece stays in the picture', () => {
  const whole = { ...STEP, blocks: [{ x: 0, y: 0, width: 120, height: 80 }], kept: [] };
  for (const fence of ['left', 'right', 'top', 'bottom'] as const) {
    const { width, height, shapes } = cutStepDrawing({ ...whole, fence }, 'w', 0.5);
    for (const shape of shapes) {
      const points = shape.kind === 'line' ? shape.points : shape.kind === 'area' ? shape.outline : [];
      for (const { x, y } of points) {
        expect(x).toBeGreaterThan(0);
        expect(y).toBeGreaterThan(0);
        expect(x).toBeLessThan(width);
        expect(y).toBeLessThan(height);
      }
    }
  }
});

describe('the setting to cut by', () => {
  test.each(['left', 'right', 'top', 'bottom'] as const)(
    'says what the fence is set to from the %s edge to the knife, inside the picture',
    (fence) => {
      const upright = fence === 'left' || fence === 'right';
      const block = { x: 0, y: 0, width: 120, height: 80 };
      for (const deep of [4, 20, 60]) {
        const kept = {
          left: { ...block, width: deep },
          right: { ...block, x: 120 - deep, width: deep },
          top: { ...block, height: deep },
          bottom: { ...block, y: 80 - deep, height: deep },
        }[fence];
        const step = { ...STEP, blocks: [block], kept: [kept], fence };
        const drawing = cutSettingDrawing(step, '4 13/16″', 'words', settingScale([step.piece], 300, 260));
        expect(labelTroubles(drawing)).toEqual([]);
        expect(Math.max(drawing.width, drawing.height)).toBeLessThanOrEqual(300);
        const [from, to] = drawing.shapes.filter(
          (shape) => shape.kind === 'line' && shape.role === 'witness',
        );
        const at = (shape: typeof from) => (shape?.kind === 'line' ? shape.points[0]! : { x: 0, y: 0 });
        const run = upright ? at(to).x - at(from).x : at(from).y - at(to).y;
        expect(run).toBeCloseTo(deep * settingScale([step.piece], 300, 260), 6);
      }
    },
  );
});
