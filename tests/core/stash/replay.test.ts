/** A recorded cut agrees with its tree, and every way of disagreeing is found. */
import { describe, expect, it } from 'vitest';
import { problemsOfCut } from '#core/stash/replay.ts';
import { layOut } from '#core/stash/shelf-search.ts';
import { type PieceCut, pieceOfSheet } from '#core/stash/stash.ts';
import { inches, length } from '#shared/length.ts';
import { FERN, MEADOW, size } from '#tests/support/cast.ts';

const sheet = pieceOfSheet({ ...FERN, id: 1, sheets: 1, pad: { ...MEADOW, id: 1 } });
const CUT = layOut(sheet, { ...size(5.25, 4), mayTurn: true }, 3, inches(0.75))!;

const changed = (change: (cut: PieceCut) => Partial<PieceCut>): string[] =>
  problemsOfCut({ ...CUT, ...change(CUT) });

describe('a recorded cut', () => {
  it('agrees with its own tree', () => {
    expect(CUT.parts).toHaveLength(3);
    expect(problemsOfCut(CUT)).toEqual([]);
  });

  it('is found out by a part that lies elsewhere, is missing or turned', () => {
    const words = ['the parts that come off are not those written down'];
    expect(changed(({ parts }) => ({ parts: parts.slice(1) }))).toEqual(words);
    expect(
      changed(({ parts: [one, ...rest] }) => ({ parts: [{ ...one!, x: length(one!.x + 1) }, ...rest] })),
    ).toEqual(words);
    expect(
      changed(({ parts: [one, ...rest] }) => ({ parts: [{ ...one!, turned: !one!.turned }, ...rest] })),
    ).toEqual(words);
  });

  it('is found out by a leftover that is not there', () => {
    const words = ['the leftovers are not those written down'];
    expect(changed(({ leftovers }) => ({ leftovers: leftovers.slice(1) }))).toEqual(words);
    expect(changed(({ leftovers: [one] }) => ({ leftovers: [one!, one!] }))).toEqual(words);
  });

  it('is found out by a cut outside its block', () => {
    const cuts = { at: inches(12), along: 'x' as const, parts: [{ waste: true }, { waste: true }] as const };
    expect(changed(() => ({ cuts }))).toEqual([`a cut at ${inches(12)} along x misses its block`]);
  });
});
