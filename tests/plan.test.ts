/** `npm run plan` reads and prints JSON in the unit that came in, and says what is wrong with an order. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-plan-'));
afterAll(() => rmSync(folder, { recursive: true }));

function run(order: unknown): { code: number | null; out: string; err: string } {
  const file = path.join(folder, 'order.json');
  writeFileSync(file, typeof order === 'string' ? order : JSON.stringify(order));
  return call(file);
}

function call(...names: string[]): { code: number | null; out: string; err: string } {
  const done = spawnSync(process.execPath, ['src/start.mjs', 'plan', ...names], {
    encoding: 'utf8',
    maxBuffer: 1e7,
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

const options = { timeMs: 200, seed: 3 };

describe('npm run plan', () => {
  it('plans whole numbers', () => {
    const pieces = [{ id: 'pad', width: 192, height: 192, kind: 'sheet', copies: 3 }];
    const { code, out } = run({ pieces, parts: [{ id: 'a', width: 96, height: 96, copies: 5 }], options });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      placed: 5,
      unplaced: [],
      newSheets: 2,
      newSheetArea: 73_728,
      bounds: { unplaced: 0, newSheetArea: 73_728 },
      proved: true,
    });
  });

  it('answers inches with inches', () => {
    const pieces = [{ id: 'pad', width: '12 in', height: '12 in', kind: 'sheet', upright: true }];
    const { out } = run({
      pieces,
      parts: [{ id: 'a', width: '4 7/8 in', height: '12 in', upright: true, copies: 1 }],
      options,
    });
    const plan = JSON.parse(out);
    expect(plan).toMatchObject({ unit: 'in', newSheetArea: 144 });
    expect(plan.used[0].cuts).toMatchObject({
      along: 'x',
      at: expect.stringMatching(/^(4 7\/8|7 1\/8) in$/),
    });
  });

  it('prints what is cut alike, and the steps at the trimmer in the unit that came in', () => {
    const pieces = [{ id: 'pad', width: '12 in', height: '12 in', kind: 'sheet', copies: 8 }];
    const parts = [{ id: 'base', width: '5 1/2 in', height: '8 3/8 in', copies: 8, upright: true }];
    const plan = JSON.parse(run({ pieces, parts, options }).out);
    expect(plan.patterns).toMatchObject([{ pieces: ['pad', 'pad', 'pad', 'pad'], steps: [1, 2] }]);
    expect(plan.patterns[0].rectangles).toEqual(plan.used[0].rectangles);
    const steps = plan.steps.map(({ number, keeps, patterns }: Record<string, unknown>) => [
      number,
      keeps,
      patterns,
    ]);
    expect(steps).toEqual([
      [1, 'block', [0]],
      [2, 'part', [0]],
    ]);
    // Either the height first, once a sheet, or the width first, twice a sheet.
    expect(plan.steps.map(({ set, times }: Record<string, unknown>) => `${set}: ${times}`)).toEqual(
      plan.steps[0].along === 'y' ? ['8 3/8 in: 4', '5 1/2 in: 8'] : ['5 1/2 in: 8', '8 3/8 in: 8'],
    );
  });

  it('says how it is used', () => {
    const { code, out, err } = call('--help');
    expect([code, err]).toEqual([0, '']);
    for (const words of ['npm run --silent plan -- order.json', '"pieces"', '"parts"', '"steps"'])
      expect(out).toContain(words);
    expect(call()).toMatchObject({ code: 2, out: '', err: expect.stringContaining('Usage') });
  });

  it('cuts as many strips from one sheet as may be asked for', () => {
    const pieces = [{ id: 'roll', width: 100_000_000, height: 100_000_000, kind: 'sheet' }];
    const { code, out, err } = run({
      pieces,
      parts: [{ id: 'strip', width: 3, height: 99_999_999, copies: 2000 }],
      options: { ...options, timeMs: 2000 },
    });
    expect([code, err]).toEqual([0, '']);
    expect(JSON.parse(out)).toMatchObject({ placed: 2000, proved: true });
  });

  it('ends with 1 and every problem of an order that is none', () => {
    const { code, out, err } = run({
      pieces: [],
      parts: [{ id: 'a', width: 'NaN', height: 0, copies: 10_000 }],
    });
    expect([code, out]).toEqual([1, '']);
    for (const words of ['There is no paper', 'parts[0].width', 'parts[0].height', 'parts[0].copies'])
      expect(err).toContain(words);
  });

  it('ends with 2 where there is no JSON', () => {
    expect(run('{"pieces":')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('isn’t JSON') });
  });
});
