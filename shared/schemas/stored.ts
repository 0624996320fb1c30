/**
 * What may lie in the JSON columns of the data file, for `npm run verify` alone: rows are trusted everywhere else.
 * Knows the shapes by which they were written, loosely where more may be added.
 */
import { z } from 'zod';
import { FINISHES } from '../fold.ts';
import { FITS } from '../outcome.ts';
import { FRONT_LIES } from '../print.ts';
import { COLOUR, MOTIFS } from '../swatch.ts';

const whole = z.int();
const positive = z.int().positive();
const size = { width: positive, height: positive };
const signedSize = z.object({ width: whole, height: whole });
const colour = z.string().regex(COLOUR);

const swatch = z.object({
  motif: z.enum(MOTIFS),
  ground: colour,
  inks: z.array(colour).min(1).max(3),
});

const rectangle = { x: z.int().nonnegative(), y: z.int().nonnegative(), ...size };

const leaf = z.union([
  z.object({ part: z.string(), turned: z.boolean() }),
  z.object({ leftover: z.literal(true) }),
  z.object({ waste: z.literal(true) }),
]);

type Tree = z.infer<typeof leaf> | { at: number; along: 'x' | 'y'; parts: [Tree, Tree] };

const tree: z.ZodType<Tree> = z.lazy(() =>
  z.union([leaf, z.object({ at: positive, along: z.enum(['x', 'y']), parts: z.tuple([tree, tree]) })]),
);

const pieces = z
  .array(
    z.object({
      piece: z.object({ design: positive, offcut: positive.nullable() }),
      ...size,
      parts: z.array(z.object({ part: z.string().min(1), turned: z.boolean(), ...rectangle })),
      leftovers: z.array(
        z.object({ border: z.boolean(), place: z.string(), offcut: positive, ...rectangle }),
      ),
      cuts: tree,
    }),
  )
  .min(1);

const recipe = z.looseObject({
  fold: z.string(),
  card: z.looseObject({ ...size, bulk: z.int().nonnegative() }),
  notcher: z.looseObject({ inset: whole, zeroOffset: whole, graduation: positive, largestSheet: positive }),
  blank: z.object(size),
  starts: z.tuple([whole, whole]),
  pocket: z.object(size),
  clearance: signedSize,
  fit: z.enum(FITS),
  front: z.enum(FRONT_LIES),
  flaps: z.array(z.looseObject({ letter: z.string(), depth: whole })),
  warnings: z.array(z.looseObject({ kind: z.string(), message: z.string() })),
});

const look = z.looseObject({ id: z.string(), words: z.string(), placement: z.looseObject({}) });

const finishes = z.partialRecord(z.enum(['A', 'B', 'C', 'D']), z.looseObject({ shape: z.enum(FINISHES) }));

const STORED = { swatch, pieces, recipe, look, finishes };

/** What is wrong with a column's text as JSON of its kind; undefined when it can be read, or when it is empty. */
export function unreadable(kind: keyof typeof STORED, json: string | null): string | undefined {
  if (json === null) return undefined;
  const [problem] = STORED[kind].safeParse(JSON.parse(json)).error?.issues ?? [];
  return problem && `${problem.path.join('.')} ${problem.message}`;
}
