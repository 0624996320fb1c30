/** Checks that a box's strips cover what they should and nothing of its hinge; and tags, with holes and corners. */
import { describe, expect, test } from 'vitest';
import { area } from '#core/geometry/polygon.ts';
import { type BoxWish, boxStrips } from '#core/project/parts/box.ts';
import { type TagWish, tag } from '#core/project/parts/tag.ts';
import { inches } from '#shared/length.ts';
import { rect, refused, sound } from '#tests/support/checked.ts';

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

  test('a point is two corners that meet', () => {
    expect(sound(tag({ ...wish, corner: inches(1) })).outline).toHaveLength(5);
  });

  test('says all that is wrong, beside its fields', () => {
    expect(refused(tag({ ...wish, corner: inches(1.25), hole: inches(1.9) }))).toEqual(['corner', 'hole']);
    expect(refused(tag({ ...wish, corner: inches(-1), hole: inches(-1) }))).toEqual(['corner', 'hole']);
  });
});
