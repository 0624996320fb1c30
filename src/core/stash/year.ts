/**
 * A year's paper by month and by kind, as areas: bought, used, of that from offcuts and of that spoiled. Used is what a
 * batch took less what it laid back; what it took from offcuts is new paper saved. Knows no ledger.
 */
import { PAPER_KINDS, type PaperKind } from '#shared/paper-kind.ts';

/** In square units, as plain numbers. */
export interface YearSums {
  readonly bought: number;
  readonly used: number;
  readonly fromOffcuts: number;
  readonly spoiled: number;
}

/** `month` as in `2026-03`. */
export interface YearLine extends YearSums {
  readonly month: string;
  readonly kind: PaperKind;
}

export interface Year {
  readonly year: number;
  /** January first, twelve of them. */
  readonly months: readonly YearSums[];
  /** Those of which there is something to say. */
  readonly kinds: readonly (YearSums & { readonly kind: PaperKind })[];
  readonly whole: YearSums;
}

export function sumYear(year: number, lines: readonly YearLine[]): Year {
  const monthOf = (month: number): YearSums =>
    sumUp(lines.filter((line) => Number(line.month.slice(5)) === month));
  return {
    year,
    months: Array.from({ length: 12 }, (_, index) => monthOf(index + 1)),
    kinds: PAPER_KINDS.filter((kind) => lines.some((line) => line.kind === kind)).map((kind) => ({
      kind,
      ...sumUp(lines.filter((line) => line.kind === kind)),
    })),
    whole: sumUp(lines),
  };
}

const sumUp = (lines: readonly YearSums[]): YearSums =>
  lines.reduce(
    (sum, line) => ({
      bought: sum.bought + line.bought,
      used: sum.used + line.used,
      fromOffcuts: sum.fromOffcuts + line.fromOffcuts,
      spoiled: sum.spoiled + line.spoiled,
    }),
    { bought: 0, used: 0, fromOffcuts: 0, spoiled: 0 },
  );
