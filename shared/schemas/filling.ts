/**
 * What one piece is to be filled with: ticks on the maker's own cards and their envelopes, and parts typed in. Fields are
 * named `envelope.7`, `card.7.most`, `parts.0.width`; knows neither cards nor pieces.
 */
import { z } from 'zod';
import { readId } from '../ids.ts';
import type { Length, Units } from '../length.ts';
import { choiceField, countField, ifAny, lengthField, noteField } from './fields.ts';
import { partsIn } from './plan.ts';

const FILL_GOALS = ['area', 'count', 'wish'] as const;

const OWN_KINDS = ['envelope', 'card'] as const;

/** As many as come out where `most` is left out; `wish` is 1 unless the goal is her wishes. */
interface Amount {
  readonly most: number | undefined;
  readonly wish: number;
}

/** A tick on one of her own cards, or on its envelope. */
export interface OwnTyped extends Amount {
  readonly of: (typeof OWN_KINDS)[number];
  readonly card: number;
}

export interface PartTyped extends Amount {
  /** May be empty. */
  readonly name: string;
  readonly width: Length;
  readonly height: Length;
  readonly print: 'any way' | 'upright';
}

export interface FillingTyped {
  readonly goal: (typeof FILL_GOALS)[number];
  readonly own: readonly OwnTyped[];
  readonly parts: readonly PartTyped[];
}

type Typed = Readonly<Record<string, string>>;

const MOST_PARTS = 24;
const TOO_MANY = `At most ${MOST_PARTS} kinds of part are tried at once.`;

/** All problems at once, each beside its field; rows without a size, number or name are left out. */
export const fillingForm = (units: Units): z.ZodType<FillingTyped> =>
  z.record(z.string(), z.string()).transform((typed, context): FillingTyped => {
    const take = <T>(schema: z.ZodType<T>, fields: unknown, path: PropertyKey[]): T[] => {
      const read = schema.safeParse(fields);
      for (const issue of read.error?.issues ?? [])
        context.addIssue({ code: 'custom', message: issue.message, path: [...path, ...issue.path] });
      return read.success ? [read.data] : [];
    };
    const under = byRow(typed);
    const goals = take(z.object({ goal: choiceField(FILL_GOALS, 'area') }), typed, []);
    const goal = goals[0]?.goal ?? 'area';
    const [amount, part] = [amountForm(goal), partForm(units, goal)];
    const rows = partsIn(typed).filter((row) => isFilled(typed, row));
    if (rows.length > MOST_PARTS) context.addIssue({ code: 'custom', message: TOO_MANY, path: ['parts'] });
    return {
      goal,
      own: ticks(typed).flatMap(({ of, card }) =>
        take(amount, under(`${of}.${card}`), [of, card]).map((asked) => ({ of, card, ...asked })),
      ),
      parts: rows.flatMap((row) => take(part, under(`parts.${row}`), ['parts', row])),
    };
  });

/** Whether the n-th row says more than which way its print lies. */
export const isFilled = (typed: Typed, row: number): boolean =>
  ['name', 'width', 'height', 'most'].some((field) => (typed[`parts.${row}.${field}`] ?? '').trim() !== '');

const amountForm = (goal: FillingTyped['goal']) =>
  z.object({
    most: ifAny(countField(1, 500)),
    wish: goal === 'wish' ? ifAny(countField(1, 9)).transform((wish) => wish ?? 1) : one,
  });

/** Whatever was typed. */
const one: z.ZodType<number> = z
  .string()
  .optional()
  .transform(() => 1);

const partForm = (units: Units, goal: FillingTyped['goal']) =>
  amountForm(goal).extend({
    name: noteField(40),
    width: lengthField(units),
    height: lengthField(units),
    print: choiceField(['any way', 'upright'], 'any way'),
  });

const ticks = (typed: Typed): { of: OwnTyped['of']; card: number }[] =>
  Object.keys(typed).flatMap((name) => {
    const of = OWN_KINDS.find((one) => name.startsWith(`${one}.`));
    const card = of && readId(name.slice(of.length + 1));
    return of && card !== undefined && typed[name] === 'on' ? [{ of, card }] : [];
  });

/** Gathers the fields below each name once: `parts.2` gives `width`, `height` … of that row. */
function byRow(typed: Typed): (name: string) => Typed {
  const rows = new Map<string, Record<string, string>>();
  for (const [name, value] of Object.entries(typed)) {
    const dot = name.lastIndexOf('.');
    const row = rows.get(name.slice(0, dot)) ?? {};
    row[name.slice(dot + 1)] = value;
    rows.set(name.slice(0, dot), row);
  }
  return (name) => rows.get(name) ?? {};
}
