/** Patterns are priced and made as they say they are, and each round of them makes the cheapest cover no dearer. */
import { expect, it } from 'vitest';
import { Columns } from '#core/cutting/fewer/columns.ts';
import { prepare } from '#core/cutting/search/job.ts';
import { AS_IS, TURNED, walk } from '#core/cutting/search/nodes.ts';
import { chance } from '#core/cutting/search/random.ts';
import { backwardsOrders } from '#tests/bench/orders.ts';

it('adds patterns that hold what they are priced by, until the cover comes down to the sheets cut up', () => {
  const { order, pieces, sheets } = backwardsOrders(5, 0.02, 12)[4]!;
  const job = prepare(order, pieces);
  const columns = new Columns(job, 0, chance(1), { work: () => {}, shouldStop: () => false });
  const cover = columns.coverFor(job.copies);
  const costs = [cover.cost];
  let joined = 0;
  const round = (add: () => void): void => {
    add();
    columns.update(cover);
    costs.push(cover.cost);
  };
  round(() => columns.addPlan(job.copies, 0));
  for (let turn = 0; turn < 4; turn += 1) round(() => columns.addStrips(job.copies, cover.price, 10));
  for (let turn = 0; turn < 8; turn += 1) {
    round(() => {
      joined += columns.addJoined(job.copies, cover.price, 32);
    });
    round(() => columns.addStrips(job.copies, cover.price, 10));
  }
  expect(joined).toBeGreaterThan(0);
  expect(costs).toEqual(costs.toSorted((one, other) => other - one));
  expect(costs[0]).toBeGreaterThan(order.parts.length - 0.01);
  expect(costs.at(-1)).toBeLessThan(sheets + 0.05);
  const stock = job.stocks[0]!;
  for (let column = 0; column < columns.count; column += 1) {
    const { nodes, parts, area } = columns.pattern(column);
    const cut = nodes.filter((_, at) => at % 2 === 1 && [AS_IS, TURNED].includes(nodes[at - 1]!));
    expect(cut.sort()).toEqual(parts.toSorted());
    expect(parts.reduce((sum, part) => sum + job.area[part]!, 0)).toBe(area);
    walk(nodes, 0, stock.width, stock.height, (at, _, width, height) => {
      const sides = [job.width[nodes[at + 1]!], job.height[nodes[at + 1]!]];
      if (nodes[at] === AS_IS) expect([width, height]).toEqual(sides);
      if (nodes[at] === TURNED) expect([height, width]).toEqual(sides);
    });
  }
  for (const { label } of cover.shares())
    expect(columns.pattern(label).parts.reduce((sum, part) => sum + cover.price[part]!, 0)).toBeCloseTo(1, 6);
});
