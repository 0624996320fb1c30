/** Holds thickness and layered cards against published figures and against sums done by hand. */
import { describe, expect, test } from 'vitest';
import { describeLayers, type Layer } from '#core/paper/layers.ts';
import { massOfCut } from '#core/paper/mass.ts';
import { ANY_CARDSTOCK, thicknessOf, VOLUMES } from '#core/paper/thickness.ts';
import { inches, millimetres } from '#shared/length.ts';
import { addMass, grams } from '#shared/mass.ts';

const cover = (amount: number) => ({ unit: 'lb', amount, grade: 'cover' }) as const;

describe('thickness', () => {
  // A paper mill's worked example.
  test('60 g/m² at a volume of 1.5 to 2 is 90 to 120 µm', () => {
    expect(thicknessOf({ weight: { unit: 'g/m²', amount: 60 }, volume: VOLUMES.bulky })).toEqual({
      least: millimetres(0.09),
      most: millimetres(0.12),
    });
  });

  // Paper makers' cover stock charts. Each lies in the smooth range to within half a thousandth of an inch.
  test.each([
    [65, 0.008],
    [80, 0.0095],
    [100, 0.011],
  ])('%d lb smooth cover is about %d in', (pounds, caliper) => {
    const { least, most } = thicknessOf({ weight: cover(pounds), volume: VOLUMES.smooth });
    expect(inches(caliper)).toBeGreaterThanOrEqual(least - inches(0.0005));
    expect(inches(caliper)).toBeLessThanOrEqual(most + inches(0.0005));
    expect(most - least).toBeLessThan(inches(0.002));
  });

  test('a measured sheet is believed', () => {
    expect(thicknessOf({ weight: cover(80), measured: inches(0.012) })).toEqual({
      least: inches(0.012),
      most: inches(0.012),
    });
  });

  test('what nobody has said spans smooth and uncoated', () => {
    const open = thicknessOf({ weight: cover(80) });
    for (const finish of ['smooth', 'uncoated'] as const) {
      const range = thicknessOf({ weight: cover(80), volume: VOLUMES[finish] });
      expect(open.least).toBeLessThanOrEqual(range.least);
      expect(open.most).toBeGreaterThanOrEqual(range.most);
    }
    expect(ANY_CARDSTOCK[0]).toBeLessThan(ANY_CARDSTOCK[1]);
  });
});

describe('a card of layers', () => {
  const base: Layer = {
    name: 'Base',
    size: { width: inches(10), height: inches(7) },
    paper: { weight: cover(80), measured: inches(0.012) },
    leaves: 2,
    grain: 'height',
    fold: 'height',
  };
  const panel: Layer = {
    name: 'Panel',
    size: { width: inches(4.75), height: inches(6.75) },
    paper: { weight: cover(65), measured: inches(0.009) },
  };

  test('is as thick as its leaves and weighs what they weigh', () => {
    const card = describeLayers([base, panel]);
    expect(card.bulk).toEqual({ least: inches(0.033), most: inches(0.033) });
    expect(card.mass).toBe(
      addMass(massOfCut(base.size, base.paper.weight), massOfCut(panel.size, panel.paper.weight)),
    );
    expect(card.lumps).toBe(false);
  });

  test('carries the spread of papers that nobody measured', () => {
    const guessed = describeLayers([{ ...base, paper: { weight: cover(80) } }, panel]);
    expect(guessed.bulk.least).toBeLessThan(inches(0.033));
    expect(guessed.bulk.most).toBeGreaterThan(guessed.bulk.least);
  });

  test('a bow adds its height, its mass, and a lump', () => {
    const bow = describeLayers([base, { ...panel, raisedBy: millimetres(4), extra: grams(1.5) }]);
    const flat = describeLayers([base, panel]);
    expect(bow.bulk.most - flat.bulk.most).toBe(millimetres(4));
    expect(bow.mass - flat.mass).toBe(grams(1.5));
    expect(bow.lumps).toBe(true);
    expect(describeLayers([base, { ...panel, raisedBy: millimetres(1) }]).lumps).toBe(false);
  });

  test('says when the fold crosses the grain, and when to score', () => {
    expect(describeLayers([base]).notes).toEqual([
      'Base: the fold runs along the grain. Good.',
      'Base: score before folding, with the bead inside.',
    ]);
    expect(describeLayers([{ ...base, grain: 'width' }]).notes[0]).toContain('across the grain');
    const { grain: _, ...unknown } = base;
    expect(describeLayers([unknown]).notes[0]).toContain('find the grain');
    const thin = { ...base, paper: { weight: { unit: 'g/m²', amount: 100 } } } as const;
    expect(describeLayers([thin]).notes).toHaveLength(1);
  });

  test('nothing is no card', () => {
    expect(() => describeLayers([])).toThrow('invalid card');
  });
});
