/**
 * Reads a cutting order from JSON: parts, pieces and options, with lengths all whole numbers or all text such as
 * `4 7/8 in`. Names every problem at once; knows nothing of planning.
 */
import { z } from 'zod';
import { accept, type Checked, type Problem } from '../checked.ts';
import { readLength } from '../length.ts';

export interface ReadOrder {
  readonly order: { readonly parts: readonly ReadPart[] };
  readonly pieces: readonly ReadPiece[];
  readonly options: ReadOptions;
  /** What the lengths were given in; `in` and `mm` are read exactly, in units of 25 nm. */
  readonly unit: 'given' | 'in' | 'mm';
  /** Lengths that lay between two multiples of 25 nm and were rounded. */
  readonly rounded: readonly string[];
}

type Edge = 'top' | 'right' | 'bottom' | 'left';

interface ReadPart {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly copies: number;
  readonly upright?: boolean;
  readonly designs?: readonly string[];
  readonly match?: string;
  readonly oneDesign?: boolean;
  readonly pin?: { readonly edge: Edge } | { readonly x: number; readonly y: number };
}

interface ReadPiece {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly kind: 'sheet' | 'offcut';
  readonly copies?: number;
  readonly design?: string;
  readonly upright?: boolean;
  readonly edges?: readonly Edge[];
  readonly border?: number;
  readonly keep?: boolean;
}

interface ReadOptions {
  readonly timeMs?: number;
  readonly seed?: number;
  readonly longestCut?: number;
  readonly keepAtLeast?: number;
}

/** More than a table can hold, and as much as is planned within the time limit. */
const MOST_COPIES = 2000;
const MOST_ENTRIES = 2000;
const MOST_UNITS = 100_000_000;
const LONGEST_MS = 600_000;

/** Reads `{ pieces, parts, options? }` as it came out of JSON.parse. */
export function readOrder(json: unknown): Checked<ReadOrder> {
  const rounded: string[] = [];
  const shape = orderShape(rounded).safeParse(json);
  const problems = [...(shape.error?.issues.map(asProblem) ?? []), ...problemsBetween(json)];
  if (!shape.success || problems.length > 0) return { ok: false, problems };
  const { parts, pieces, options } = shape.data;
  return accept({
    order: { parts: parts.map(present) },
    pieces: pieces.map(present),
    options: present(options ?? {}),
    unit: unitOf(lengthsIn(json)),
    rounded,
  });
}

const words = (what: string) =>
  z
    .string(`${what} has to be text.`)
    .trim()
    .min(1, `${what} can’t be empty.`)
    .max(200, `${what} is too long.`);

const wholeFrom = (least: number, most: number) => {
  const message = `This has to be a whole number from ${least} to ${most}.`;
  return z.int(message).min(least, message).max(most, message);
};

const yesNo = z.boolean('This is either true or false.').optional();
const edge = z.enum(['top', 'right', 'bottom', 'left'], 'An edge is top, right, bottom or left.');
const listOf = <T extends z.ZodType>(item: T, plural: string, singular: string, none: string) =>
  z
    .array(item, `${plural} are a list.`)
    .min(1, none)
    .max(MOST_ENTRIES, `At most ${MOST_ENTRIES} kinds of ${singular} are planned at once.`);

function orderShape(rounded: string[]) {
  const long = lengthShape(rounded, 1);
  const longOrNone = lengthShape(rounded, 0);
  const noPin = 'A pin is {"edge":"top"} or {"x":…,"y":…}.';
  const pin = z.union([z.strictObject({ edge }), z.strictObject({ x: longOrNone, y: longOrNone })], noPin);
  const part = z.object(
    {
      id: words('An id'),
      width: long,
      height: long,
      copies: wholeFrom(1, MOST_COPIES),
      upright: yesNo,
      designs: z
        .array(words('A design'), 'Designs are a list of names.')
        .min(1, 'Name a design, or leave this out.')
        .optional(),
      match: words('A match label').optional(),
      oneDesign: yesNo,
      pin: pin.optional(),
    },
    'A part is an object with an id, a width, a height and copies.',
  );
  const piece = z.object(
    {
      id: words('An id'),
      width: long,
      height: long,
      kind: z.enum(['sheet', 'offcut'], 'The kind is "sheet" or "offcut".'),
      copies: wholeFrom(1, MOST_COPIES * 5).optional(),
      design: words('A design').optional(),
      upright: yesNo,
      edges: z.array(edge, 'Edges are a list of top, right, bottom and left.').optional(),
      border: longOrNone.optional(),
      keep: yesNo,
    },
    'A piece is an object with an id, a width, a height and a kind.',
  );
  return z.object(
    {
      pieces: listOf(piece, 'Pieces', 'piece', 'There is no paper: list at least one piece.'),
      parts: listOf(part, 'Parts', 'part', 'There is nothing to cut: list at least one part.'),
      options: optionsShape(long, longOrNone).optional(),
    },
    'An order is an object with pieces and parts.',
  );
}

function optionsShape(long: z.ZodType<number>, longOrNone: z.ZodType<number>) {
  const time = `The time limit is in milliseconds, up to ${LONGEST_MS}.`;
  return z.object(
    {
      timeMs: z.number(time).positive(time).max(LONGEST_MS, time).optional(),
      seed: z.int('A seed is a whole number.').optional(),
      longestCut: long.optional(),
      keepAtLeast: longOrNone.optional(),
    },
    'Options are an object.',
  );
}

const lengthShape = (rounded: string[], least: number): z.ZodType<number> =>
  z.unknown().transform((given, context): number => {
    const read = typeof given === 'string' ? readText(given, least, rounded) : readWhole(given, least);
    if (typeof read === 'number') return read;
    context.addIssue({ code: 'custom', message: read.problem, input: given });
    return z.NEVER;
  });

function readWhole(given: unknown, least: number): number | { problem: string } {
  if (typeof given !== 'number')
    return { problem: 'A length is a whole number, or text such as "4 7/8 in".' };
  const fine = Number.isInteger(given) && given >= least && given <= MOST_UNITS;
  return fine ? given : { problem: `This has to be a whole number from ${least} to ${MOST_UNITS}.` };
}

function readText(given: string, least: number, rounded: string[]): number | { problem: string } {
  if (!/[a-z"”“″'′’]/i.test(given)) {
    return { problem: `Write “${given.slice(0, 40)}” with its unit, as in 4 7/8 in or 133 mm.` };
  }
  const read = readLength(given, { unit: 'mm' });
  if (!read.ok) return { problem: read.problems[0]!.message };
  if (read.value.length < least) return { problem: 'This has to be more than zero.' };
  if (read.value.rounded) rounded.push(given);
  return read.value.length;
}

const asProblem = (issue: { path: PropertyKey[]; message: string }): Problem => ({
  field: issue.path.reduce<string>(
    (path, key) => (typeof key === 'number' ? `${path}[${key}]` : `${path && `${path}.`}${String(key)}`),
    '',
  ),
  message: issue.message,
});

type Loose = Record<string, unknown>;

/** What is wrong between fields, looked for whatever else is wrong within them. */
function problemsBetween(json: unknown): Problem[] {
  const { parts, pieces } = listsIn(json);
  const kinds = new Set(lengthsIn(json).map((length) => typeof length));
  const copies = parts.reduce(
    (sum, part) => sum + (Number.isInteger(part['copies']) ? (part['copies'] as number) : 0),
    0,
  );
  return [
    ...(kinds.size > 1
      ? [
          {
            field: '',
            message: 'Give all lengths as whole numbers, or all as text with their units: not both.',
          },
        ]
      : []),
    ...twins('pieces', pieces),
    ...twins('parts', parts),
    ...(copies > MOST_COPIES
      ? [
          {
            field: 'parts',
            message: `That is ${copies} parts in all; at most ${MOST_COPIES} are planned at once.`,
          },
        ]
      : []),
  ];
}

function twins(field: string, list: readonly Loose[]): Problem[] {
  const seen = new Set<unknown>();
  return list.flatMap(({ id }, index) => {
    const twin = typeof id === 'string' && seen.has(id);
    seen.add(id);
    return twin ? [{ field: `${field}[${index}].id`, message: `“${id}” is used twice.` }] : [];
  });
}

function listsIn(json: unknown): { parts: Loose[]; pieces: Loose[]; options: Loose[] } {
  const objects = (list: unknown): Loose[] =>
    (Array.isArray(list) ? list : [list]).filter(
      (one): one is Loose => typeof one === 'object' && one !== null,
    );
  const [whole] = objects(json);
  return {
    parts: objects(whole?.['parts']),
    pieces: objects(whole?.['pieces']),
    options: objects(whole?.['options']),
  };
}

function lengthsIn(json: unknown): (number | string)[] {
  const { parts, pieces, options } = listsIn(json);
  const all = [
    ...[...parts, ...pieces].flatMap((one) => [one['width'], one['height'], one['border']]),
    ...parts.flatMap(({ pin }) => [(pin as Loose | undefined)?.['x'], (pin as Loose | undefined)?.['y']]),
    ...options.flatMap((one) => [one['longestCut'], one['keepAtLeast']]),
  ];
  return all.filter((one) => typeof one === 'number' || typeof one === 'string');
}

function unitOf(lengths: readonly (number | string)[]): ReadOrder['unit'] {
  if (lengths.some((one) => typeof one === 'number')) return 'given';
  return lengths.every((text) => /(in\.?|inch(es)?|["”“″])\s*$/i.test(`${text}`)) ? 'in' : 'mm';
}

/** Without the keys that were left out, which zod may list as undefined. */
type Present<T> = { [K in keyof T]: Exclude<T[K], undefined> };

const present = <T extends object>(given: T): Present<T> =>
  Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as Present<T>;
