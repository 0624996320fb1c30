/** A batch as the fields of its form and back: rows added and dropped, values typed out again. Knows no shelf. */
import type { Batch } from '#core/batch/batch.ts';
import type { PaperAsked, PartAsked } from '#shared/batch.ts';
import { typedLength, type Units } from '#shared/length.ts';
import { PART_FIELDS, partsIn } from '#shared/schemas/plan.ts';
import type { Typed } from '../http/form.ts';

const typedPaper = (paper: PaperAsked): string =>
  paper.of === 'any' ? '' : paper.of === 'kind' ? `kind-${paper.kind}` : `design-${paper.design}`;

/** The batch's fields as they would be typed. */
export const typedBatch = (batch: Omit<Batch, 'blanks'>, units: Units): Typed => ({
  paper: typedPaper(batch.paper),
  match: batch.match,
  ...Object.fromEntries(batch.keep.map((piece) => [`keep.${piece}`, 'on'])),
  ...withParts({}, batch.parts, units),
});

/** With these parts after those that are there. */
export function withParts(typed: Typed, parts: readonly PartAsked[], units: Units): Typed {
  const first = (partsIn(typed).at(-1) ?? -1) + 1;
  return Object.assign({ ...typed }, ...parts.map((part, index) => typedPart(part, first + index, units)));
}

/** With one more row to fill in. */
export function withEmptyPart(typed: Typed, copies: number): Typed {
  const number = (partsIn(typed).at(-1) ?? -1) + 1;
  return { ...typed, [`parts.${number}.name`]: '', [`parts.${number}.copies`]: `${copies}` };
}

/** With the parts that a link brings, after those that are there. */
export const withBrought = (typed: Typed, brought: Typed): Typed => ({
  ...typed,
  ...numberedFrom((partsIn(typed).at(-1) ?? -1) + 1, brought, partsIn(brought)),
});

/** Without the part of that number, the others numbered from 0. */
export function renumbered(typed: Typed, without?: number): Typed {
  const rest = Object.entries(typed).filter(([name]) => !name.startsWith('parts.'));
  const numbers = partsIn(typed).filter((number) => number !== without);
  return { ...Object.fromEntries(rest), ...numberedFrom(0, typed, numbers) };
}

/** The designs and offcuts that are to be kept, by their names in the order. */
export const keptIn = (typed: Typed): string[] =>
  Object.keys(typed).flatMap((name) =>
    name.startsWith('keep.') && typed[name] === 'on' ? [name.slice('keep.'.length)] : [],
  );

/** The fields that say which paper will do: of the envelopes, of each part. */
export const paperFields = (typed: Typed): string[] => [
  'paper',
  ...partsIn(typed).map((number) => `parts.${number}.paper`),
];

const numberedFrom = (first: number, typed: Typed, numbers: readonly number[]): Typed =>
  Object.fromEntries(
    numbers.flatMap((number, index) =>
      PART_FIELDS.flatMap((field) => {
        const value = typed[`parts.${number}.${field}`];
        return value === undefined ? [] : [[`parts.${first + index}.${field}`, value] as const];
      }),
    ),
  );

const typedPart = (part: PartAsked, number: number, units: Units): Typed =>
  Object.fromEntries(
    Object.entries({
      name: part.name,
      width: typedLength(part.width, units),
      height: typedLength(part.height, units),
      copies: `${part.copies}`,
      print: part.print,
      paper: typedPaper(part.paper),
      ...(part.grammage !== null && { grammage: `${part.grammage}` }),
      ...(part.match && { match: 'on' }),
      ...(part.at && { fromLeft: typedLength(part.at.x, units), fromTop: typedLength(part.at.y, units) }),
    }).map(([field, value]) => [`parts.${number}.${field}`, value]),
  );
