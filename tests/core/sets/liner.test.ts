/** Checks that a liner keeps clear of sides and glue on every shape of flap. Measures distances, not the method. */
import { describe, expect, test } from 'vitest';
import { type Polygon, point } from '#core/geometry/point.ts';
import { edges } from '#core/geometry/polygon.ts';
import { type LinerWish, liner } from '#core/sets/liner.ts';
import { inches, length, toInches } from '#shared/length.ts';
import { rect, refused, sound } from '#tests/support/checked.ts';

const corners = (...all: [number, number][]): Polygon => all.map(([x, y]) => point(inches(x), inches(y)));

/** Over a pocket of 7 × 5 in: as a diagonal fold leaves it, cut straight, cut to a taper, and square. */
const FLAPS: Record<string, Polygon> = {
  pointed: corners([0, 0], [3.5, -3.5], [7, 0]),
  straight: corners([0, 0], [2.5, -2.5], [4.5, -2.5], [7, 0]),
  tapered: corners([0, 0], [0.5, -2], [6.5, -2], [7, 0]),
  square: corners([0, 0], [0, -2], [7, -2], [7, 0]),
};

const wish = (flap: Polygon): LinerWish => ({
  pocket: rect(7, 5),
  flap,
  glue: inches(0.5),
  clear: inches(1 / 16),
  copies: 1,
});

const distanceTo = (at: { x: number; y: number }, edge: { from: typeof at; to: typeof at }): number => {
  const [dx, dy] = [edge.to.x - edge.from.x, edge.to.y - edge.from.y];
  return Math.abs(dx * (at.y - edge.from.y) - dy * (at.x - edge.from.x)) / Math.hypot(dx, dy);
};

describe('a liner', () => {
  // Published how-to guides: ¼ in narrower than the envelope, from the bottom fold to just below the gum.
  test.each(Object.keys(FLAPS))(
    '%s: ¼ in narrower than the envelope, and scored where the flap is',
    (name) => {
      const part = sound(liner(wish(FLAPS[name]!)));
      expect(part.width).toBe(inches(6.75));
      expect(part.height - part.scores[0]!.at).toBe(inches(5));
    },
  );

  test.each(Object.keys(FLAPS))('%s: no corner comes nearer to glue than the gap below it', (name) => {
    const flap = FLAPS[name]!;
    const part = sound(liner(wish(flap)));
    const onEnvelope = part.outline!.map(({ x, y }) => point(x + inches(1 / 8), y - part.scores[0]!.at));
    const glued = edges(flap).filter(
      (edge) => Math.abs(edge.to.x - edge.from.x) > Math.abs(edge.to.y - edge.from.y) / 2,
    );
    for (const edge of glued.filter((one) => one.from.y !== 0 || one.to.y !== 0)) {
      const nearest = toInches(Math.min(...onEnvelope.map((at) => distanceTo(at, edge))));
      expect(nearest).toBeGreaterThan(0.5 + 1 / 16 - 1e-6);
      expect(nearest).toBeLessThan(0.5 + 1 / 16 + 1 / 64);
    }
  });

  test('an edge that stands almost upright is a side, and keeps ⅛ in', () => {
    const part = sound(liner(wish(FLAPS.tapered!)));
    const onEnvelope = part.outline!.map(({ x, y }) => point(x + inches(1 / 8), y - part.scores[0]!.at));
    const [leaning] = edges(FLAPS.tapered!);
    expect(toInches(Math.min(...onEnvelope.map((at) => distanceTo(at, leaning!))))).toBeCloseTo(1 / 8, 4);
  });

  test('follows the flap: as many corners, the same slopes', () => {
    const slopes = (polygon: Polygon): string[] =>
      edges(polygon).map(({ from, to }) => (Math.atan2(to.y - from.y, to.x - from.x) / Math.PI).toFixed(6));
    const part = sound(liner(wish(FLAPS.pointed!)));
    const open = [point(0, inches(5)), ...FLAPS.pointed!, point(inches(7), inches(5))];
    expect([...slopes(part.outline!)].sort()).toEqual([...slopes(open)].sort());
  });

  test('a square flap gets a straight top, just below its glue', () => {
    const part = sound(liner(wish(FLAPS.square!)));
    expect(part.height).toBe(inches(5 + 2 - 0.5 - 1 / 16));
  });

  // Published how-to guides, on an A7 (5¼ × 7¼ in, printers' size charts) with a 2 in flap and ½ in of gum: 7 in wide;
  // its foot in the bottom fold, its top under the gum but by less than the ⅛ in that the sides keep.
  test('an A7 gets the liner that guides tell to cut', () => {
    const flap = corners([0, 0], [0, -2], [7.25, -2], [7.25, 0]);
    const part = sound(liner({ pocket: rect(7.25, 5.25), flap, glue: inches(0.5), copies: 1 }));
    expect(part.width).toBe(inches(7));
    expect(toInches(part.height)).toBeGreaterThan(5.25 + 1.5 - 1 / 8);
    expect(toInches(part.height)).toBeLessThan(5.25 + 1.5);
  });

  test('a pocket off every ruler gets a liner on 64ths of an inch, never larger', () => {
    const pocket = { width: length(6_480_889), height: length(4_445_321) };
    const flap = FLAPS.pointed!.map(({ x, y }) => point((x * pocket.width) / inches(7), y));
    const part = sound(liner({ ...wish(flap), pocket }));
    for (const measure of [part.width, part.height, part.scores[0]!.at]) {
      expect(measure % inches(1 / 64)).toBe(0);
    }
    expect(pocket.width - inches(1 / 4) - part.width).toBeGreaterThanOrEqual(0);
    expect(pocket.width - inches(1 / 4) - part.width).toBeLessThan(inches(1 / 64));
    expect(part.height - part.scores[0]!.at).toBeLessThanOrEqual(pocket.height);
    const [xs, ys] = [part.outline!.map(({ x }) => x), part.outline!.map(({ y }) => y)];
    expect([Math.min(...xs), Math.min(...ys)].map(Math.round)).toEqual([0, 0]);
    expect([Math.max(...xs), Math.max(...ys)].map(Math.round)).toEqual([part.width, part.height]);
  });

  test('glue over the whole flap leaves nothing to line', () => {
    for (const glue of [2, 100]) {
      expect(refused(liner({ ...wish(FLAPS.square!), glue: inches(glue) }))).toEqual(['glue']);
    }
  });

  test('says all that is wrong, beside its fields', () => {
    expect(refused(liner({ ...wish(FLAPS.square!), glue: inches(-1), side: inches(4) }))).toEqual([
      'glue',
      'side',
    ]);
    expect(refused(liner({ ...wish(FLAPS.square!), side: inches(-1), clear: inches(-1) }))).toEqual([
      'clear',
      'side',
    ]);
  });

  test('a flap with a dent, or the wrong way round, is no flap', () => {
    const dented = corners([0, 0], [3.5, -0.5], [3.5, -2], [7, 0]);
    expect(() => liner(wish(dented))).toThrow('invalid flap');
    expect(() => liner(wish([...FLAPS.pointed!].reverse()))).toThrow('invalid flap');
  });
});
