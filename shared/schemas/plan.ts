/**
 * The forms about a plan: a batch with its typed parts, how it is asked again otherwise, a step ticked, the cut, a part
 * spoiled. Fields of the n-th part are named `parts.n.width`; knows no shelf.
 */
import { z } from 'zod';
import { MATCHES, type Match, type PaperAsked, type PartAsked, PRINTS_ASKED } from '../batch.ts';
import { readId } from '../ids.ts';
import type { Units } from '../length.ts';
import { PAPER_KINDS } from '../paper-kind.ts';
import {
  choiceField,
  countField,
  idField,
  ifAny,
  lengthField,
  lengthOrZeroField,
  noteField,
  tickField,
  whenMissing,
  wordsField,
} from './fields.ts';

/** A batch as it is typed: its own blanks, and other projects of the series. */
export interface BatchTyped {
  readonly blanks: number;
  readonly paper: PaperAsked;
  readonly match: Match;
  readonly others: readonly number[];
  readonly keep: readonly string[];
  readonly parts: readonly PartAsked[];
}

export const PART_FIELDS = [
  'name',
  'width',
  'height',
  'copies',
  'print',
  'paper',
  'paperNamed',
  'grammage',
  'match',
  'fromLeft',
  'fromTop',
] as const;

const MOST_PARTS = 24;

type Typed = Readonly<Record<string, string>>;

/** The numbers of the parts in a form, in their order. */
export function partsIn(typed: Typed): number[] {
  const numbers = Object.keys(typed).flatMap((name) => /^parts\.(\d{1,3})\.\w+$/.exec(name)?.[1] ?? []);
  return [...new Set(numbers.map(Number))].sort((one, other) => one - other);
}

/** All problems at once, each beside its field. */
export const batchForm = (units: Units): z.ZodType<BatchTyped> =>
  z.record(z.string(), z.string()).transform((typed, context): BatchTyped => {
    const head = headForm.safeParse(typed);
    const form = partForm(units);
    const numbers = partsIn(typed);
    const parts = numbers.map((number) => form.safeParse(fieldsOf(typed, number)));
    const tell = (issues: readonly z.core.$ZodIssue[], at: PropertyKey[]): void => {
      for (const { message, path } of issues)
        context.addIssue({ code: 'custom', message, path: [...at, ...path] });
    };
    tell(head.error?.issues ?? [], []);
    for (const [index, number] of numbers.entries()) {
      const spot = spotProblems(fieldsOf(typed, number));
      tell([...(parts[index]!.error?.issues ?? []), ...spot], ['parts', number]);
    }
    if (numbers.length > MOST_PARTS) tell([{ code: 'custom', message: TOO_MANY, path: [] }], ['parts']);
    if (!head.success) return z.NEVER;
    return {
      ...head.data,
      others: ticked(typed, 'with.').flatMap((text) => readId(text) ?? []),
      keep: ticked(typed, 'keep.'),
      parts: parts.flatMap((part) => part.data ?? []),
    };
  });

export const tickForm = z.object({ step: countField(0, 9999) });

/** Where leftovers of new sheets are put. */
export const cutPlanForm = z.object({ place: noteField(60) });

export const unspoiledPartForm = z.object({ part: noteField(200), at: noteField(40) });

export const spoiledPartForm = z.object({
  part: wordsField('the part'),
  wrong: wordsField('a word on what happened'),
});

/** A plan asked again otherwise; what is left out stays as it was. */
export const againForm = z.object({
  keep: z.string().max(40).optional(),
  design: ifAny(idField),
  longer: tickField,
});

const TOO_MANY = `At most ${MOST_PARTS} kinds of part go into one plan.`;

const partForm = (units: Units) =>
  z
    .object({
      name: wordsField('the part a name', 40),
      width: lengthField(units),
      height: lengthField(units),
      copies: countField(1, 500),
      print: choiceField(PRINTS_ASKED, 'any way'),
      paper: paperField,
      grammage: grammageField,
      match: tickField,
      fromLeft: ifAny(lengthOrZeroField(units)),
      fromTop: ifAny(lengthOrZeroField(units)),
    })
    .transform(({ fromLeft: x, fromTop: y, ...part }) => ({
      ...part,
      ...(x !== undefined && y !== undefined && { at: { x, y } }),
    }));

/** A spot has two distances, and a border along the bottom is a spot of its own. */
function spotProblems({ fromLeft = '', fromTop = '', print }: Typed): z.core.$ZodIssue[] {
  const [left, top] = [fromLeft.trim() !== '', fromTop.trim() !== ''];
  const say = (field: string, message: string): z.core.$ZodIssue => ({
    code: 'custom',
    message,
    path: [field],
  });
  return [
    ...(left !== top ? [say(left ? 'fromTop' : 'fromLeft', 'Give both distances, or neither.')] : []),
    ...(left && top && print === 'bordered'
      ? [say('print', 'The border is along the bottom, wherever its spot: choose one of the two.')]
      : []),
  ];
}

const grammageField: z.ZodType<number | null> = z
  .string()
  .optional()
  .default('')
  .transform((typed, context) => {
    if (typed.trim() === '') return null;
    const read = countField(1, 2000).safeParse(typed.replace(/ ?g(\/m²|sm)?\s*$/i, ''));
    if (read.success) return read.data;
    context.addIssue({ code: 'custom', message: 'Type grams per square metre, such as 200.' });
    return z.NEVER;
  });

const DESIGN = 'design-';

/** As a select's value: ``, `design-7`, `kind-vellum`. */
const paperField: z.ZodType<PaperAsked> = z
  .string()
  .optional()
  .default('')
  .transform((typed, context): PaperAsked => {
    const kind = PAPER_KINDS.find((one) => typed === `kind-${one}`);
    const design = typed.startsWith(DESIGN) ? readId(typed.slice(DESIGN.length)) : undefined;
    if (typed === '') return { of: 'any' };
    if (kind !== undefined) return { of: 'kind', kind };
    if (design !== undefined) return { of: 'design', design };
    context.addIssue({ code: 'custom', message: 'Choose one from the list.' });
    return z.NEVER;
  });

const headForm = z.object({
  blanks: whenMissing(0, countField(0, 500)),
  paper: paperField,
  match: choiceField(MATCHES, 'each set'),
});

const fieldsOf = (typed: Typed, number: number): Typed =>
  Object.fromEntries(
    PART_FIELDS.flatMap((field) => {
      const value = typed[`parts.${number}.${field}`];
      return value === undefined ? [] : [[field, value]];
    }),
  );

const ticked = (typed: Typed, prefix: string): string[] =>
  Object.keys(typed).flatMap((name) =>
    name.startsWith(prefix) && (typed[name] === 'on' || typed[name] === 'yes')
      ? [name.slice(prefix.length)]
      : [],
  );
