/** Plans repeat a pattern where the parts allow it, and give up no sheet and next to no worth for that. */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Order, Part, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { Board } from '#core/cutting/search/board.ts';
import { prepare } from '#core/cutting/search/job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, REST } from '#core/cutting/search/nodes.ts';
import { chance } from '#core/cutting/search/random.ts';
import { patternsOf } from '#core/cutting/trimmer/alike.ts';
import { exchangeAlike, Likeness, repeatOne } from '#core/cutting/trimmer/fewer.ts';

/** In sixteenths of an inch. */
const part = (id: string, width: number, height: number, copies: number): Part => ({
  ...{ id, width: width * 16, height: height * 16, copies },
});
const piece = (id: string, width: number, height: number, copies: number): Piece => ({
  ...{ id, width: width * 16, height: height * 16, copies },
  kind: id.startsWith('offcut') ? 'offcut' : 'sheet',
});

function planned(order: Order, pieces: readonly Piece[], work = 1500): CutPlan {
  const plan = planCuts(order, pieces, { work, seed: 1 });
  expect(checkPlan(order, pieces, plan)).toEqual([]);
  return plan;
}

const timesCut = (pieces: readonly Piece[], { used }: CutPlan): number[] =>
  patternsOf(pieces, used)
    .map((pattern) => pattern.length)
    .sort((one, other) => other - one);

describe('planCuts', () => {
  it('cuts eight card bases from a pad in one pattern', () => {
    const pad = [piece('pad', 8.5, 11, 20)];
    expect(timesCut(pad, planned({ parts: [part('base', 5.5, 8.5, 8)] }, pad))).toEqual([4]);
    const large = [piece('pad', 12, 12, 20)];
    expect(timesCut(large, planned({ parts: [part('base', 5.5, 8.5, 8)] }, large))).toEqual([4]);
  });

  it('cuts eight bases and their liners in two patterns at most', () => {
    const pad = [piece('pad', 12, 12, 20)];
    const plan = planned(
      { parts: [part('base', 5.5, 4.25, 8), part('liner', 5.25, 4, 8)], keepAtLeast: 16 },
      pad,
    );
    expect(plan.newSheets).toBe(4);
    expect(timesCut(pad, plan).length).toBeLessThanOrEqual(2);
  });

  it('cuts a batch of 37 pieces of seven kinds in seven patterns at most', () => {
    const order = {
      keepAtLeast: 24,
      parts: [
        part('envelope', 7, 7, 4),
        part('liner', 6.25, 6.25, 4),
        part('base', 6.25, 6.5, 4),
        part('front', 6, 3, 8),
        part('band', 2, 11, 4),
        part('tag', 3, 2, 9),
        part('label', 2.5, 4, 4),
      ],
    };
    const shelf = [
      piece('pad', 12, 12, 30),
      piece('offcut 1', 6, 12, 2),
      piece('offcut 2', 6, 6, 3),
      piece('offcut 3', 4, 7.5, 2),
    ];
    const plan = planned(order, shelf);
    expect(plan.placed).toBe(37);
    expect(timesCut(shelf, plan).length).toBeLessThanOrEqual(7);
  });
});

describe('repeatOne', () => {
  const parts = [part('base', 5.5, 4.25, 9), part('liner', 5.25, 4, 7), part('tag', 2, 3, 11)];
  const job = prepare({ parts, keepAtLeast: 16 }, [piece('pad', 12, 12, 20), piece('offcut', 6, 12, 4)]);

  /** What is still to be placed, and how often each pattern is on the board. */
  const state = (board: Board): string =>
    JSON.stringify([
      [...board.pool],
      [...board.shelf],
      board.bins.map(({ pattern }) => [...pattern.nodes].join()).sort(),
    ]);

  it('takes more copies than there are of nothing, and is undone', () => {
    const random = chance(7);
    const board = new Board(job, random, 'worth');
    const values = () => job.area;
    for (let stock = 0; board.unplaced > 0; stock = 1 - stock) board.put(board.fill(stock, job.area, 0.3)!);
    const before = state(board);
    for (let turn = 0; turn < 200; turn += 1) {
      const undo = repeatOne(board, random, values);
      expect([...board.pool, ...board.shelf].every((copies) => copies >= 0)).toBe(true);
      undo();
      expect(state(board)).toBe(before);
    }
  });

  describe('parts of one size', () => {
    const leaf = (part: number) => [AS_IS, part];
    /** A pad of 12 × 4 in with two parts of 5 × 4 in, and a rest. */
    const two = (one: number, other: number): Pattern => ({
      nodes: Int32Array.from([CUT_X, 80, ...leaf(one), CUT_X, 80, ...leaf(other), REST, 0]),
      ...{ parts: Int32Array.of(one, other), area: 2 * 80 * 64, left: 32 * 64 * 32 },
    });
    const boardOf = (more: Partial<Part>, pieces: readonly Piece[]): Board => {
      const kinds = ['front', 'mat'].map((id) => ({ ...part(id, 5, 4, 2), ...more }));
      const board = new Board(prepare({ parts: kinds }, pieces), chance(7), 'worth');
      const stocks = board.job.stocks.length - 1;
      for (const [stock, pattern] of [two(0, 0), two(1, 1)].entries())
        board.put({ stock: Math.min(stock, stocks), pattern, lost: 1 });
      return board;
    };
    const exchanged = (board: Board): object => {
      const likeness = new Likeness(board.job);
      const cost = (): number => likeness.of(board.bins).patterns;
      exchangeAlike(board, cost, { work: () => {}, spent: () => 0 });
      return board.bins.map(({ pattern }) => [...pattern.parts].sort());
    };
    const pad = piece('pad', 12, 4, 2);

    it('change places where pieces then are cut alike', () => {
      expect(exchanged(boardOf({}, [pad]))).toEqual([
        [0, 1],
        [0, 1],
      ]);
    });

    it('stay where one of them lies at an edge, or where no piece would be cut alike', () => {
      const apart = [
        [0, 0],
        [1, 1],
      ];
      expect(exchanged(boardOf({ pin: { edge: 'top' } }, [pad]))).toEqual(apart);
      expect(exchanged(boardOf({}, [piece('pad', 12, 4, 1), piece('offcut', 13, 4, 1)]))).toEqual(apart);
    });

    it('stay where they would not come from one design any more', () => {
      const kinds = [part('front', 5, 4, 2), part('mat', 5, 4, 2), part('base', 12, 3, 1)];
      const matching = kinds.map((one) =>
        one.id === 'mat' ? one : { ...one, match: 'set', oneDesign: true },
      );
      const pieces = ['sea', 'sand'].map((design) => ({ ...piece(design, 12, 4, 1), design }));
      const board = new Board(prepare({ parts: matching }, pieces), chance(7), 'worth');
      board.put({ stock: 0, pattern: two(0, 0), lost: 1 });
      board.put({ stock: 1, pattern: two(1, 1), lost: 1 });
      expect(exchanged(board)).toEqual([
        [0, 0],
        [1, 1],
      ]);
    });
  });

  it('counts pieces that differ in the order of their strips as one pattern, and those of other parts as another', () => {
    const pattern = (...nodes: number[]): Pattern => ({
      ...{ nodes: Int32Array.from(nodes), parts: Int32Array.of(0), area: 0, left: 0 },
    });
    const first = pattern(CUT_X, 22, CUT_Y, 17, AS_IS, 0, REST, 0, REST, 0);
    const mirrored = pattern(CUT_X, 26, REST, 0, CUT_Y, 31, REST, 0, AS_IS, 0);
    const other = pattern(CUT_X, 21, CUT_Y, 16, AS_IS, 1, REST, 0, REST, 0);
    const count = (...patterns: Pattern[]): object =>
      new Likeness(job).of(patterns.map((one) => ({ stock: 0, pattern: one, lost: 0 })));
    expect(count(first, mirrored)).toEqual({ patterns: 1, settings: 2 });
    expect(count(first, mirrored, other)).toEqual({ patterns: 2, settings: 4 });
  });
});
