/** What becomes of the lessons of a project when what was told of it changes. Knows no steps and no features. */

/** `envelope` is null for the project as a whole. */
export interface Told {
  readonly envelope: number | null;
  readonly words: string;
  readonly savedBy: string;
}

export interface Retelling<Row, Telling> {
  readonly kept: readonly { readonly row: Row; readonly told: Telling }[];
  readonly added: readonly Telling[];
  readonly dropped: readonly Row[];
}

/** What went wrong, or what saved it where only that was written; undefined where nothing was. */
export function wordsOf({ wrong, savedBy }: { readonly wrong: string; readonly savedBy: string }) {
  if (wrong.trim() !== '') return { words: wrong, savedBy };
  return savedBy.trim() === '' ? undefined : { words: savedBy, savedBy: '' };
}

/**
 * The lessons that stand (`rows`) against what is told now, each wording once, its first envelope's. A lesson stays the
 * same one where its words do, even if another envelope tells them now, or else where its envelope does.
 */
export function retelling<Row extends Told, Telling extends Told>(
  rows: readonly Row[],
  told: readonly Telling[],
): Retelling<Row, Telling> {
  const different = told.filter((one, index) => told.findIndex((other) => sameTelling(one, other)) === index);
  const kept = new Map<Row, Telling>();
  const left = (): Telling[] => different.filter((one) => ![...kept.values()].includes(one));
  for (const meets of [sameAltogether, sameWordsFreed(rows), sameSource])
    for (const one of left()) {
      const row = rows.find((row) => !kept.has(row) && meets(row, one));
      if (row) kept.set(row, one);
    }
  return {
    kept: [...kept].map(([row, told]) => ({ row, told })),
    added: left(),
    dropped: rows.filter((row) => !kept.has(row)),
  };
}

const sameSource = (one: Told, other: Told): boolean => one.envelope === other.envelope;

const sameTelling = (one: Told, other: Told): boolean =>
  one.words === other.words &&
  one.savedBy === other.savedBy &&
  (one.envelope === null) === (other.envelope === null);

const sameAltogether = (row: Told, told: Told): boolean => sameSource(row, told) && sameTelling(row, told);

/** Not from an envelope that has a lesson of its own already. */
const sameWordsFreed = (rows: readonly Told[]) => (row: Told, told: Told) =>
  sameTelling(row, told) && !rows.some((other) => sameSource(other, told));
