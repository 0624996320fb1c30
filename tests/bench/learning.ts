/**
 * What learning her fits is worth, on simulated makers: each envelope is aimed at the fit she wants by the limits known so
 * far, made by an unsteady hand and judged by her own taste. Gives a markdown table; judges nothing.
 */
import { DEFAULT_LIMITS, idealClearance } from '#core/envelope/fit.ts';
import type { FitLimits } from '#core/envelope/recipe.ts';
import { type FeltFit, learnLimits } from '#core/project/fit-limits.ts';
import { inches, roundLength } from '#shared/length.ts';
import { WANTED_FITS, type WantedFit } from '#shared/outcome.ts';
import { chance, feels, MAKERS, type Maker, normal, writes } from '#tests/support/makers.ts';

const SEEDS = 60;
/** The curve's points: as wanted among the envelopes from the one before to this one. */
const UP_TO = [5, 10, 20, 40, 60, 80];

/** The share that came out as wanted, with and without learning, by the n-th envelope. */
export async function benchLearning(): Promise<string> {
  const rows = MAKERS.flatMap((maker) => [
    row(maker.name, curve(maker, true)),
    row('– without learning', curve(maker, false)),
  ]);
  return [
    `| % as wanted, ${SEEDS} seeds, envelopes | ${UP_TO.map((to, at) => `${(UP_TO[at - 1] ?? 0) + 1}–${to}`).join(' | ')} |`,
    `| --- | ${UP_TO.map(() => '---:').join(' | ')} |`,
    ...rows,
  ].join('\n');
}

const row = (name: string, shares: readonly number[]): string =>
  `| ${name} | ${shares.map((share) => (100 * share).toFixed(0)).join(' | ')} |`;

function curve(maker: Maker, learns: boolean): number[] {
  const runs = Array.from({ length: SEEDS }, (_, seed) => year(maker, seed + 1, learns));
  return UP_TO.map((to, at) => {
    const from = UP_TO[at - 1] ?? 0;
    const hits = runs.flatMap((run) => run.slice(from, to));
    return hits.filter(Boolean).length / hits.length;
  });
}

/** Whether each came out as she wanted it: mostly easy, at times snug or loose. */
function year(maker: Maker, seed: number, learns: boolean): boolean[] {
  const random = chance(seed);
  const journal: FeltFit[] = [];
  return Array.from({ length: UP_TO.at(-1)! }, (_, nth) => {
    const limits = learns ? learnLimits(journal, DEFAULT_LIMITS).limits : DEFAULT_LIMITS;
    const want = wanted(random);
    const made = envelope(want, limits, random);
    const felt = feels(maker, nth, made, random);
    journal.push(writes(maker, made, felt, random));
    return felt === want;
  });
}

function wanted(random: () => number): WantedFit {
  const [snug, easy, loose] = WANTED_FITS;
  const share = random();
  return share < 0.2 ? snug : share < 0.9 ? easy : loose;
}

/** Aimed at the middle of the grade, as the solver does; start and square lie on marks, so that sides differ. */
function envelope(want: WantedFit, limits: FitLimits, random: () => number) {
  const aim = idealClearance(want, limits);
  const side = () => roundLength(aim + inches(1) * 0.02 * normal(random), 'nearest');
  return { width: side(), height: side() };
}
