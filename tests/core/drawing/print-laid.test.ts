/** The print on the sheet while it is folded: which way its top points, through the sheet or from its own side, and its pictures. */
import { describe, expect, test } from 'vitest';
import { labelTroubles } from '#core/drawing/boxes.ts';
import type { Area, AreaRole, Drawing, Printed, Shape } from '#core/drawing/drawing.ts';
import { makingDrawing } from '#core/drawing/making.ts';
import type { PaperLaid } from '#core/drawing/print-laid.ts';
import { foldOf } from '#core/envelope/folds.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { apply } from '#core/geometry/transform.ts';
import { inches } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import { expectPicture } from '#tests/support/snapshot.ts';
import { Picture } from '#views/diagrams/picture.tsx';

const IN = { unit: 'in', step: 16 } as const;
const NOTCHER = {
  inset: inches(7 / 16),
  zeroOffset: inches(0),
  graduation: inches(1 / 8),
  largestSheet: inches(12),
};
const card = { width: inches(5.5), height: inches(4.25), bulk: inches(1 / 32) };
const SWATCH = { motif: 'dots', ground: '#e8d9b8', inks: ['#7a3b2e'] } as const;
const PRINTS: readonly Print[] = [{ direction: 'upright' }, { direction: 'one edge', border: inches(2) }];

const printsIn = ({ shapes }: Drawing): Printed[] => shapes.filter((shape) => shape.kind === 'printed');

/** Where the print's top points, as a side of the picture. */
function topOf({ lay }: Printed): string {
  const up = apply({ ...lay, e: 0, f: 0 }, { x: 0, y: -1 });
  const upright = Math.abs(up.y) > Math.abs(up.x);
  return upright ? (up.y < 0 ? 'top' : 'bottom') : up.x < 0 ? 'left' : 'right';
}

const isMirrored = ({ lay: { a, b, c, d } }: Printed): boolean => a * d - b * c < 0;

const isArea = (shape: Shape, role: AreaRole): shape is Area => shape.kind === 'area' && shape.role === role;

const SIDES = ['top', 'right', 'bottom', 'left'];

describe.each(['diagonal', 'side-seam', 'two-piece'] as const)('%s', (name) => {
  const [recipe] = solveEnvelope({ card, notcher: NOTCHER, folds: [name] });
  const fold = foldOf(recipe!);
  const looks = PRINTS.flatMap((print) =>
    fold.looks(recipe!, { print, doubleSided: true }).map((look) => ({ print, look })),
  );
  const drawn = looks.map(({ print, look }) => {
    const paper: PaperLaid = { print, swatch: SWATCH, placement: look.placement };
    const steps = fold.steps(recipe!, 'clockwise', look);
    const pictures = steps.map((step) => {
      const here = steps.filter((one) => (one.sheet ?? 0) === (step.sheet ?? 0));
      const making = { steps: here, at: here.indexOf(step), paper };
      return makingDrawing(recipe!, fold.flat(recipe!, 'clockwise')[step.sheet ?? 0]!, making, IN);
    });
    return { paper, steps, pictures };
  });

  test('shows the print once it is laid down, mirrored through the sheet, its top where it was laid and turned to', () => {
    for (const { paper, steps, pictures } of drawn)
      for (const [at, step] of steps.entries()) {
        const [open] = printsIn(pictures[at]!);
        expect(open !== undefined).toBe(step.kind !== 'cut');
        if (!open) continue;
        expect(isMirrored(open)).toBe(paper.placement.faceDown === 'print');
        const { what, side } = paper.placement.towards!;
        const top = (SIDES.indexOf(side) + (what === 'border' ? 2 : 0) + step.turns) % 4;
        expect(topOf(open)).toBe(SIDES[top]);
      }
  });

  test('shows on what is folded over its own side, never mirrored, where the print comes out', () => {
    for (const { paper, pictures } of drawn) {
      for (const picture of pictures) {
        const over = printsIn(picture).filter(({ ink }) => ink === 1);
        const folded = picture.shapes.filter((one) => isArea(one, 'flap') && one.weight === 'plain');
        expect(over).toHaveLength(paper.placement.faceDown === 'print' ? folded.length : 0);
        expect(over.filter(isMirrored)).toEqual([]);
      }
    }
  });

  test('keeps its labels apart and inside', () => {
    for (const { pictures } of drawn) for (const one of pictures) expect(labelTroubles(one)).toEqual([]);
  });

  test('looks as it was drawn', () => {
    const { steps, pictures } = drawn[0]!;
    for (const kind of ['lay', 'score', 'fold'] as const) {
      const at = steps.findLastIndex((step) => step.kind === kind);
      const svg = `${Picture({ drawing: pictures[at]!, id: 'sheet' })}`;
      expectPicture(`making-print-${name}-${kind}`, svg);
    }
  });
});
