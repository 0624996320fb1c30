/** A plan in words: its one answer, its proof, what is missing and what would help. Knows no markup. */

import { blankName } from '#core/batch/batch.ts';
import type { Change } from '#core/batch/changes.ts';
import { isBlank, type OfferedPiece, type OrderedPart } from '#core/batch/identity.ts';
import { type FoundPlan, lookedAt, proofOf, wholeSets } from '#core/batch/planned.ts';
import type { Remedy, Unplaced } from '#core/cutting/cuts.ts';
import { sizeOf } from '#core/stash/measured.ts';
import type { PieceRef } from '#core/stash/stash.ts';
import { length, printExact, printExactSize, typedLength, type Units } from '#shared/length.ts';
import { capital, howMany, listed } from '#views/common/words.ts';
import type { PlanView } from './view.ts';

type Names = Pick<PlanView, 'designs' | 'offcuts' | 'titles' | 'units'>;

/** `2 sheets of Fern and 3 offcuts`; with more than a few designs only how many. */
export function sayPaper({ plan, pieces }: FoundPlan, { designs }: Pick<Names, 'designs'>): string {
  const used = plan.used.map((one) => pieces.find(({ id }) => id === one.piece)!);
  const sheets = used.filter(({ kind }) => kind === 'sheet');
  const offcuts = used.length - sheets.length;
  const names = tally(sheets.map((piece) => designs.get(piece.ref.design)?.name ?? 'a lost design'));
  const named = [...names].map(([name, count], index) =>
    index === 0 ? `${howMany(count, 'sheet')} of ${name}` : `${count} of ${name}`,
  );
  const opened =
    named.length > MOST_NAMED ? [`${howMany(sheets.length, 'sheet')} of ${named.length} designs`] : named;
  return listed([...opened, ...(offcuts > 0 ? [howMany(offcuts, 'offcut')] : [])]);
}

const MOST_NAMED = 3;

/** `everything fits`, `14 of 16 parts fit` */
export function sayFit({ plan }: FoundPlan): string {
  const missing = plan.unplaced.reduce((sum, { copies }) => sum + copies, 0);
  return missing === 0
    ? 'everything fits'
    : `${plan.placed} of ${howMany(plan.placed + missing, 'part')} fit`;
}

/** What is proved of the paper it was looked for among, by its name, and what lies between that and the plan. */
export function sayProof(plan: FoundPlan, names: Pick<Names, 'designs'>): string {
  const { unplaced, leastUnplaced, newSheets, leastSheets, proved } = proofOf(plan);
  const from = sayFrom(plan, names);
  if (unplaced > 0) {
    if (unplaced === leastUnplaced) return `No plan from ${from} places more.`;
    const out = `${howMany(unplaced, 'part')} ${unplaced === 1 ? 'is' : 'are'} left out.`;
    return leastUnplaced === 0
      ? `${out} Whether a plan from ${from} fits them all is not known yet.`
      : `${out} No plan from ${from} leaves out fewer than ${leastUnplaced}; ${sayBetween(leastUnplaced, unplaced)}.`;
  }
  if (newSheets === 0) return 'It opens no new sheet.';
  const opens = `Opens ${howMany(newSheets, 'sheet')}`;
  if (leastSheets >= newSheets) return `${opens}; no plan from ${from} opens fewer.`;
  if (proved) return `${opens}; no plan from ${from} opens less new paper.`;
  return leastSheets === 0
    ? `${opens}. Whether a plan from ${from} does with fewer is not known yet.`
    : `${opens}. No plan from ${from} does with fewer than ${leastSheets}; ${sayBetween(leastSheets, newSheets)}.`;
}

/** The gap between what is proved and what was found. */
const sayBetween = (least: number, found: number): string =>
  `whether ${found - least === 1 ? least : `any number from ${least} to ${found - 1}`} is possible is not known yet`;

/** What a longer look brought, against the plan before for the same parts and paper; empty where that was another question. */
export function sayLonger(plan: FoundPlan, before: FoundPlan): string {
  if (asked(plan) !== asked(before)) return '';
  const [now, then] = [proofOf(plan), proofOf(before)];
  const [more, fewer] = [then.unplaced - now.unplaced, then.newSheets - now.newSheets];
  if (more !== 0)
    return `Looked longer: ${howMany(Math.abs(more), 'part')} ${more > 0 ? 'more' : 'fewer'} than before.`;
  if (fewer !== 0)
    return `Looked longer: ${howMany(Math.abs(fewer), 'sheet')} ${fewer > 0 ? 'fewer' : 'more'} than before.`;
  if (now.leastUnplaced > then.leastUnplaced)
    return `Looked longer: as many parts fit as before, and it is now certain that at least ${now.leastUnplaced} are left out (${then.leastUnplaced} before).`;
  return now.leastSheets > then.leastSheets
    ? `Looked longer: as many sheets as before, and it is now certain that none does with fewer than ${now.leastSheets} (${then.leastSheets} before).`
    : 'Looked longer: nothing better was found, and nothing more is certain than before.';
}

const asked = ({ order, pieces }: FoundPlan): string => JSON.stringify([order, pieces]);

/** `3 of 8 sets are complete.` where parts are left out of sets; else empty. */
export function saySets(plan: FoundPlan): string {
  const sets = plan.plan.unplaced.length > 0 ? wholeSets(plan) : undefined;
  return sets
    ? `${sets.whole} of ${howMany(sets.of, 'set')} ${sets.whole === 1 ? 'is' : 'are'} complete.`
    : '';
}

/** The designs that a plan was looked for among, without what is kept. */
export const designsOf = ({ pieces }: FoundPlan): number[] => [
  ...new Set(pieces.filter(({ keep }) => !keep).map((piece) => piece.ref.design)),
];

export const nameOf = (design: number, { designs }: Pick<Names, 'designs'>): string =>
  designs.get(design)?.name ?? 'a design that is gone';

function sayFrom(plan: FoundPlan, names: Pick<Names, 'designs'>): string {
  const named = designsOf(plan).map((design) => nameOf(design, names));
  return named.length > MOST_NAMED ? `these ${named.length} designs` : listed(named);
}

/** Where the shelf has more than can be planned from at once. */
export const sayLookedAt = (plan: FoundPlan): string =>
  `Looked at ${lookedAt(plan)} of the ${plan.suitable} different pieces that would do, and speaks of these: sheets first, then for each part the smallest offcuts.`;

/** What would make room for a part that was left out, as half a sentence: one way or another. */
export function sayHelp({ part: id, copies, remedies }: Unplaced, view: PlanView): string {
  const matched = view.plan.order.parts.find((part) => part.id === id)?.match !== undefined;
  const others = remedies.filter(isOther).map((one) => sayRemedy(one, matched, view));
  return [...sayAnother(copies, remedies.filter(isAnother), view), ...others].join(', or ');
}

type Another = Extract<Remedy, { kind: 'another' }>;

const isAnother = (remedy: Remedy): remedy is Another => remedy.kind === 'another';

const isOther = (remedy: Remedy): remedy is Exclude<Remedy, Another> => !isAnother(remedy);

/** Several pieces belong together, and may not take all. */
function sayAnother(copies: number, more: readonly Another[], { plan, ...names }: PlanView): string[] {
  if (more.length === 0) return [];
  const pieces = more.map(({ piece, copies }) =>
    sayMore(plan.pieces.find(({ id }) => id === piece)!, copies, names),
  );
  const takes = more.reduce((sum, one) => sum + one.takes, 0);
  const them = takes < copies ? `${takes} of them` : copies > 1 ? 'them' : 'it';
  return [`${listed(pieces)} would take ${them}`];
}

function sayRemedy(remedy: Exclude<Remedy, Another>, matched: boolean, { plan, ...names }: PlanView): string {
  switch (remedy.kind) {
    case 'paper':
      return matched
        ? 'none of the paper looked at is of the design that it has to match'
        : 'none of the paper looked at will do';
    case 'apart':
      return 'there is room if it need not be of the same design as the rest';
    case 'kept':
      return `there is room on ${sayPieceRef(plan.pieces.find(({ id }) => id === remedy.piece)!.ref, names)}, kept back now`;
    case 'turned':
      return 'it would fit if it may lie any way';
    case 'longer cut':
      return `it would take a cut of ${printExact(length(remedy.length), names.units)}, longer than your trimmer’s`;
    case 'smaller':
      return `it would fit at ${printExactSize(sizeOf(remedy), names.units)}`;
  }
}

function sayMore(piece: OfferedPiece, copies: number, { designs, units }: Names): string {
  const name = designs.get(piece.ref.design)?.name ?? 'the same paper';
  if (piece.kind === 'sheet')
    return copies === 1 ? `another sheet of ${name}` : `${copies} more sheets of ${name}`;
  return `${copies === 1 ? 'another piece' : `${copies} more pieces`} of ${name}, ${printExactSize(sizeOf(piece), units)}`;
}

/** `the sheets of Fern`, `offcut K7 of Fern` */
export const sayPieceRef = ({ design, offcut }: PieceRef, { designs, offcuts }: Names): string => {
  const name = designs.get(design)?.name ?? 'a design that is gone';
  return offcut === null ? `sheets of ${name}` : `offcut ${offcuts.get(offcut)?.code ?? ''} of ${name}`;
};

export function sayChange(change: Change, names: Names): string {
  switch (change.kind) {
    case 'fewer':
      return change.left === 0
        ? `${capital(sayPieceRef(change.piece, names))}: ${change.wanted === 1 ? 'it is' : 'they are'} gone`
        : `${capital(sayPieceRef(change.piece, names))}: ${change.left} left of the ${change.wanted} it takes`;
    case 'other piece':
      return `${capital(sayPieceRef(change.piece, names))}: size or print was put right since`;
    case 'other blank':
      return `The blank of ${title(change.project, names)} was ${printExactSize(change.was, names.units)}${change.now ? ` and is ${printExactSize(change.now, names.units)} now` : ' and has no recipe now'}`;
    case 'fewer missing':
      return `${title(change.project, names)} lacked ${howMany(change.was, 'blank')} and lacks ${change.now} now`;
  }
}

/** What a part is called, and the letter that stands for it where there is no room. */
export interface PartLabel {
  readonly name: string;
  readonly sign: string;
}

export function labelsOf(
  { order, project }: FoundPlan,
  titles: ReadonlyMap<number, string>,
): Map<string, PartLabel> {
  const labels = new Map<string, PartLabel>();
  const taken = new Set<string>();
  for (const part of order.parts) {
    const { id } = part;
    const sign = [...id.toUpperCase(), ...SIGNS].find((one) => SIGNS.includes(one) && !taken.has(one)) ?? '';
    taken.add(sign);
    labels.set(id, { name: partName(part, project, titles), sign });
  }
  return labels;
}

/** A measure that is set: by the marks of a ruler, else to its last decimal, never rounded. */
export function sayTrue(units: number, shown: Units): string {
  const one = length(units);
  const exact = printExact(one, shown);
  if (!exact.startsWith('≈')) return exact;
  const typed = typedLength(one, shown);
  return typed.endsWith('m') ? typed : `${typed} ${shown.unit}`;
}

/** How often each text occurs, in the order of the first. */
export function tally(texts: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return counts;
}

export const percent = (share: number): string => `${(100 * share).toFixed(share < 0.1 ? 1 : 0)} %`;

export const sayWaste = (share: number): string => (share === 0 ? 'no waste' : `${percent(share)} waste`);

const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

const title = (project: number, { titles }: Names): string => `“${titles.get(project) ?? 'a project'}”`;

/** A blank of another project is named after it. */
function partName(part: OrderedPart, own: number, titles: ReadonlyMap<number, string>): string {
  if (!isBlank(part)) return part.id;
  const { project, piece } = part.of;
  const blank = capital(blankName(true, project, piece));
  return project === own ? blank : `${blank} for ${titles.get(project) ?? 'another project'}`;
}
