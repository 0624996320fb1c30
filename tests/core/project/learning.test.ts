/** What outcomes teach about a tool, against pins and defaults; the calibration itself is tested with the envelope. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_INSET } from '#core/envelope/fit.ts';
import type { Outcome } from '#core/project/journal.ts';
import { learn, type NotedObservation, observationIn, type Tool } from '#core/project/learning.ts';
import { inches, millimetres } from '#shared/length.ts';
import { FIRST, later, size } from '#tests/support/cast.ts';

const TOOL: Tool = {
  id: 1,
  name: 'Notcher',
  kind: 'notcher',
  graduation: inches(1 / 8),
  largestSheet: inches(12),
  turning: 'clockwise',
  pinnedInset: null,
  pinnedZeroOffset: null,
  learningSince: null,
  chosen: true,
};

/**
 * Worked by plane geometry: a 5¼ × 7¼ in pocket at an inset of ½ in needs a square of 9.8388 in and a start of 4.2123 in
 * (rounded here to the hundredth of a millimetre).
 */
const WORKED: NotedObservation = {
  square: millimetres(249.91),
  start: millimetres(106.99),
  pocket: size(7.25, 5.25),
  envelope: 7,
  number: 1,
  project: { id: 1, title: 'Worked' },
  at: FIRST,
};

const OUTCOME: Outcome = {
  at: FIRST,
  notcher: 1,
  felt: 'easy',
  pocket: size(7.25, 5.25),
  asMade: { square: WORKED.square, start: WORKED.start },
  twin: false,
  finishes: null,
  wrong: '',
  savedBy: '',
};

describe('learning', () => {
  it('has the defaults until there is an outcome', () => {
    const { notcher, inset, zeroOffset } = learn(TOOL, []);
    expect(notcher).toMatchObject({ inset: DEFAULT_INSET, zeroOffset: 0 });
    expect([inset.from, zeroOffset.from]).toEqual(['default', 'default']);
  });

  it('finds the worked example’s inset to a few hundredths of a millimetre', () => {
    const { notcher, inset } = learn(TOOL, [WORKED]);
    expect(inset).toEqual({ from: 'learned', pockets: 1 });
    expect(Math.abs(notcher.inset - inches(0.5))).toBeLessThan(millimetres(0.02));
    expect(Math.abs(notcher.zeroOffset)).toBeLessThan(millimetres(0.02));
  });

  it('keeps to what is pinned and still says what the outcomes would', () => {
    const pinned = { ...TOOL, pinnedInset: inches(3 / 8), pinnedZeroOffset: inches(0) };
    const { notcher, inset, calibration } = learn(pinned, [WORKED]);
    expect(notcher.inset).toBe(inches(3 / 8));
    expect(inset).toEqual({ from: 'pinned' });
    expect(Math.abs(calibration.inset - inches(0.5))).toBeLessThan(millimetres(0.02));
  });

  it('counts one pocket once, noted for however many', () => {
    const copies = [1, 2, 3].map((number) => ({ ...WORKED, envelope: 6 + number, number }));
    const learned = learn(TOOL, copies);
    expect(learned.inset).toEqual({ from: 'learned', pockets: 1 });
    expect(learned.observations).toMatchObject([{ number: 1, alike: [2, 3] }]);
    const off = [1, 2].map((number) => ({ ...WORKED, number, pocket: size(6.25, 5.25), at: later(2) }));
    expect(learn(TOOL, [...copies, ...off]).inset).toEqual({ from: 'default' });
    const measuredAgain = { ...WORKED, number: 4, at: later(3) };
    expect(learn(TOOL, [...copies, measuredAgain]).inset).toEqual({ from: 'learned', pockets: 2 });
    const elsewhere = { ...WORKED, project: { id: 2, title: 'Other' } };
    expect(learn(TOOL, [...copies, elsewhere]).inset).toEqual({ from: 'learned', pockets: 2 });
  });

  it('goes back to the defaults where two outcomes contradict each other', () => {
    const other = { ...WORKED, pocket: size(6.25, 5.25) };
    expect(learn(TOOL, [WORKED, other]).inset).toEqual({ from: 'default' });
  });
});

describe('an outcome', () => {
  it('tells of the tool when its pocket and its measures were noted', () => {
    expect(observationIn(OUTCOME)).toEqual({ ...OUTCOME.asMade, pocket: size(7.25, 5.25) });
    expect(observationIn({ ...OUTCOME, pocket: null })).toBeUndefined();
    expect(observationIn({ ...OUTCOME, asMade: null })).toBeUndefined();
  });

  it('has the other side of the pocket beside its start when that was the twin', () => {
    expect(observationIn({ ...OUTCOME, twin: true })?.pocket).toEqual(size(5.25, 7.25));
  });
});
