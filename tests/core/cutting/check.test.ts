/** The judge finds what is wrong: a sound plan has no problems, and one change for each rule is caught. */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutTree, PlannedCuts, UsedPiece } from '#core/cutting/cuts.ts';
import type { Order, Piece } from '#core/cutting/order.ts';

const order: Order = {
  longestCut: 12,
  keepAtLeast: 2,
  parts: [
    { id: 'front', width: 5, height: 7, copies: 2, upright: true, match: 'set' },
    { id: 'base', width: 4, height: 3, copies: 2, designs: ['rose', 'moss'], match: 'set' },
    { id: 'band', width: 10, height: 1, copies: 1, pin: { edge: 'top' } },
  ],
};

const pieces: Piece[] = [
  { id: 'pad', width: 10, height: 12, kind: 'sheet', copies: 2, design: 'rose', upright: true },
  { id: 'scrap', width: 5, height: 3, kind: 'offcut', design: 'moss' },
  { id: 'heirloom', width: 10, height: 12, kind: 'offcut', design: 'rose', keep: true },
];

const pad: UsedPiece = {
  piece: 'pad',
  rectangles: [
    { part: 'band', x: 0, y: 0, width: 10, height: 1, turned: false },
    { part: 'front', x: 0, y: 1, width: 5, height: 7, turned: false },
    { part: 'front', x: 5, y: 1, width: 5, height: 7, turned: false },
    { part: 'base', x: 0, y: 8, width: 3, height: 4, turned: true },
    { part: 'base', x: 3, y: 8, width: 4, height: 3, turned: false },
  ],
  leftovers: [{ x: 7, y: 8, width: 3, height: 4 }],
  cuts: {
    at: 1,
    along: 'y',
    parts: [
      { part: 'band', turned: false },
      {
        at: 8,
        along: 'y',
        parts: [
          {
            at: 5,
            along: 'x',
            parts: [
              { part: 'front', turned: false },
              { part: 'front', turned: false },
            ],
          },
          {
            at: 3,
            along: 'x',
            parts: [
              { part: 'base', turned: true },
              {
                at: 7,
                along: 'x',
                parts: [
                  { at: 11, along: 'y', parts: [{ part: 'base', turned: false }, { waste: true }] },
                  { leftover: true },
                ],
              },
            ],
          },
        ],
      },
    ],
  },
};

const plan: PlannedCuts = {
  placed: 5,
  unplaced: [],
  newSheets: 1,
  newSheetArea: 120,
  offcutAreaUsed: 0,
  worthLost: 1200 - 36,
  bounds: { unplaced: 0, newSheetArea: 120 },
  proved: true,
  timeMs: 1,
  limits: { longestCut: 12, keepAtLeast: 2 },
  used: [pad],
};

type Tree = { -readonly [K in keyof CutTree]: CutTree[K] } & { at: number; parts: Tree[]; along: string };

/** A deep copy of the plan, and its first piece, to be spoiled. */
function spoiled(spoil: (plan: Writable, used: Writable, cuts: Tree) => void): string[] {
  const copy = structuredClone(plan) as unknown as Writable;
  const used = (copy.used as Writable[])[0]!;
  spoil(copy, used, used.cuts as Tree);
  return checkPlan(order, pieces, copy as unknown as PlannedCuts).map((problem) => problem.message);
}

type Writable = Record<string, unknown>;

const list = (used: Writable, name: string): Writable[] => used[name] as Writable[];

describe('checkPlan', () => {
  it('has nothing to say of a sound plan', () => {
    expect(checkPlan(order, pieces, plan)).toEqual([]);
  });

  const cases: [rule: string, spoil: Parameters<typeof spoiled>[0], message: RegExp][] = [
    ['a part of the wrong size', (_, __, cuts) => (cuts.parts[1]!.parts[0]!.at = 4), /comes out as/],
    ['a cut outside its block', (_, __, cuts) => (cuts.at = 12), /doesn’t divide/],
    ['a cut at no whole number', (_, __, cuts) => (cuts.at = Number.NaN), /doesn’t divide/],
    ['an axis that is none', (_, __, cuts) => (cuts.along = 'z'), /doesn’t divide/],
    ['a cut with three blocks', (_, __, cuts) => cuts.parts.push({ waste: true } as never), /doesn’t divide/],
    ['a list that is not what is cut', (_, used) => list(used, 'rectangles').pop(), /list of rectangles/],
    [
      'a leftover that is not cut',
      (_, used) => list(used, 'leftovers').push({ x: 0, y: 0, width: 2, height: 2 }),
      /list of leftovers/,
    ],
    [
      'a block that becomes nothing',
      (_, __, cuts) => (cuts.parts[1]!.parts[1] = {} as never),
      /isn’t said what becomes/,
    ],
    [
      'a keeping size of its own',
      (one) => (one.limits = { longestCut: 12, keepAtLeast: 3 }),
      /another keeping size/,
    ],
    ['parts that overlap', (_, used) => (list(used, 'rectangles')[2]!.x = 4), /overlap/],
    ['a part over the edge', (_, used) => (list(used, 'rectangles')[2]!.x = 6), /over the edge/],
    ['areas that do not add up', (_, used) => (list(used, 'leftovers')[0]!.width = 2), /don’t add up/],
    [
      'a part across the print',
      (_, used, cuts) => {
        list(used, 'rectangles')[1]!.turned = true;
        cuts.parts[1]!.parts[0]!.parts[0] = { part: 'front', turned: true } as never;
      },
      /across the print/,
    ],
    [
      'a part off its edge',
      (_, used, cuts) => {
        const band = cuts.parts[0]!;
        cuts.at = 11;
        cuts.parts = [cuts.parts[1]!, band];
        list(used, 'rectangles')[0]!.y = 11;
      },
      /isn’t where it is pinned/,
    ],
    [
      'a part that does not exist',
      (_, __, cuts) => (cuts.parts[0] = { part: 'ghost', turned: false } as never),
      /no part “ghost”/,
    ],
    [
      'waste that is wide enough to keep',
      (_, used, cuts) => {
        cuts.parts[1]!.parts[1]!.parts[1]!.parts[1] = { waste: true } as never;
        used.leftovers = [];
      },
      /wide enough to keep/,
    ],
    [
      'a leftover that is too narrow',
      (_, used, cuts) => {
        cuts.parts[1]!.parts[1]!.parts[1]!.parts[0]!.parts[1] = { leftover: true } as never;
        list(used, 'leftovers').push({ x: 3, y: 11, width: 4, height: 1 });
      },
      /under the keeping size/,
    ],
    ['a piece that does not exist', (_, used) => (used.piece = 'ghost'), /no piece “ghost”/],
    ['a piece that is to be kept', (_, used) => (used.piece = 'heirloom'), /is to be kept/],
    [
      'more of a piece than there are',
      (copy, used) => (copy.used = [used, used, used]),
      /are used and there are 2/,
    ],
    [
      'more copies than wanted',
      (copy, used) => (copy.used = [used, used]),
      /copies of “front” are cut and 2 wanted/,
    ],
    [
      'a part neither placed nor missing',
      (copy) => (copy.unplaced = [{ part: 'front', copies: 1, remedies: [] }]),
      /2 placed and 1 not, of 2/,
    ],
    [
      'a missing part that does not exist',
      (copy) => (copy.unplaced = [{ part: 'ghost', copies: 1, remedies: [] }]),
      /no part “ghost”/,
    ],
    ['a wrong count of parts', (copy) => (copy.placed = 6), /says 6; counting gives 5/],
    ['a wrong count of sheets', (copy) => (copy.newSheets = 0), /says 0; counting gives 1/],
    ['a wrong area of sheets', (copy) => (copy.newSheetArea = 60), /says 60; counting gives 120/],
    ['a wrong area of offcuts', (copy) => (copy.offcutAreaUsed = 15), /says 15; counting gives 0/],
    ['a wrong loss of worth', (copy) => (copy.worthLost = 1200), /says 1200; counting gives 1164/],
    [
      'a bound that the plan beats',
      (copy) => (copy.bounds = { unplaced: 0, newSheetArea: 240 }),
      /beats its own bound/,
    ],
    [
      'a bound on copies that the plan beats',
      (copy) => (copy.bounds = { unplaced: 1, newSheetArea: 120 }),
      /beats its own bound/,
    ],
    ['a proof that is none', (copy) => (copy.bounds = { unplaced: 0, newSheetArea: 60 }), /called proved/],
    [
      'limits laxer than the order’s',
      (copy) => (copy.limits = { longestCut: 20, keepAtLeast: 2 }),
      /longer cuts than the order/,
    ],
    [
      'another keeping size',
      (copy) => (copy.limits = { longestCut: 12, keepAtLeast: 1 }),
      /another keeping size/,
    ],
  ];
  it.each(cases)('catches %s', (_, spoil, message) => {
    expect(spoiled(spoil).join('\n')).toMatch(message);
  });

  it('catches a cut longer than the trimmer', () => {
    const short = { ...order, longestCut: 9 };
    expect(
      checkPlan(short, pieces, { ...plan, limits: { ...plan.limits, longestCut: 9 } })[0]!.message,
    ).toMatch(/A cut of 10 is longer/);
  });

  it('catches a piece from which nothing is cut', () => {
    const idle: UsedPiece = {
      piece: 'scrap',
      rectangles: [],
      leftovers: [{ x: 0, y: 0, width: 5, height: 3 }],
      cuts: { leftover: true },
    };
    expect(checkPlan(order, pieces, { ...plan, offcutAreaUsed: 15, used: [pad, idle] })[0]!.message).toMatch(
      /Nothing is cut/,
    );
  });

  it('catches a part from a design that will not do', () => {
    const only = {
      ...order,
      parts: order.parts.map((part) => (part.id === 'base' ? { ...part, designs: ['moss'] } : part)),
    };
    expect(checkPlan(only, pieces, plan)[0]!.message).toMatch(/may not come from this design/);
  });
});

describe('checkPlan on matching', () => {
  const cut = (piece: string, part: string): UsedPiece => ({
    piece,
    rectangles: [{ part, x: 0, y: 0, width: 1, height: 1, turned: false }],
    leftovers: [],
    cuts: { part, turned: false },
  });
  const unit = (id: string, design: string): Piece => ({
    id,
    design,
    width: 1,
    height: 1,
    kind: 'offcut',
    copies: 9,
  });
  const problemsOf = (copies: [number, number], cuts: [string, string][], oneDesign = false): string[] => {
    const parts = ['a', 'b'].map((id, index) => ({
      id,
      width: 1,
      height: 1,
      copies: copies[index]!,
      match: 'set',
      oneDesign,
    }));
    const used = cuts.map(([piece, part]) => cut(piece, part));
    const unplaced = parts.map(({ id, copies: wanted }) => ({
      part: id,
      copies: wanted - cuts.filter(([, part]) => part === id).length,
      remedies: [],
    }));
    const figures = {
      placed: used.length,
      newSheets: 0,
      newSheetArea: 0,
      offcutAreaUsed: used.length,
      worthLost: used.length,
    };
    const proof = {
      bounds: { unplaced: 0, newSheetArea: 0 },
      proved: false,
      timeMs: 0,
      limits: {},
    };
    const plan = { ...figures, ...proof, used, unplaced: unplaced.filter((one) => one.copies > 0) };
    return checkPlan({ parts }, [unit('rose', 'rose'), unit('moss', 'moss')], plan).map(
      (problem) => problem.message,
    );
  };

  it('accepts sets that can be numbered', () => {
    expect(
      problemsOf(
        [2, 2],
        [
          ['rose', 'a'],
          ['moss', 'a'],
          ['moss', 'b'],
          ['rose', 'b'],
        ],
      ),
    ).toEqual([]);
    expect(
      problemsOf(
        [1, 3],
        [
          ['rose', 'a'],
          ['moss', 'b'],
          ['rose', 'b'],
          ['moss', 'b'],
        ],
      ),
    ).toEqual([]);
    expect(
      problemsOf(
        [2, 2],
        [
          ['rose', 'a'],
          ['moss', 'b'],
        ],
      ),
    ).toEqual([]);
  });

  it('refuses sets that cannot', () => {
    expect(
      problemsOf(
        [2, 2],
        [
          ['rose', 'a'],
          ['rose', 'a'],
          ['moss', 'b'],
        ],
      ).join(),
    ).toMatch(/don’t match/);
    expect(
      problemsOf(
        [1, 3],
        [
          ['rose', 'a'],
          ['moss', 'b'],
          ['moss', 'b'],
          ['moss', 'b'],
        ],
      ).join(),
    ).toMatch(/don’t match/);
  });

  it('refuses two designs where one is asked for', () => {
    expect(
      problemsOf(
        [2, 2],
        [
          ['rose', 'a'],
          ['moss', 'a'],
        ],
        true,
      ).join(),
    ).toMatch(/several designs/);
  });
});
