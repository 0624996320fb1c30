/** Pieces cut alike but for mirroring, turning or the order of strips get the very same cuts, and stay sound. */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import { type CutTree, isCut, type PlacedPart, type Rectangle, type UsedPiece } from '#core/cutting/cuts.ts';
import type { Order, Part, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { alike, patternsOf } from '#core/cutting/trimmer/alike.ts';
import { worth } from '#core/cutting/worth.ts';
import { randomOrder } from '#tests/hunt/random-order.ts';

type Written =
  | string
  | { readonly along: 'x' | 'y'; readonly at: number; readonly of: readonly [Written, Written] };

const x = (at: number, near: Written, far: Written): Written => ({ along: 'x', at, of: [near, far] });
const y = (at: number, near: Written, far: Written): Written => ({ along: 'y', at, of: [near, far] });
const REST = '';

/** A piece cut by hand: cuts by their place on it, parts by name with `*` where turned. */
function cutByHand({ id: piece, width, height }: Piece, written: Written): UsedPiece {
  const rectangles: PlacedPart[] = [];
  const leftovers: Rectangle[] = [];
  const read = (one: Written, block: Rectangle): CutTree => {
    if (one === REST) {
      leftovers.push(block);
      return { leftover: true };
    }
    if (typeof one === 'string') {
      const leaf = { part: one.replace('*', ''), turned: one.endsWith('*') };
      rectangles.push({ ...leaf, ...block });
      return leaf;
    }
    const { along, at, of } = one;
    const side = along === 'x' ? 'width' : 'height';
    const near = { ...block, [side]: at - block[along] };
    const far = { ...block, [along]: at, [side]: block[along] + block[side] - at };
    return { at, along, parts: [read(of[0], near), read(of[1], far)] };
  };
  return { piece, rectangles, leftovers, cuts: read(written, { x: 0, y: 0, width, height }) };
}

const part = (id: string, width: number, height: number, more: Partial<Part> = {}): Part => ({
  ...{ id, width, height, copies: 9 },
  ...more,
});
const sheet = (width: number, height: number, more: Partial<Piece> = {}): Piece => ({
  ...{ id: 'sheet', width, height, kind: 'sheet', copies: 9 },
  ...more,
});

/** How many ways to cut remain of those written by hand. */
function waysLeft(order: Order, pieces: readonly Piece[], ...used: readonly UsedPiece[]): number {
  return patternsOf(pieces, alike(order, pieces, used)).length;
}

describe('alike', () => {
  const base = part('base', 4, 3);
  const tag = part('tag', 2, 3);
  const order = { parts: [base, tag] };

  it('takes mirrored pieces for one pattern, and the order of strips and of what is in them', () => {
    const page = sheet(7, 8);
    const ways = [
      y(3, x(4, 'base', x(6, 'tag', REST)), REST),
      y(3, x(1, REST, x(3, 'tag', 'base')), REST),
      y(5, REST, x(2, 'tag', x(6, 'base', REST))),
      y(2, REST, y(5, x(1, REST, x(5, 'base', 'tag')), REST)),
    ];
    const used = ways.map((way) => cutByHand(page, way));
    expect(patternsOf([page], used)).toEqual([[0], [1], [2], [3]]);
    expect(waysLeft(order, [page], ...used)).toBe(1);
  });

  it('puts what is wanted first, the widest before the others, and what is left over last', () => {
    const page = sheet(7, 8);
    const [used] = alike(order, [page], [cutByHand(page, y(5, REST, x(1, REST, x(3, 'tag', 'base'))))]);
    expect(used).toEqual(cutByHand(page, y(3, x(4, 'base', x(6, 'tag', REST)), REST)));
  });

  it('joins rests that come to lie side by side, so that one larger one is kept', () => {
    const page = sheet(4, 8);
    const [used] = alike(order, [page], [cutByHand(page, y(2, REST, y(5, 'base', REST)))]);
    expect(used!.leftovers).toEqual([{ x: 0, y: 3, width: 4, height: 5 }]);
    const wide = sheet(8, 9);
    const side = x(4, y(3, 'base', REST), y(6, REST, 'base'));
    expect(alike(order, [wide], [cutByHand(wide, side)])[0]!.leftovers).toEqual([
      { x: 0, y: 3, width: 8, height: 6 },
    ]);
  });

  it('takes rows first and columns first for one pattern, where both are cut alike', () => {
    const page = sheet(9, 6);
    const rows = y(3, x(4, 'base', x(8, 'base', REST)), x(4, 'base', x(8, 'base', REST)));
    const columns = x(8, x(4, y(3, 'base', 'base'), y(3, 'base', 'base')), REST);
    expect(waysLeft(order, [page], cutByHand(page, rows), cutByHand(page, columns))).toBe(1);
  });

  describe('on a square sheet', () => {
    const across = y(3, x(4, 'base', REST), REST);
    const down = x(3, y(4, 'base*', REST), REST);
    const ways = (order: Order, page: Piece): number =>
      waysLeft(order, [page], cutByHand(page, across), cutByHand(page, down));

    it('takes a pattern and the one that lies across for the same', () => {
      expect(ways(order, sheet(9, 9))).toBe(1);
      expect(ways(order, sheet(9, 9, { upright: true }))).toBe(1);
      expect(ways({ parts: [part('base', 4, 3, { upright: true })] }, sheet(9, 9))).toBe(1);
    });

    it('leaves parts as they lie where the print runs up both', () => {
      const upright = {
        parts: [part('base', 4, 3, { upright: true }), part('low', 3, 4, { upright: true })],
      };
      const page = sheet(9, 9, { upright: true });
      const low = x(3, y(4, 'low', REST), REST);
      expect(waysLeft(upright, [page], cutByHand(page, across), cutByHand(page, low))).toBe(2);
    });

    it('agrees with a piece on which nothing may be turned', () => {
      const upright = { parts: [part('base', 4, 3, { upright: true }), tag] };
      for (const written of [across, x(4, y(3, 'base', REST), REST)]) {
        const pieces = [sheet(9, 9, { id: 'print', upright: true }), sheet(9, 9, { id: 'plain' })];
        const turned = written === across ? down : y(4, x(3, 'base*', REST), REST);
        const used = [cutByHand(pieces[0]!, written), cutByHand(pieces[1]!, turned)];
        expect(waysLeft(upright, pieces, ...used)).toBe(1);
      }
    });
  });

  it('leaves pinned parts where they are, and arranges the rest', () => {
    const page = sheet(9, 9);
    const pinned = {
      parts: [
        part('spot', 2, 9, { pin: { x: 3, y: 0 } }),
        part('edge', 9, 2, { pin: { edge: 'bottom' } }),
        base,
      ],
    };
    const held = x(3, REST, x(5, 'spot', y(6, REST, 'base')));
    const [first] = alike(pinned, [page], [cutByHand(page, held)]);
    expect(first!.rectangles.map(({ part: id, x: left, y: top }) => [id, left, top])).toEqual([
      ['spot', 3, 0],
      ['base', 5, 0],
    ]);
    const [second] = alike(pinned, [page], [cutByHand(page, y(4, REST, y(7, x(5, REST, 'base'), 'edge')))]);
    expect(second!.rectangles.map(({ part: id, x: left, y: top }) => [id, left, top])).toEqual([
      ['base', 0, 0],
      ['edge', 0, 7],
    ]);
  });

  it('makes no cut that is longer than the trimmer’s', () => {
    const page = sheet(8, 6);
    const columns = x(4, y(3, 'base', 'base'), y(3, 'base', 'base'));
    const [used] = alike({ ...order, longestCut: 6 }, [page], [cutByHand(page, columns)]);
    expect(used!.cuts).toMatchObject({ along: 'x' });
  });
});

describe('properties', () => {
  const copies = (used: readonly UsedPiece[], piece: string): string[] =>
    used
      .filter((one) => one.piece === piece)
      .map((one) =>
        one.rectangles
          .map((placed) => placed.part)
          .sort()
          .join(),
      )
      .sort();
  const kept = (used: readonly UsedPiece[]): number =>
    used.flatMap((one) => one.leftovers).reduce((sum, one) => sum + worth(one), 0);

  const planned = Array.from({ length: 40 }, (_, index) => {
    const { order, pieces } = randomOrder(index + 1);
    return { seed: index + 1, order, pieces, plan: planCuts(order, pieces, { work: 10, seed: index + 1 }) };
  });

  it('plans of random orders stay sound, and lose nothing when they are arranged again', () => {
    for (const { seed, order, pieces, plan } of planned) {
      expect(checkPlan(order, pieces, plan), `seed ${seed}`).toEqual([]);
      const again = alike(order, pieces, plan.used);
      for (const { piece } of plan.used) expect(copies(again, piece)).toEqual(copies(plan.used, piece));
      expect(kept(again), `seed ${seed}`).toBeGreaterThanOrEqual(kept(plan.used) * (1 - 1e-9));
    }
  });

  it('pieces flipped are cut like those that are not', () => {
    for (const { seed, order, pieces, plan } of planned) {
      if (order.parts.some(({ pin }) => pin)) continue;
      const flipped = plan.used.map((one) => flip(one, pieces.find(({ id }) => id === one.piece)!));
      const patterns = (used: readonly UsedPiece[]): number =>
        patternsOf(pieces, alike(order, pieces, used)).length;
      expect(patterns([...plan.used, ...flipped]), `seed ${seed}`).toBe(patterns(plan.used));
    }
  });

  /** By half a turn. */
  function flip(one: UsedPiece, { width, height }: Piece): UsedPiece {
    const turn = (tree: CutTree): CutTree =>
      isCut(tree)
        ? {
            at: (tree.along === 'x' ? width : height) - tree.at,
            along: tree.along,
            parts: [turn(tree.parts[1]), turn(tree.parts[0])],
          }
        : tree;
    const around = <T extends Rectangle>(block: T): T => ({
      ...block,
      x: width - block.x - block.width,
      y: height - block.y - block.height,
    });
    return {
      piece: one.piece,
      rectangles: one.rectangles.map(around),
      leftovers: one.leftovers.map(around),
      cuts: turn(one.cuts),
    };
  }
});
