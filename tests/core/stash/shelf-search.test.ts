/** One piece and one blank: fits, layouts, regret; every layout is judged by the planner's own judge. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import { regret, worth } from '#core/cutting/worth.ts';
import { type BlankWanted, chooseFrom, layOut, yieldOf } from '#core/stash/shelf-search.ts';
import { type Piece, pieceOfSheet } from '#core/stash/stash.ts';
import { shortfall } from '#core/stash/suits.ts';
import { inches, length } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import { FERN, HARE, HEM, MEADOW, SQUARE_8, size, UPRIGHT_4_BY_9 } from '#tests/support/cast.ts';

const KEEP = inches(0.75);

const sheet = (width: number, height: number, print: Print = FERN.print): Piece =>
  pieceOfSheet({
    ...FERN,
    id: 1,
    print,
    sheets: 1,
    pad: { ...MEADOW, id: 1, sheet: { width: length(width), height: length(height) } },
  });

const inchSheet = (width: number, height: number, print?: Print): Piece =>
  sheet(inches(width), inches(height), print);

describe('one blank', () => {
  it('leaves the larger piece whole when a strip comes off', () => {
    const { cut, yields } = chooseFrom(inchSheet(12, 12), SQUARE_8, KEEP)!;
    expect(cut.leftovers).toHaveLength(2);
    expect(cut.leftovers.map(({ width, height }) => [width, height])).toContainEqual([inches(4), inches(12)]);
    expect(yields).toBe(1);
  });

  it('drops what is under the keeping size', () => {
    const { cut } = chooseFrom(inchSheet(8.5, 8.5), SQUARE_8, KEEP)!;
    expect(cut.leftovers).toEqual([]);
  });

  it('takes the blank that is the whole piece without a cut', () => {
    const { cut } = chooseFrom(inchSheet(8, 8), SQUARE_8, KEEP)!;
    expect(cut.cuts).toEqual({ part: 'envelope', turned: false });
  });

  it('turns a straight blank only where the print lets it', () => {
    expect(chooseFrom(inchSheet(9, 4, HARE.print), UPRIGHT_4_BY_9, KEEP)).toBeUndefined();
    expect(chooseFrom(inchSheet(9, 4, HARE.print), { ...UPRIGHT_4_BY_9, mayTurn: true }, KEEP)).toBeDefined();
    expect(chooseFrom(inchSheet(9, 4), UPRIGHT_4_BY_9, KEEP)?.cut.parts[0]?.turned).toBe(true);
  });

  it('leaves a border on the shelf unless it is asked for', () => {
    const without = chooseFrom(inchSheet(12, 12, HEM.print), SQUARE_8, KEEP)!.cut;
    expect(without.parts[0]?.y).toBe(0);
    expect(without.leftovers.some((one) => one.border)).toBe(true);
    const withIt = chooseFrom(inchSheet(12, 12, HEM.print), { ...SQUARE_8, border: true }, KEEP)!.cut;
    expect(withIt.parts[0]!.y + withIt.parts[0]!.height).toBe(inches(12));
    expect(chooseFrom(inchSheet(12, 12), { ...SQUARE_8, border: true }, KEEP)).toBeUndefined();
  });

  it('says what is missing, turned where that is less', () => {
    expect(shortfall(inchSheet(8.5, 7.875), SQUARE_8)).toEqual(size(0, 0.125));
    expect(shortfall(inchSheet(9, 3.5), UPRIGHT_4_BY_9)).toEqual(size(0, 0.5));
    expect(shortfall(inchSheet(9, 3.5, HARE.print), UPRIGHT_4_BY_9)).toEqual(size(0, 5.5));
  });
});

describe('several blanks', () => {
  it('gets four squares of 5¼ from a sheet of 12', () => {
    // Common practice, no source: four of them come from a 12 × 12 sheet.
    expect(yieldOf(inchSheet(12, 12), { ...size(5.25, 5.25), mayTurn: true })).toBe(4);
  });

  it('leaves the free end of a row that is not full', () => {
    const cut = layOut(inchSheet(12, 12), { ...size(5.25, 5.25), mayTurn: true }, 3, KEEP)!;
    expect(cut.parts).toHaveLength(3);
    expect(cut.leftovers.some((one) => one.width >= inches(5.25) && one.height >= inches(5.25))).toBe(true);
  });

  it('refuses more than the piece holds', () => {
    expect(layOut(inchSheet(12, 12), SQUARE_8, 2, KEEP)).toBeUndefined();
  });

  it('lays out hundreds of tiny blanks', () => {
    const wanted = { ...size(0.5, 0.5), mayTurn: true };
    expect(layOut(inchSheet(12, 12), wanted, 500, KEEP)!.parts).toHaveLength(500);
  });
});

describe('properties', () => {
  const side = fc.integer({ min: 1, max: 13 * 64 });
  const cases = fc.record({
    piece: fc.tuple(side, side),
    blank: fc.tuple(side, side),
    print: fc.constantFrom(FERN.print, HARE.print, HEM.print),
    mayTurn: fc.boolean(),
    border: fc.boolean(),
    copies: fc.integer({ min: 1, max: 7 }),
    keep: fc.integer({ min: 1, max: 128 }),
  });

  it('every layout is one that the judge of plans accepts', () => {
    fc.assert(
      fc.property(cases, ({ piece: [width, height], blank, print, mayTurn, border, copies, keep }) => {
        const piece = sheet(width, height, print);
        const wanted = { width: length(blank[0]), height: length(blank[1]), mayTurn, border };
        const cut = layOut(piece, wanted, copies, length(keep));
        if (!cut) return;
        expect(problemsOf(cut, piece, wanted, copies, keep)).toEqual([]);
      }),
      { seed: 20261125, numRuns: 2000 },
    );
  });

  it('a cut never adds worth, and the regret is at least the worth of what was taken', () => {
    fc.assert(
      fc.property(cases, ({ piece: [width, height], blank, print, keep }) => {
        const piece = sheet(width, height, print);
        const wanted = { width: length(blank[0]), height: length(blank[1]), mayTurn: true };
        const choice = chooseFrom(piece, wanted, length(keep));
        if (!choice) return;
        expect(choice.regret).toBe(regret(piece, choice.cut.leftovers, keep));
        expect(choice.regret).toBeGreaterThanOrEqual(worth(wanted, keep));
      }),
      { seed: 20261125, numRuns: 2000 },
    );
  });
});

/** What the judge says of the cut as a plan for this one piece; figures that are not the cut's are left aside. */
function problemsOf(
  cut: NonNullable<ReturnType<typeof layOut>>,
  piece: Piece,
  wanted: BlankWanted,
  copies: number,
  keep: number,
) {
  const { width, height } = piece;
  const upright = piece.design.print.direction !== 'any way';
  const pieces = [{ id: 'p', width, height, kind: 'sheet' as const, upright }];
  const part = {
    id: 'envelope',
    width: wanted.width,
    height: wanted.height,
    copies,
    upright: !wanted.mayTurn,
  };
  const rectangles = cut.parts.map(({ part, turned, x, y, width, height }) => ({
    part,
    turned,
    x,
    y,
    width,
    height,
  }));
  const leftovers = cut.leftovers.map(({ x, y, width, height }) => ({ x, y, width, height }));
  const plan = { used: [{ piece: 'p', rectangles, leftovers, cuts: cut.cuts }] } as unknown as CutPlan;
  const judged = checkPlan({ parts: [part], keepAtLeast: keep }, pieces, {
    ...plan,
    placed: copies,
    unplaced: [],
    limits: { keepAtLeast: keep },
    newSheets: 1,
    newSheetArea: width * height,
    offcutAreaUsed: 0,
    worthLost: regret(piece, cut.leftovers, keep),
    bounds: { unplaced: 0, newSheetArea: 0 },
    proved: false,
    timeMs: 0,
  });
  return judged.filter(({ field }) => field.startsWith('used'));
}
