/**
 * Plans kept before steps were kept with them: the file holds one as it was stored, with the cut sheet that was shown for
 * it and ticked, written by the program of that time (commit bea5436).
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import { earlierCutSheet } from '#core/cutting/trimmer/earlier-steps.ts';

const { order, pieces, plan, steps } = JSON.parse(
  readFileSync('tests/fixtures/plan-kept-before-steps.json', 'utf8'),
);

const sheet = earlierCutSheet(pieces, plan);

it('has the steps that were shown, under the numbers that were ticked', () => {
  const shown = sheet.steps.map(({ number, set, laid: [laid, ...more] }) => {
    expect(more).toEqual([]);
    const { pattern, block, fence, kept: off, rest } = laid!;
    return { number, set, piece: sheet.patterns[pattern]!.pieces[0], block, fence, off, rest };
  });
  expect(shown).toEqual(steps.map(({ count: _, ...step }: { count: number }) => step));
  const cuts = steps.map(({ off, count, piece }: { off: unknown[]; count: number; piece: string }) => [
    piece,
    off.length * count,
  ]);
  expect(sheet.steps.map(({ patterns, times }) => [sheet.patterns[patterns[0]!]!.pieces[0], times])).toEqual(
    cuts,
  );
});

it('is cut as the judge reads it', () => {
  expect(checkPlan(order, pieces, { ...plan, ...sheet })).toEqual([]);
});
