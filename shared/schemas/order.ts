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
  readonly keep?: boolean;
}

interface ReadOptions {
  readonly timeMs?: number;
  readonly seed?: number;
  readonly longestCut?: number;
  readonly keepAtLeast?: number;
}

/** More than a table can hold, and as much as is planned within the time limit. */
export const MOST_COPIES = 2000;
export const MOST_ENTRIES = 2000;
const MOST_UNITS = 100_000_000;
const LONGEST_MS = 600_000;

/** Reads `{ pieces, parts, options? }` as it came out of JSON.parse. */
export function readOrder(json: unknown): Checked<ReadOrder> {
  const shape = orderShape.safeParse(json);
  if (!shape.success) return { ok: false, problems: shape.error.issues.map(asProblem) };
  const problems: Problem[] = [];
  const lengths = new Lengths(shape.data, problems);
  const parts = shape.data.parts.map((part, index) => lengths.part(part, `parts[${index}]`));
  const pieces = shape.data.pieces.map((piece, index) => lengths.piece(piece, `pieces[${index}]`));
  const options = lengths.options(shape.data.options ?? {});
  refuseTwins('parts', parts, problems);
  refuseTwins('pieces', pieces, problems);
  const copies = parts.reduce((sum, part) => sum + part.copies, 0);
  if (copies > MOST_COPIES) {
    problems.push({
      field: 'parts',
      message: `That is ${copies} parts in all; at most ${MOST_COPIES} are planned at once.`,
    });
  }
  if (problems.length > 0) return { ok: false, problems };
  return accept({ order: { parts }, pieces, options, unit: lengths.unit, rounded: lengths.rounded });
}

const words = (what: string) =>
  z
    .string(`${what} has to be text.`)
    .trim()
    .min(1, `${what} can’t be empty.`)
    .max(200, `${what} is too long.`);
const wholeFrom = (least: number, most: number) =>
  z
    .int(`This has to be a whole number from ${least} to ${most}.`)
    .min(least, `This has to be a whole number from ${least} to ${most}.`)
    .max(most, `This has to be a whole number from ${least} to ${most}.`);
const yesNo = z.boolean('This is either true or false.').optional();
const lengthShape = z.union(
  [z.number(), z.string()],
  'A length is a whole number, or text such as "4 7/8 in".',
);
const edgeShape = z.enum(['top', 'right', 'bottom', 'left'], 'An edge is top, right, bottom or left.');
const pinShape = z.union(
  [z.strictObject({ edge: edgeShape }), z.strictObject({ x: lengthShape, y: lengthShape })],
  'A pin is {"edge":"top"} or {"x":…,"y":…}.',
);

const partShape = z.object(
  {
    id: words('An id'),
    width: lengthShape,
    height: lengthShape,
    copies: wholeFrom(1, MOST_COPIES),
    upright: yesNo,
    designs: z
      .array(words('A design'), 'Designs are a list of names.')
      .min(1, 'Name a design, or leave this out.')
      .optional(),
    match: words('A match label').optional(),
    oneDesign: yesNo,
    pin: pinShape.optional(),
  },
  'A part is an object with an id, a width, a height and copies.',
);

const pieceShape = z.object(
  {
    id: words('An id'),
    width: lengthShape,
    height: lengthShape,
    kind: z.enum(['sheet', 'offcut'], 'The kind is "sheet" or "offcut".'),
    copies: wholeFrom(1, 10_000).optional(),
    design: words('A design').optional(),
    upright: yesNo,
    edges: z.array(edgeShape, 'Edges are a list of top, right, bottom and left.').optional(),
    keep: yesNo,
  },
  'A piece is an object with an id, a width, a height and a kind.',
);

const optionsShape = z.object(
  {
    timeMs: z
      .number(`The time limit is in milliseconds, up to ${LONGEST_MS}.`)
      .positive()
      .max(LONGEST_MS)
      .optional(),
    seed: z.int('A seed is a whole number.').optional(),
    longestCut: lengthShape.optional(),
    keepAtLeast: lengthShape.optional(),
  },
  'Options are an object.',
);

const orderShape = z.object(
  {
    pieces: z
      .array(pieceShape, 'Pieces are a list.')
      .min(1, 'There is no paper: list at least one piece.')
      .max(MOST_ENTRIES, `At most ${MOST_ENTRIES} kinds of piece are planned at once.`),
    parts: z
      .array(partShape, 'Parts are a list.')
      .min(1, 'There is nothing to cut: list at least one part.')
      .max(MOST_ENTRIES, `At most ${MOST_ENTRIES} kinds of part are planned at once.`),
    options: optionsShape.optional(),
  },
  'An order is an object with pieces and parts.',
);

type OrderShape = z.infer<typeof orderShape>;
type GivenLength = number | string;

const asProblem = (issue: { path: PropertyKey[]; message: string }): Problem => ({
  field: issue.path.reduce<string>(
    (path, key) =>
      typeof key === 'number' ? `${path}[${key}]` : path ? `${path}.${String(key)}` : String(key),
    '',
  ),
  message: issue.message,
});

function refuseTwins(field: string, list: readonly { id: string }[], problems: Problem[]): void {
  const seen = new Set<string>();
  list.forEach(({ id }, index) => {
    if (seen.has(id)) problems.push({ field: `${field}[${index}].id`, message: `“${id}” is used twice.` });
    seen.add(id);
  });
}

/** Reads every length of an order the same way, and keeps what went wrong. */
class Lengths {
  readonly unit: ReadOrder['unit'];
  readonly rounded: string[] = [];
  private readonly problems: Problem[];

  constructor(order: OrderShape, problems: Problem[]) {
    this.problems = problems;
    const all = allLengths(order);
    const texts = all.filter((one) => typeof one === 'string');
    if (texts.length > 0 && texts.length < all.length) {
      problems.push({
        field: '',
        message: 'Give all lengths as whole numbers, or all as text with their units: not both.',
      });
    }
    const inches = texts.every((text) => /(in\.?|inch(es)?|["”“″])\s*$/i.test(text));
    this.unit = texts.length === 0 ? 'given' : inches ? 'in' : 'mm';
  }

  part(part: OrderShape['parts'][number], field: string): ReadPart {
    const { width, height, pin, ...rest } = part;
    return {
      ...present(rest),
      width: this.read(width, `${field}.width`),
      height: this.read(height, `${field}.height`),
      ...(pin && { pin: 'edge' in pin ? pin : this.place(pin, `${field}.pin`) }),
    };
  }

  piece(piece: OrderShape['pieces'][number], field: string): ReadPiece {
    const { width, height, ...rest } = piece;
    return {
      ...present(rest),
      width: this.read(width, `${field}.width`),
      height: this.read(height, `${field}.height`),
    };
  }

  options(options: NonNullable<OrderShape['options']>): ReadOptions {
    const { longestCut, keepAtLeast, ...rest } = options;
    return {
      ...present(rest),
      ...(longestCut !== undefined && { longestCut: this.read(longestCut, 'options.longestCut') }),
      ...(keepAtLeast !== undefined && { keepAtLeast: this.read(keepAtLeast, 'options.keepAtLeast', 0) }),
    };
  }

  private place(pin: { x: GivenLength; y: GivenLength }, field: string): { x: number; y: number } {
    return { x: this.read(pin.x, `${field}.x`, 0), y: this.read(pin.y, `${field}.y`, 0) };
  }

  private read(given: GivenLength, field: string, least = 1): number {
    if (typeof given === 'string') return this.readText(given, field, least);
    const fine = Number.isInteger(given) && given >= least && given <= MOST_UNITS;
    if (!fine) this.refuse(field, `This has to be a whole number from ${least} to ${MOST_UNITS}.`);
    return fine ? given : 1;
  }

  private readText(given: string, field: string, least: number): number {
    if (!/[a-z"”“″'′’]/i.test(given))
      return this.refuse(field, `Write “${given.slice(0, 40)}” with its unit, as in 4 7/8 in or 133 mm.`);
    const read = readLength(given, { unit: 'mm' }, field);
    if (!read.ok) return this.refuse(field, read.problems[0]!.message);
    if (read.value.rounded) this.rounded.push(given);
    if (read.value.length < least) return this.refuse(field, 'This has to be more than zero.');
    return read.value.length;
  }

  private refuse(field: string, message: string): 1 {
    this.problems.push({ field, message });
    return 1;
  }
}

function allLengths({ parts, pieces, options }: OrderShape): GivenLength[] {
  const pins = parts.flatMap(({ pin }) => (pin && 'x' in pin ? [pin.x, pin.y] : []));
  const limits = [options?.longestCut, options?.keepAtLeast].filter((one) => one !== undefined);
  return [...[...parts, ...pieces].flatMap((one) => [one.width, one.height]), ...pins, ...limits];
}

/** Without the keys that were left out, which zod may list as undefined. */
type Present<T> = { [K in keyof T]: Exclude<T[K], undefined> };

const present = <T extends object>(given: T): Present<T> =>
  Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as Present<T>;
