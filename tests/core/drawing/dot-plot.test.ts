/** Dot plots keep their labels apart and inside, whatever was measured, and tell what counts without colour. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { labelTroubles } from '#core/drawing/boxes.ts';
import { dotPlot } from '#core/drawing/dot-plot.ts';
import { inches, length, type Units } from '#shared/length.ts';

const UNITS: readonly Units[] = [{ unit: 'in', step: 32 }, { unit: 'mm' }];

const anyDot = fc.record({
  at: fc.integer({ min: -inches(1), max: inches(2) }).map(length),
  counts: fc.boolean(),
});
const anyPlot = fc.record({
  title: fc.constant('Fits'),
  words: fc.constant('Fits.'),
  rows: fc.array(fc.record({ name: fc.constantFrom('tight', '12 March 2026'), dots: fc.array(anyDot) }), {
    minLength: 1,
    maxLength: 12,
  }),
  marks: fc.array(
    fc.record({
      at: fc.integer({ min: -inches(1), max: inches(2) }).map(length),
      text: fc.constant('snug from ¹⁄₁₆″'),
    }),
    { maxLength: 3 },
  ),
  from: fc.integer({ min: -inches(0.5), max: 0 }).map(length),
  to: fc.integer({ min: inches(0.05), max: inches(1.5) }).map(length),
  key: fc.constant(['as graded', 'felt otherwise'] as const),
  across: fc.option(fc.record({ before: fc.nat(5), text: fc.constant('changed after 12 March') }), {
    nil: undefined,
  }),
});

it('labels neither touch nor leave the picture', () => {
  fc.assert(
    fc.property(anyPlot, fc.constantFrom(...UNITS), (plot, units) => {
      expect(labelTroubles(dotPlot(plot, units))).toEqual([]);
    }),
    { seed: 5, numRuns: 100 },
  );
});

it('what counts is filled, the rest hollow', () => {
  const at = inches(0.1);
  const rows = [
    {
      name: 'snug',
      dots: [
        { at, counts: true },
        { at, counts: false },
      ],
    },
  ];
  const plot = { title: 'Fits', words: 'Fits.', rows, marks: [], from: inches(0), to: inches(0.5) };
  const { shapes } = dotPlot({ ...plot, key: ['as graded', 'otherwise'] }, UNITS[0]!);
  expect(shapes.filter(({ kind }) => kind === 'area').map((one) => 'role' in one && one.role)).toEqual([
    ...['notch', 'card'],
    ...['notch', 'card'],
  ]);
});
