/**
 * `npm run --silent plan -- order.json` (or `-` for standard input): prints the plan of an order as JSON, with lengths in
 * the unit that came in. Ends with 0 and a plan, 1 and what is wrong with the order, or 2 where there is none to read.
 */
import { readFileSync } from 'node:fs';
import { checkPlan } from '#core/cutting/check.ts';
import { inUnitsGiven } from '#core/cutting/given.ts';
import { planCuts } from '#core/cutting/plan.ts';
import type { Problem } from '#shared/checked.ts';
import { readOrder } from '#shared/schemas/order.ts';

process.exitCode = main(process.argv.slice(2));

function main(names: string[]): number {
  const [name] = names;
  if (name === undefined || names.length > 1)
    return complain(2, 'Usage: npm run --silent plan -- order.json');
  const json = readJson(name === '-' ? 0 : name);
  if (!json) return 2;
  const read = readOrder(json.value);
  if (!read.ok) return complain(1, ...read.problems.map(inOneLine));
  const { order, pieces, options, rounded } = read.value;
  for (const text of rounded) process.stderr.write(`note: “${text}” is rounded to the nearest 25 nm\n`);
  const limited = { ...order, ...options };
  const plan = planCuts(limited, pieces, { ...options, now: () => performance.now() });
  const faults = checkPlan(limited, pieces, plan);
  if (faults.length > 0) throw new Error(`invalid plan: ${faults.map(inOneLine).join('; ')}`);
  process.stdout.write(`${JSON.stringify(inUnitsGiven(plan, read.value.unit))}\n`);
  return 0;
}

function readJson(name: string | 0): { value: unknown } | undefined {
  try {
    return { value: JSON.parse(readFileSync(name, 'utf8')) as unknown };
  } catch (problem) {
    complain(
      2,
      problem instanceof SyntaxError
        ? `This isn’t JSON: ${problem.message}`
        : `${(problem as Error).message}`,
    );
    return undefined;
  }
}

function complain(code: number, ...lines: string[]): number {
  process.stderr.write(`${lines.join('\n')}\n`);
  return code;
}

function inOneLine({ field, message }: Problem): string {
  return field ? `${field}: ${message}` : message;
}
