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

const USAGE = 'Usage: npm run --silent plan -- order.json';

const HELP = `${USAGE}      (or - to read the order from standard input)

Prints the plan of an order as JSON. The order:

  {"pieces": [{"id": "pad", "width": "12 in", "height": "12 in", "kind": "sheet", "copies": 8}],
   "parts": [{"id": "base", "width": "5 1/2 in", "height": "8 3/8 in", "copies": 8}]}

Lengths are all whole numbers in one unit, or all text with a unit; so are those of the plan.
  pieces   kind "sheet" or "offcut"; may have "copies", "design", "upright" (its height runs along the print)
  parts    may have "upright" (not turned on an upright piece), "designs", "match", "oneDesign"
  options  may have "timeMs", "seed", "longestCut", "keepAtLeast"

In the plan, "used" has the cuts of each piece, "patterns" what is cut alike, and "steps" what is done at the trimmer:
"set" is the measure from fence to knife, and "keeps" what lies between them.
Ends with 0 and a plan, 1 and what is wrong with the order, or 2 where there is none to read.
`;

process.exitCode = main(process.argv.slice(2));

function main(names: string[]): number {
  const [name] = names;
  if (names.includes('--help')) {
    process.stdout.write(HELP);
    return 0;
  }
  if (name === undefined || names.length > 1) return complain(2, USAGE);
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
