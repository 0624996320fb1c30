/** Parts joined edge to edge become patterns that the judge can replay, for random assemblies on pieces with room to spare. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import { type Assembly, copiesIn, join, type Lay } from '#core/cutting/one-piece/unlimited.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { patternOf } from '#core/cutting/search/assembled.ts';
import { prepare } from '#core/cutting/search/job.ts';
import { unfold } from '#core/cutting/search/unfold.ts';

const sizes = [
  [3, 5],
  [4, 2],
  [7, 1],
] as const;

/** Each part as it is and turned. */
const lays: Lay[] = sizes.flatMap(([width, height], part) => [
  { part, turned: false, width, height, value: 1 },
  { part, turned: true, width: height, height: width, value: 1 },
]);

const alone = (lay: number): Assembly => ({ width: lays[lay]!.width, height: lays[lay]!.height, lay });

/** Lays joined one after another, and those joined in turn, so that both sides of a cut may be trimmed. */
const assemblies = fc
  .array(fc.record({ lay: fc.nat({ max: 5 }), along: fc.constantFrom('x', 'y'), first: fc.boolean() }), {
    minLength: 1,
    maxLength: 7,
  })
  .map((steps) =>
    steps
      .slice(1)
      .reduce<Assembly>(
        (whole, { lay, along, first }) =>
          first ? join(along, alone(lay), whole) : join(along, whole, alone(lay)),
        alone(steps[0]!.lay),
      ),
  );

it('cuts an assembly from the corner of a piece: areas, worth and parts as the judge counts them', () => {
  const rooms = fc.record({
    right: fc.nat({ max: 6 }),
    above: fc.nat({ max: 6 }),
    keepAtLeast: fc.nat({ max: 3 }),
  });
  fc.assert(
    fc.property(assemblies, rooms, (assembly, { right, above, keepAtLeast }) => {
      const parts = copiesIn(assembly, lays);
      const order: Order = {
        parts: sizes.map(([width, height], part) => ({
          ...{ id: `${part}`, width, height },
          copies: parts.filter((one) => one === part).length,
        })),
        keepAtLeast,
      };
      const width = assembly.width + right;
      const height = assembly.height + above;
      const pieces: Piece[] = [{ id: 'offcut', width, height, kind: 'offcut' }];
      const job = prepare(order, pieces);
      expect(job.grid).toBe(1);
      const pattern = patternOf(job, job.stocks[0]!, assembly, lays);
      const area = parts.reduce((sum, part) => sum + job.area[part]!, 0);
      expect([pattern.area, [...pattern.parts].sort()]).toEqual([area, [...parts].sort()]);
      const whole = Math.min(width, height) < keepAtLeast ? 0 : width * height * Math.min(width, height);
      const used = unfold(job, [{ stock: 0, pattern, lost: 0 }]);
      const plan = {
        ...{
          placed: parts.length,
          unplaced: [],
          newSheets: 0,
          newSheetArea: 0,
          offcutAreaUsed: width * height,
        },
        ...{ worthLost: whole - pattern.left, bounds: { unplaced: 0, newSheetArea: 0 } },
        ...{ proved: false, timeMs: 0, limits: {}, used },
      };
      expect(checkPlan(order, pieces, plan)).toEqual([]);
    }),
    { seed: 5, numRuns: 200 },
  );
});

it.each([
  [30, 10, 'x'],
  [10, 30, 'y'],
])(
  'trims %i × %i so that the larger leftover stays whole, with a first cut along %s',
  (width, height, along) => {
    const pieces: Piece[] = [{ id: 'offcut', width, height, kind: 'offcut' }];
    const job = prepare({ parts: [{ id: '0', width: 3, height: 5, copies: 1 }] }, pieces);
    const pattern = patternOf(job, job.stocks[0]!, alone(0), lays);
    const cuts = unfold(job, [{ stock: 0, pattern, lost: 0 }])[0]!.cuts;
    expect(cuts).toMatchObject({ along });
  },
);
