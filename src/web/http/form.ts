/** Reads posted fields and queries into checked values, keeping what was typed. Knows no resource. */

import type { z } from 'zod';
import { accept, type Checked, type Problem } from '#shared/checked.ts';
import { readLength, typedLength, type Units } from '#shared/length.ts';
import type { Entry } from '#views/common/field.tsx';
import type { Request } from './env.ts';

/** What was typed, by field name; shown again beside its problem when a form is refused. */
export type Typed = Readonly<Record<string, string>>;

const TWICE = '\u0000twice';
/** As long as the notes of a project, the longest of all. */
const LONGEST_FIELD = 4000;

export async function readForm(c: Request): Promise<Typed> {
  return single(new URLSearchParams(await formPairs(c)));
}

export const readQuery = (c: Request): Typed => single(new URL(c.req.url).searchParams);

/** All problems at once, each beside its field. What came twice or is too long for any field is not read at all. */
export function check<T>(schema: z.ZodType<T>, typed: Typed): Checked<T> {
  const unread = Object.entries(typed).flatMap(([field, value]) => unreadable(field, value));
  if (unread.length > 0) return { ok: false, problems: unread };
  const read = schema.safeParse(typed);
  if (read.success) return accept(read.data);
  return { ok: false, problems: read.error.issues.map(toProblem) };
}

/** A refused form to be shown again: what was typed, but nothing where two answers came. */
export const entryOf = (typed: Typed, problems: readonly Problem[]): Entry => ({
  typed: Object.fromEntries(
    Object.entries(typed).map(([name, value]) => [name, value === TWICE ? '' : value]),
  ),
  problems,
});

/** Of the page that shows a form again: a form with problems was not accepted. */
export const statusOf = ({ problems }: Pick<Entry, 'problems'>): 200 | 422 =>
  problems.length > 0 ? 422 : 200;

/** The same entry, saying beside each of these lengths where it lay between two multiples of 25 nm and was rounded. */
export function tellRounding(entry: Entry, names: readonly string[], units: Units): Entry {
  const notes = names.flatMap((name): [string, string][] => {
    const read = readLength(entry.typed[name] ?? '', units);
    return read.ok && read.value.rounded ? [[name, `read as ${typedLength(read.value.length, units)}`]] : [];
  });
  return { ...entry, notes: Object.fromEntries(notes) };
}

function unreadable(field: string, value: string): Problem[] {
  if (value === TWICE) return [{ field, message: 'This came twice. Fill it in once.' }];
  if (value.length <= LONGEST_FIELD) return [];
  const [long, most] = [value.length, LONGEST_FIELD].map((one) => one.toLocaleString('en'));
  return [
    { field, message: `That is ${long} characters, and nothing here takes more than ${most}. Shorten it.` },
  ];
}

const toProblem = (issue: z.core.$ZodIssue): Problem => ({
  field: issue.path.join('.'),
  message: issue.message,
});

async function formPairs(c: Request): Promise<string[][]> {
  const form = await c.req.formData();
  return [...form.entries()].map(([name, value]) => [name, typeof value === 'string' ? value : '']);
}

/** No keyboard types them; NUL ends a text early in SQLite, and with any of the others an SVG is no XML. */
const CONTROLS = /[^\P{Cc}\t\n\r]/gu;

function single(pairs: URLSearchParams): Typed {
  const typed: Record<string, string> = {};
  for (const [name, text] of pairs) {
    const value = text.replaceAll(CONTROLS, '');
    typed[name] = Object.hasOwn(typed, name) && typed[name] !== value ? TWICE : value;
  }
  return typed;
}
