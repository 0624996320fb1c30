/** Patterns known from before are put together again from what is there, and no piece is cut for nothing. */
import { describe, expect, it } from 'vitest';
import { prepare } from '#core/cutting/search/job.ts';
import { AS_IS, CUT_X, type Pattern, REST } from '#core/cutting/search/nodes.ts';
import { chance } from '#core/cutting/search/random.ts';
import { Recall } from '#core/cutting/search/recall.ts';

describe('Recall', () => {
  const [front, strip] = [0, 1];
  const job = prepare(
    {
      parts: [
        { id: 'front', width: 6, height: 12, copies: 4 },
        { id: 'strip', width: 1, height: 12, copies: 1 },
      ],
    },
    [{ id: 'offcut', width: 13, height: 12, kind: 'offcut', copies: 5 }],
  );
  const two = [CUT_X, 6, AS_IS, front, CUT_X, 6, AS_IS, front];
  const pattern = (nodes: number[], parts: number[], area: number): Pattern => ({
    ...{ nodes: Int32Array.from(nodes), parts: Int32Array.from(parts), area, left: 0 },
  });
  const recall = new Recall(job, chance(1));
  for (const one of [
    pattern([...two, REST, 0], [front, front], 144),
    pattern([...two, AS_IS, strip], [front, front, strip], 156),
  ])
    recall.remember({ stock: 0, pattern: one, lost: 0 });
  const picked = (available: number[]) =>
    recall.pick(0, 2, Int32Array.from(available))?.map(({ parts }) => [...parts]);

  it('takes each part as often as it is there', () => {
    expect(picked([4, 1])).toEqual([
      [front, front, strip],
      [front, front],
    ]);
  });

  it('leaves a piece alone where another one takes all of its parts', () => {
    expect(picked([2, 1])).toEqual([[front, front, strip]]);
  });
});
