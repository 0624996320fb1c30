/** Parts of a card set that one tap adds to a batch, sized from the project's card and envelope. Asks no paper. */

import type { Project, ProjectSoFar } from '#core/project/journal.ts';
import { workingMeasures } from '#core/project/working-measures.ts';
import { cardBase } from '#core/sets/base.ts';
import { linerOf } from '#core/sets/envelope.ts';
import { frontPanels, insidePanel } from '#core/sets/panels.ts';
import type { SetPart } from '#core/sets/part.ts';
import type { PaperAsked, PartAsked } from '#shared/batch.ts';
import type { Checked } from '#shared/checked.ts';
import { inches, type Length, millimetres, onRuler, type Units } from '#shared/length.ts';
import type { PaperKind } from '#shared/paper-kind.ts';

export const SUGGESTIONS = ['base', 'front', 'mat', 'inside', 'liner'] as const;

export type Suggestion = (typeof SUGGESTIONS)[number];

/** What the project's card and envelope give a size for. */
export const suggestionsFor = ({ card, recipe }: Project): Suggestion[] =>
  SUGGESTIONS.filter((one) => (one === 'liner' ? recipe !== null : card !== null));

/** `kinds` are those on the shelf: a part whose usual paper is missing may come from any. Empty where no size follows. */
export function suggest(
  one: Suggestion,
  {
    soFar,
    copies,
    kinds,
    units,
  }: { soFar: ProjectSoFar; copies: number; kinds: readonly PaperKind[]; units: Units },
): PartAsked[] {
  const made = setParts(one, soFar, copies, units);
  return made.map(({ name, width, height, material }) => ({
    name,
    width,
    height,
    copies,
    print: 'any way',
    paper: usualPaper(material === 'cardstock' ? 'cardstock' : 'patterned', kinds),
    grammage: null,
    match: one === 'front',
  }));
}

function setParts(one: Suggestion, soFar: ProjectSoFar, copies: number, units: Units): SetPart[] {
  const { card } = soFar.project;
  const recipe = workingMeasures(soFar)?.recipe;
  const [margin, wide] =
    units.unit === 'in' ? [inches(1 / 8), inches(1 / 4)] : [millimetres(3), millimetres(6)];
  if (one === 'liner')
    return recipe ? listed(linerOf(recipe, { copies, glue: GLUE[units.unit] })).map(toRuler(units)) : [];
  if (!card) return [];
  switch (one) {
    case 'base':
      return listed(cardBase({ card, copies, fold: 'left' }));
    case 'front':
      return listed(frontPanels({ card, copies, margins: [margin] }));
    case 'mat':
      return listed(frontPanels({ card, copies, margins: [margin, margin] }));
    case 'inside':
      return listed(insidePanel({ card, copies, margin: wide }));
  }
}

/** A liner is cut at a trimmer: what its ruler doesn't show is left off, far less than what it keeps clear. */
const toRuler =
  (units: Units) =>
  (part: SetPart): SetPart => ({
    ...part,
    width: onRuler(part.width, units, 'down'),
    height: onRuler(part.height, units, 'down'),
  });

/** A common glue line. */
const GLUE: Record<Units['unit'], Length> = { in: inches(3 / 8), mm: millimetres(10) };

const listed = (made: Checked<SetPart | readonly SetPart[]>): SetPart[] =>
  made.ok ? [made.value].flat() : [];

const usualPaper = (kind: PaperKind, kinds: readonly PaperKind[]): PaperAsked =>
  kinds.includes(kind) ? { of: 'kind', kind } : { of: 'any' };
