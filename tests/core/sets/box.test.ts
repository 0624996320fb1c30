/** Checks that a box's strips cover what they should and nothing of its hinge; and tags, with holes and corners. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Point, point } from '#core/geometry/point.ts';
import { area } from '#core/geometry/polygon.ts';
import { type BoxWish, boxStrips } from '#core/sets/box.ts';
import { type TagWish, tag } from '#core/sets/tag.ts';
import { inches, length } from '#shared/length.ts';
import { foldedRound, rect, refused, sound } from '#tests/support/checked.ts';

/** From a point to the nearest point of a line from one end to the other (plane geometry). */
function toSegment(at: Point, from: Point, to: Point): number {
  const [alongX, alongY] = [to.x - from.x, to.y - from.y];
  const share = ((at.x - from.x) * alongX + (at.y - from.y) * alongY) / (alongX ** 2 + alongY ** 2);
  const kept = Math.min(1, Math.max(0, share));
  return Math.hypot(at.x - from.x - kept * alongX, at.y - from.y - kept * alongY);
}

const box: BoxWish = {
  box: { ...rect(6, 2), depth: inches(4) },
  lid: inches(0.75),
  free: inches(0.25),
  margin: inches(1 / 16),
  copies: 1,
};

describe('strips on a box', () => {
  test('go round side, front and side, and stop short of the hinge', () => {
    const [panel, lid, body] = sound(boxStrips(box));
    expect(panel).toMatchObject(rect(6 - 1 / 8, 4 - 0.25 - 1 / 16));
    expect(lid).toMatchObject(rect(3.75 + 6 + 3.75, 0.75 - 1 / 8));
    expect(body).toMatchObject(rect(13.5, 1.25 - 1 / 8));
  });

  test('are scored where the front’s corners are', () => {
    const [, lid] = sound(boxStrips(box));
    expect(lid!.scores.map((score) => score.at)).toEqual([3.75, 9.75].map(inches));
    expect(lid!.width - lid!.scores[1]!.at).toBe(lid!.scores[0]!.at);
  });

  test('folded round the box by right angles, they meet its corners and end where they began, beside the hinge', () => {
    const outside = { ...rect(7.5, 3), depth: inches(4.25) };
    const [, lid, body] = sound(boxStrips({ ...box, box: outside }));
    // From above, the hinge along y = 0: the box's own corners are the check.
    for (const strip of [lid!, body!]) {
      expect(foldedRound(strip, { x: 0, y: inches(0.25) }).slice(1)).toEqual([
        { x: 0, y: inches(4.25) },
        { x: inches(7.5), y: inches(4.25) },
        { x: inches(7.5), y: inches(0.25) },
      ]);
    }
  });

  test('say all that is wrong, beside its fields', () => {
    expect(refused(boxStrips({ ...box, lid: inches(2) }))).toEqual(['lid', 'margin']);
    expect(refused(boxStrips({ ...box, free: inches(4) }))).toEqual(['free']);
    expect(refused(boxStrips({ ...box, margin: inches(-1) }))).toEqual(['margin']);
    expect(refused(boxStrips({ ...box, margin: inches(0.5) }))).toEqual(['margin']);
    expect(refused(boxStrips({ ...box, box: { ...rect(0, 2), depth: inches(0) } }))).toContain('depth');
  });
});

describe('a tag', () => {
  const wish: TagWish = { size: rect(2, 4), corner: inches(0.5), hole: inches(0.25), copies: 6 };

  test('loses a triangle at both upper corners', () => {
    const { outline, width, height } = sound(tag(wish));
    expect(width * height - area(outline!)).toBe(inches(0.5) * inches(0.5));
  });

  test('has its hole centred, one diameter of paper above it', () => {
    const { hole } = sound(tag(wish));
    expect(hole).toEqual({ middle: { x: inches(1), y: inches(0.375) }, diameter: inches(0.25) });
    expect(sound(tag({ ...wish, hole: inches(0), corner: inches(0) }))).not.toHaveProperty('hole');
  });

  test('keeps ⅛ in of paper all round its hole, towards the cut corners too', () => {
    const tags = fc.record({
      width: fc.integer({ min: inches(0.5), max: inches(4) }),
      height: fc.integer({ min: inches(0.5), max: inches(6) }),
      corner: fc.double({ min: 0, max: 0.5, noNaN: true }),
      hole: fc.integer({ min: inches(1 / 32), max: inches(1) }),
    });
    let moved = 0;
    fc.assert(
      fc.property(tags, ({ width, height, corner, hole }) => {
        const cut = length(Math.floor(Math.min(corner * width, height)));
        const made = tag({
          ...wish,
          size: { width: length(width), height: length(height) },
          corner: cut,
          hole: length(hole),
        });
        if (!made.ok) return;
        const { middle } = made.value.hole!;
        const outline = made.value.outline ?? [
          point(0, 0),
          point(width, 0),
          point(width, height),
          point(0, height),
        ];
        for (const [index, from] of outline.entries()) {
          const paper = toSegment(middle, from, outline[(index + 1) % outline.length]!) - hole / 2;
          expect(paper).toBeGreaterThanOrEqual(inches(1 / 8) - 1);
        }
        if (middle.y > 1.5 * Math.max(hole, inches(1 / 8))) moved++;
      }),
      { seed: 20261130, numRuns: 2_000 },
    );
    expect(moved).toBeGreaterThan(20);
  });

  test('has no room for a hole in a small tag with large corners, and says so beside it', () => {
    const small = { ...wish, size: rect(0.5, 0.42), corner: inches(0.25), hole: inches(1 / 8) };
    expect(sound(tag({ ...small, corner: inches(0) })).hole).toBeDefined();
    const made = tag(small);
    expect(made.ok ? [] : made.problems).toMatchObject([
      { field: 'hole', message: /towards the cut corners/ },
    ]);
  });

  test('a point is two corners that meet', () => {
    expect(sound(tag({ ...wish, corner: inches(1) })).outline).toHaveLength(5);
  });

  test('says all that is wrong, beside its fields', () => {
    expect(refused(tag({ ...wish, corner: inches(1.25), hole: inches(1.9) }))).toEqual(['corner', 'hole']);
    expect(refused(tag({ ...wish, corner: inches(-1), hole: inches(-1) }))).toEqual(['corner', 'hole']);
  });
});
