/**
 * The papers of a batch that were typed by name instead of chosen, and what is to be kept: made choices of where one is
 * meant, said where none or several are. Writes nothing.
 */
import type { Design } from '#core/stash/stash.ts';
import type { Problem } from '#shared/checked.ts';
import type { Database } from '#stores/database.ts';
import { findByCode } from '#stores/offcuts.ts';
import type { Typed } from '../http/form.ts';
import { paperFields } from './batch-form.ts';
import { designNamed } from './named-design.ts';

export interface PapersNamed {
  readonly typed: Typed;
  readonly problems: readonly Problem[];
  /** By the field of a paper, the designs that its name may mean. */
  readonly several: ReadonlyMap<string, readonly Design[]>;
}

/** What a choice holds until one of several is chosen; no paper is called so. */
const WHICH = 'which';

export async function readPapersNamed(db: Database, asked: Typed): Promise<PapersNamed> {
  const several = new Map<string, readonly Design[]>();
  const problems: Problem[] = [];
  let typed = asked;
  for (const field of paperFields(asked)) {
    const words = (asked[`${field}Named`] ?? '').trim();
    if (words === '') continue;
    const meant = await designNamed(db, words, { onShelf: true });
    if (meant === 'none') problems.push({ field: `${field}Named`, message: sayNone(words) });
    else if ('one' in meant) typed = { ...typed, [field]: `design-${meant.one.id}`, [`${field}Named`]: '' };
    else {
      several.set(field, meant.several);
      problems.push({ field, message: `More than one is called “${words}”. Choose which.` });
      typed = { ...typed, [field]: WHICH, [`${field}Named`]: '' };
    }
  }
  const kept = await keptToo(db, typed);
  return { typed: kept.typed, problems: [...problems, ...kept.problems], several };
}

/** A code names its offcut, any other word a design of which no sheet is to be opened. */
async function keptToo(db: Database, typed: Typed): Promise<Pick<PapersNamed, 'typed' | 'problems'>> {
  const words = (typed.keepNamed ?? '').trim();
  if (words === '') return { typed, problems: [] };
  const keep = (name: string) => ({
    typed: { ...typed, [`keep.${name}`]: 'on', keepNamed: '' },
    problems: [],
  });
  const offcut = await findByCode(db, words);
  if (offcut && offcut.count > 0) return keep(`offcut-${offcut.id}`);
  const meant = await designNamed(db, words, { onShelf: true });
  if (meant !== 'none' && 'one' in meant) return keep(`sheet-${meant.one.id}`);
  const message =
    meant === 'none' ? sayNone(words) : `More than one is called “${words}”: give its pad’s name too.`;
  return { typed, problems: [{ field: 'keepNamed', message }] };
}

const sayNone = (words: string): string => `Nothing on the shelf is called “${words}”.`;
