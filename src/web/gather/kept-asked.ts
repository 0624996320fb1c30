/** From typed fields to measures that are to be kept, with everything that is wrong with them. Writes nothing. */

import type { Fitting } from '#core/project/fitting.ts';
import type { Tool } from '#core/project/learning.ts';
import { accept, type Checked, type Problem, refuse } from '#shared/checked.ts';
import { printExactSize, typedLength, type Units } from '#shared/length.ts';
import { WANTED_FITS } from '#shared/outcome.ts';
import { type KeptAsked, keptForm } from '#shared/schemas/kept.ts';
import { type Size, turned } from '#shared/size.ts';
import { readSize } from '#shared/size-typed.ts';
import { readNotcher } from '#stores/notchers.ts';
import { typedDay } from '#views/common/when.tsx';
import { nowIn } from '../http/clock.ts';
import type { Request } from '../http/env.ts';
import { check, type Typed } from '../http/form.ts';
import { besideCard, cardAsked } from './card-asked.ts';
import { defaultsFrom, envelopeAsked, type Setting, settingIn } from './envelope-asked.ts';

export interface Kept {
  readonly asked: KeptAsked;
  readonly fitting: Fitting;
  /** What it was made on, null where that is none of hers. */
  readonly tool: number | null;
}

/** Problems stand beside `card`, `blank`, `start` and the form's other fields. */
export async function findKept(c: Request, typed: Typed): Promise<Checked<Kept>> {
  const units = c.get('units');
  const card = cardAsked(typed, units);
  const blank = readBlank(typed, units);
  const fields = { ...card.typed, ...(blank.ok && blank.value) };
  const read = check(keptForm(units, defaultsFrom(c.get('settings')), typedDay(nowIn(c))), fields);
  const problems = [
    ...(typed.card?.trim() === '' ? [{ field: 'card', message: 'How large is the card?' }] : card.problems),
    ...(blank.ok ? [] : blank.problems),
    ...(read.ok ? [] : read.problems).map(besideField),
  ];
  if (problems.length > 0 || !read.ok) return { ok: false, problems: once(problems) };
  const tool = await madeOn(c, read.value.tool);
  if (!tool) return refuse('tool', 'Choose one from the list.');
  const fitting = exactly(read.value, tool, units);
  if (!fitting.ok) return { ok: false, problems: once(fitting.problems.map(besideField)) };
  return accept({
    asked: read.value,
    fitting: fitting.value,
    tool: read.value.tool === undefined ? null : tool.tool.id,
  });
}

/** Without a tool of hers the one in use works the rest out. */
async function madeOn(c: Request, id = 0): Promise<(Setting & { readonly tool: Tool }) | undefined> {
  const setting = await settingIn(c);
  if (id === 0 || id === setting.tool.id) return setting;
  const other = await readNotcher(c.get('db'), id);
  return other && { ...setting, tool: other.tool, notcher: other.notcher };
}

/** One side for a square, both for the blank of a straight fold. */
function readBlank({ blank = '', fold = '' }: Typed, units: Units): Checked<Typed> {
  if (blank.trim() === '') return refuse('blank', 'How large is the paper it is folded from?');
  const size = readSize(blank, units);
  if (fold === 'diagonal' || fold === '') {
    if (!size.ok) return accept({ fold: 'diagonal', square: blank });
    if (size.value.width !== size.value.height)
      return refuse('blank', 'The diagonal fold starts from a square: both sides are alike.');
    return accept({ fold: 'diagonal', square: typedLength(size.value.width, units) });
  }
  if (!size.ok) return refuse('blank', size.problems[0]!.message);
  const { width, height } = size.value;
  return accept({
    fold,
    cutWidth: typedLength(width, units),
    cutHeight: typedLength(height, units),
    start: '',
  });
}

/** A straight fold from this very blank, whichever way it lies and however the card sits. */
function exactly(asked: KeptAsked, setting: Setting, units: Units): Checked<Fitting> {
  const { cutWidth, cutHeight } = asked;
  if (cutWidth === undefined || cutHeight === undefined) return envelopeAsked(asked, setting, units);
  const wanted = { width: cutWidth, height: cutHeight };
  let nearest: Size | undefined;
  for (const fit of new Set([asked.fit, ...WANTED_FITS])) {
    for (const { width, height } of [wanted, turned(wanted)]) {
      const found = envelopeAsked({ ...asked, fit, cutWidth: width, cutHeight: height }, setting, units);
      if (!found.ok || same(found.value.recipe.blank, { width, height })) return found;
      nearest ??= found.value.recipe.blank;
    }
  }
  return refuse('blank', sayNearest(asked, nearest!, units));
}

const sayNearest = ({ fold }: KeptAsked, nearest: Size, units: Units): string =>
  `No ${fold} envelope for this card is cut from that here; the first that is, is cut from ${printExactSize(nearest, units)}. Keep your own in the words below.`;

const same = (one: Size, other: Size): boolean => one.width === other.width && one.height === other.height;

const BESIDE: Record<string, string> = { square: 'blank', cutWidth: 'blank', cutHeight: 'blank' };

function besideField(problem: Problem): Problem {
  const { field, message } = besideCard(problem);
  return { field: BESIDE[field] ?? field, message };
}

/** One problem beside each field. */
const once = (problems: readonly Problem[]): Problem[] =>
  problems.filter(({ field }, index) => problems.findIndex((other) => other.field === field) === index);
