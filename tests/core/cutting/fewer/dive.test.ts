/**
 * Diving finds orders again that whole sheets were cut into, leaves alone what it must, and never lays anything unsound;
 * among the known instances it places some that strips and moves miss.
 */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import { diver } from '#core/cutting/fewer/dive.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { Board } from '#core/cutting/search/board.ts';
import { prepare } from '#core/cutting/search/job.ts';
import { REST } from '#core/cutting/search/nodes.ts';
import { chance } from '#core/cutting/search/random.ts';
import { unfold } from '#core/cutting/search/unfold.ts';
import { backwardsOrders, type Case, identicalSheets } from '#tests/bench/orders.ts';

const free = { work: () => {}, shouldStop: () => false };

/** A board with so many sheets, the first piece, filled as well as areas lead to, and offcuts filled before. */
function boardWith(order: Order, pieces: readonly Piece[], sheets: number): Board {
  const job = prepare(order, pieces);
  const board = new Board(job, chance(1), 'worth');
  const put = (stock: number): void => {
    const bin = board.fill(stock, job.area, 0);
    if (bin) board.put(bin);
  };
  job.stocks.forEach((stock, index) => {
    if (!stock.sheet) put(index);
  });
  for (let sheet = 0; sheet < sheets; sheet += 1) put(0);
  return board;
}

const nothing = (board: Board): Int32Array => new Int32Array(board.job.copies.length);

/** The board as a plan, for the judge. */
function problemsOf(board: Board, order: Order, pieces: readonly Piece[]) {
  const { job } = board;
  const used = unfold(job, board.bins);
  const ofKind = (sheet: boolean) => board.bins.filter((bin) => job.stocks[bin.stock]!.sheet === sheet);
  return checkPlan(order, pieces, {
    placed: job.copies.reduce((sum, copies) => sum + copies, 0) - board.unplaced,
    unplaced: order.parts.flatMap(({ id }, part) =>
      board.pool[part] === 0 ? [] : [{ part: id, copies: board.pool[part]!, remedies: [] }],
    ),
    newSheets: ofKind(true).length,
    newSheetArea: board.sheetArea * job.grid ** 2,
    offcutAreaUsed: ofKind(false).reduce((sum, bin) => sum + job.stocks[bin.stock]!.area, 0) * job.grid ** 2,
    worthLost: board.lost * job.grid ** 3,
    bounds: { unplaced: 0, newSheetArea: 0 },
    proved: false,
    timeMs: 0,
    limits: {},
    used,
  });
}

const DIVES = 15;

describe('dive', () => {
  const orders = backwardsOrders(9, 0.02, 12).slice(4);
  const [small] = orders as [Case];

  it.each(orders)('reaches the sheets of $name', ({ order, pieces, sheets }) => {
    const board = boardWith(order, pieces, sheets);
    expect(board.unplaced).toBeGreaterThan(0);
    const diving = diver(board, { stock: 0, fewest: sheets, random: chance(1), budget: free })!;
    for (let turn = 0; turn < DIVES && board.unplaced > 0; turn += 1) {
      diving.dive(nothing(board));
      expect(problemsOf(board, order, pieces)).toEqual([]);
      expect(board.bins.length).toBeLessThanOrEqual(sheets);
    }
    expect(board.unplaced).toBe(0);
  });

  it('leaves other pieces as they are', () => {
    const pieces: Piece[] = [...small.pieces, { id: 'offcut', width: 100, height: 90, kind: 'offcut' }];
    const board = boardWith(small.order, pieces, small.sheets);
    const offcuts = () => board.bins.filter((bin) => bin.stock > 0);
    const before = offcuts();
    expect(before).toHaveLength(1);
    const diving = diver(board, { stock: 0, fewest: small.sheets, random: chance(1), budget: free })!;
    for (let turn = 0; turn < 3; turn += 1) {
      diving.dive(nothing(board));
      expect(offcuts()).toEqual(before);
      expect(problemsOf(board, small.order, pieces)).toEqual([]);
    }
    expect(board.unplaced).toBe(0);
  });

  it('is content with all but the copies that are to be missing', () => {
    const board = boardWith(small.order, small.pieces, small.sheets);
    const missing = nothing(board);
    missing[missing.length - 1] = 1;
    const diving = diver(board, { stock: 0, fewest: small.sheets, random: chance(1), budget: free })!;
    for (let turn = 0; turn < DIVES && `${board.pool}` !== `${missing}`; turn += 1) diving.dive(missing);
    expect(board.pool).toEqual(missing);
  });

  const refused = (change: (order: Order) => Order, fewest = small.sheets) =>
    diver(boardWith(change(small.order), small.pieces, small.sheets), {
      stock: 0,
      fewest,
      random: chance(1),
      budget: free,
    });

  it('is not for matching parts, a short trimmer, one sheet, or many parts to a sheet', () => {
    expect(refused((order) => order)).toBeDefined();
    expect(refused(({ parts }) => ({ parts: parts.map((one) => ({ ...one, match: 'set' })) }))).toBe(
      undefined,
    );
    expect(refused((order) => ({ ...order, longestCut: 191 }))).toBe(undefined);
    expect(refused((order) => order, 1)).toBe(undefined);
    const often = Math.ceil((14 * small.sheets) / small.order.parts.length) + 1;
    const many = ({ parts }: Order) => ({ parts: parts.map((one) => ({ ...one, copies: often })) });
    expect(refused(many)).toBe(undefined);
  });

  it('is not for paper that a part is pinned on', () => {
    const pinned = ({ parts: [first, ...rest] }: Order): Order => ({
      parts: [{ ...first!, pin: { edge: 'bottom' } }, ...rest],
    });
    expect(refused(pinned)).toBe(undefined);
  });

  it('passes over parts that no sheet can hold', () => {
    const long = { id: 'long', width: 230, height: 12, copies: 1 };
    const order = { parts: [...small.order.parts, long] };
    const pieces: Piece[] = [...small.pieces, { id: 'strip', width: 240, height: 12, kind: 'offcut' }];
    const board = boardWith(order, pieces, small.sheets);
    board.remove(board.bins.findIndex((bin) => bin.stock > 0));
    const empty = { nodes: Int32Array.of(REST, 0), parts: new Int32Array(0), area: 0, left: 0 };
    for (let more = 0; more < 2; more += 1) board.put({ stock: 0, pattern: empty, lost: 0 });
    const diving = diver(board, { stock: 0, fewest: small.sheets, random: chance(1), budget: free })!;
    for (let turn = 0; turn < DIVES && board.unplaced > 1; turn += 1) diving.dive(nothing(board));
    expect([board.unplaced, board.pool.at(-1)]).toEqual([1, 1]);
  });

  it.each([0, 1, 10, 50, 150])('ends soon when told to stop after being asked %i times', (often) => {
    const { order, pieces, sheets } = orders[1]!;
    const board = boardWith(order, pieces, sheets);
    let [asked, after] = [0, 0];
    const shouldStop = (): boolean => asked++ >= often;
    const work = (times: number): void => {
      if (asked > often) after += times;
    };
    const diving = diver(board, {
      stock: 0,
      fewest: sheets,
      random: chance(1),
      budget: { work, shouldStop },
    })!;
    diving.dive(nothing(board));
    expect(asked).toBeGreaterThan(often);
    expect(asked - often).toBeLessThan(20);
    expect(after).toBeLessThan(20);
    expect(problemsOf(board, order, pieces)).toEqual([]);
  });
});

describe('known instances', () => {
  it.each([
    ['Class_03_40_1', false],
    ['Class_05_100_3', false],
    ['Class_03_80_7', true],
    ['Class_03_100_5', true],
  ])(
    'opens the fewest sheets for %s, which strips and moves alone miss, turns allowed: %s',
    (name, turns) => {
      const { order, pieces, sheets } = identicalSheets(turns).find((one) => one.name === name)!;
      const plan = planCuts(order, pieces, { work: 8000 });
      expect(checkPlan(order, pieces, plan)).toEqual([]);
      expect(plan).toMatchObject({ unplaced: [], newSheets: sheets, proved: true });
    },
  );
});
