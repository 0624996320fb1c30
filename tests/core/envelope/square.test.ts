/**
 * The closed formulas of the diagonal fold against worked examples of plane geometry and against a sheet folded numerically:
 * its corner points reflected across the score lines, worked out here from nothing but square, start and inset.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  borderLegs,
  flapDepth,
  flapOverlap,
  flapOverrun,
  insetFrom,
  pocketHeight,
  pocketWidth,
  seamKeptTo,
  seamWidth,
  squareFor,
  startFor,
  tipLoss,
  zeroOffsetFrom,
} from '#core/envelope/square.ts';
import { distance, dot, type Line, middle, minus, type Point, point, reflect } from '#core/geometry/point.ts';
import { area, overlap, rectangle } from '#core/geometry/polygon.ts';
import { SEED } from './cast.ts';

/** Square, true start and inset in inches, leaving a pocket either way. */
const anySheet = fc
  .record({
    square: fc.double({ min: 4, max: 14, noNaN: true }),
    inset: fc.double({ min: 0, max: 0.75, noNaN: true }),
    share: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
  })
  .map(({ square, inset, share }) => ({ square, inset, start: inset + share * (square - 2 * inset) }));

interface Sheet {
  readonly square: number;
  readonly start: number;
  readonly inset: number;
}

/** As large in numbers as real sheets are, for what cuts polygons. */
const inUnits = ({ square, start, inset }: Sheet): Sheet => ({
  square: square * 1e6,
  start: start * 1e6,
  inset: inset * 1e6,
});

/** The pocket's corners, each `inset` in from its edge, going round with p, S − p, p, S − p. */
function corners({ square: S, start: p, inset: m }: Sheet): [Point, Point, Point, Point] {
  return [point(p, m), point(S - m, S - p), point(S - p, S - m), point(m, p)];
}

const fromLine = (at: Point, { from, to }: Line): number => {
  const along = minus(to, from);
  return Math.abs(along.x * (at.y - from.y) - along.y * (at.x - from.x)) / Math.hypot(along.x, along.y);
};

function folded(sheet: Sheet) {
  const [p1, p2, p3, p4] = corners(sheet);
  const S = sheet.square;
  const sides = {
    left: { score: { from: p4, to: p1 }, opposite: { from: p2, to: p3 }, tip: point(0, 0) },
    top: { score: { from: p1, to: p2 }, opposite: { from: p3, to: p4 }, tip: point(S, 0) },
    right: { score: { from: p2, to: p3 }, opposite: { from: p4, to: p1 }, tip: point(S, S) },
    bottom: { score: { from: p3, to: p4 }, opposite: { from: p1, to: p2 }, tip: point(0, S) },
  };
  return { ...sides, width: distance(p1, p2), height: distance(p2, p3) };
}

describe('worked examples of plane geometry', () => {
  it('a 5¼ × 7¼ in pocket with inset ½ in', () => {
    const [w, h, m] = [7.25, 5.25, 0.5];
    expect(squareFor(w, h, m)).toBeCloseTo(9.8388, 4);
    expect(startFor(h, m)).toBeCloseTo(4.2123, 4);
    expect(startFor(w, m)).toBeCloseTo(5.6265, 4);
    expect(flapDepth(h, m)).toBeCloseTo(3.332, 3);
    expect(flapDepth(w, m)).toBeCloseTo(4.332, 3);
  });

  it('a 114 × 162 mm pocket (C6, ISO 269:1985) with no inset and with ⅜ in', () => {
    expect(squareFor(162, 114, 0)).toBeCloseTo(195.16, 2);
    expect(squareFor(162, 114, (3 / 8) * 25.4)).toBeCloseTo(214.21, 2);
  });

  it('slips: 1/32 in of square moves a side by 0.044 in, 1/16 in of start by 0.088 in', () => {
    expect(pocketWidth(8 + 1 / 32, 3, 0.5) - pocketWidth(8, 3, 0.5)).toBeCloseTo(0.044, 3);
    expect(pocketHeight(3 + 1 / 16, 0.5) - pocketHeight(3, 0.5)).toBeCloseTo(0.088, 3);
    expect(pocketWidth(8, 3 + 1 / 16, 0.5) - pocketWidth(8, 3, 0.5)).toBeCloseTo(-0.088, 3);
  });
});

describe('against a sheet folded numerically', () => {
  it('pocket, square and starts agree', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const { width, height } = folded(sheet);
        expect(pocketWidth(sheet.square, sheet.start, sheet.inset)).toBeCloseTo(width, 9);
        expect(pocketHeight(sheet.start, sheet.inset)).toBeCloseTo(height, 9);
        expect(squareFor(width, height, sheet.inset)).toBeCloseTo(sheet.square, 9);
        expect(startFor(height, sheet.inset)).toBeCloseTo(sheet.start, 9);
        expect(startFor(width, sheet.inset)).toBeCloseTo(sheet.square - sheet.start, 9);
        expect(width + height).toBeCloseTo(Math.SQRT2 * (sheet.square - 2 * sheet.inset), 9);
      }),
      SEED,
    );
  });

  it('the pocket is a rectangle, each corner the inset from its edge', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const [p1, p2, p3, p4] = corners(sheet);
        expect(dot(minus(p2, p1), minus(p3, p2))).toBeCloseTo(0, 9);
        expect(distance(p1, p2)).toBeCloseTo(distance(p3, p4), 9);
        expect([p1.y, sheet.square - p2.x, sheet.square - p3.y, p4.x]).toEqual(
          [0, 0, 0, 0].map(() => expect.closeTo(sheet.inset, 9)),
        );
      }),
      SEED,
    );
  });

  it('each tip lands as deep as the formulas say, past the opposite fold where they say', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const { width, height, ...sides } = folded(sheet);
        for (const [name, { score, opposite, tip }] of Object.entries(sides)) {
          const [along, across] = name === 'left' || name === 'right' ? [height, width] : [width, height];
          const landed = reflect(tip, score);
          expect(fromLine(landed, score)).toBeCloseTo(flapDepth(along, sheet.inset), 9);
          const inwards = minus(middle(opposite), middle(score));
          const past = dot(minus(landed, middle(opposite)), inwards) / Math.hypot(inwards.x, inwards.y);
          expect(past).toBeCloseTo(flapOverrun(along, across, sheet.inset), 9);
        }
      }),
      SEED,
    );
  });

  it('opposite flaps overlap, or leave a gap between their tips, as the formulas say', () => {
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const { width: w, height: h, left, right, top, bottom } = folded(sheet);
        const overlapOf = (one: typeof left, other: typeof left): number => {
          const inwards = minus(middle(other.score), middle(one.score));
          const unit = Math.hypot(inwards.x, inwards.y);
          const [a, b] = [reflect(one.tip, one.score), reflect(other.tip, other.score)];
          return dot(minus(a, b), inwards) / unit;
        };
        expect(overlapOf(top, bottom)).toBeCloseTo(flapOverlap(w, h, sheet.inset), 9);
        expect(overlapOf(top, bottom)).toBeCloseTo(w - h + 2 * Math.SQRT2 * sheet.inset, 9);
        expect(-overlapOf(left, right)).toBeCloseTo(w - h - 2 * Math.SQRT2 * sheet.inset, 9);
        expect(overlapOf(left, right)).toBeCloseTo(flapOverlap(h, w, sheet.inset), 9);
      }),
      SEED,
    );
  });

  it('a bottom flap lies on a side flap in a 45° band 2m wide, down to h/2 + m√2 from its score', () => {
    fc.assert(
      fc.property(anySheet.map(inUnits), (sheet) => {
        const { width: w, height: h, left, bottom } = folded(sheet);
        fc.pre(w >= h && sheet.inset > 50_000 && sheet.inset * Math.SQRT2 < h / 2);
        const { inset: m, square: S, start: p } = sheet;
        // What the notches leave: each flap cut square to its score beside the notch.
        const side = [point(m, p), point(p, m), point(p - m, 0), point(0, 0), point(0, p - m)];
        const long = [point(S - p, S - m), point(m, p), point(0, p + m), point(0, S), point(S - p - m, S)];
        const [a, c] = [
          side.map((at) => reflect(at, left.score)),
          long.map((at) => reflect(at, bottom.score)),
        ];
        const band = overlap(a, c);
        expect(Math.max(...band.map((at) => fromLine(at, bottom.score)))).toBeCloseTo(seamKeptTo(h, m), 1);
        // At 45° to the pocket is along the sheet's edges: the band runs up the sheet, 2m wide.
        const xs = band.map(({ x }) => x);
        const ys = band.map(({ y }) => y);
        const across = Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
        expect(across).toBeCloseTo(seamWidth(m), 1);
        expect(area(band)).toBeGreaterThan(0);
      }),
      SEED,
    );
    expect(seamWidth(0)).toBe(0);
  });

  it('one pocket measured both ways gives inset and zero offset back', () => {
    fc.assert(
      fc.property(anySheet, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (sheet, offset) => {
        const { width, height } = folded(sheet);
        expect(insetFrom(sheet.square, width, height)).toBeCloseTo(sheet.inset, 9);
        expect(zeroOffsetFrom(sheet.square, sheet.start - offset, width, height)).toBeCloseTo(offset, 9);
      }),
      SEED,
    );
  });

  it('a border reaches the front as a corner triangle with legs √2(b − m), only beyond the inset', () => {
    fc.assert(
      fc.property(anySheet.map(inUnits), fc.integer({ min: 0, max: 1_500_000 }), (sheet, border) => {
        const pocket = corners(sheet);
        const legs = borderLegs(border, sheet.inset);
        fc.pre(legs < Math.min(distance(pocket[0], pocket[1]), distance(pocket[1], pocket[2])));
        const reached = overlap(pocket, rectangle(0, 0, sheet.square, border));
        expect(Math.sqrt(2 * area(reached))).toBeCloseTo(legs, 0);
      }),
      SEED,
    );
  });

  it('a rounded tip recedes by r(√2 − 1)', () => {
    const radius = 0.25;
    // The circle touches both edges of the right-angled corner; its centre lies r√2 from the corner.
    expect(tipLoss(radius)).toBeCloseTo(distance(point(0, 0), point(radius, radius)) - radius, 12);
  });
});
