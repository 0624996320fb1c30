/** A project and its envelopes in words. Knows no markup and no drawings. */

import { foldOf } from '#core/envelope/folds.ts';
import { startMoves } from '#core/project/in-use.ts';
import type { Envelope, Project, ProjectState } from '#core/project/journal.ts';
import type { Next } from '#core/project/next.ts';
import type { Known, WorkingMeasures } from '#core/project/working-measures.ts';
import type { Design, Offcut, PieceRef } from '#core/stash/stash.ts';
import { printExact, printExactSize, type Units } from '#shared/length.ts';
import type { Fit } from '#shared/outcome.ts';
import type { Size } from '#shared/size.ts';

export const SAY_STATE: Record<ProjectState, string> = {
  idea: 'idea',
  planned: 'planned',
  cut: 'paper cut',
  made: 'made',
};

/** What one sets, and how the card sat: `9¹⁄₁₆″, start 5¼″, easy`; another fold has its blank alone. */
export function sayMeasures({ recipe, fit }: WorkingMeasures, units: Units): string {
  const blanks = foldOf(recipe)
    .blanks(recipe)
    .map((blank) => printBlank(blank, units))
    .join(' and ');
  const start = startMoves(recipe) ? [`start ${printExact(recipe.starts[0], units)}`] : [];
  return [blanks, ...start, sayFit(fit)].join(', ');
}

/** A square by its side alone. */
const printBlank = (blank: Size, units: Units): string =>
  blank.width === blank.height ? printExact(blank.width, units) : printExactSize(blank, units);

const sayFit = (fit: Fit): string => fit.replace("'", '’');

export const SAY_KNOWN: Record<Known, string> = {
  'made and measured': 'made and measured',
  made: 'made, not measured',
  'worked out': 'worked out, not made yet',
  "didn't work": 'made, and it didn’t work',
};

/** The one thing to do next, as a command. */
export function sayNext(next: Next): string {
  switch (next.kind) {
    case 'choose envelope':
      return 'Choose its envelope';
    case 'take paper':
      return next.missing === 1
        ? 'Take one blank from the shelf'
        : `Take ${next.missing} blanks from the shelf`;
    case 'make trial':
      return 'Make the trial piece';
    case 'make':
      return `Fold envelope ${next.envelope.number}`;
    case 'write down':
      return 'Write down how it came out';
    case 'lesson':
      return 'What did this one teach you?';
    case 'nothing':
      return 'Nothing is left to do.';
  }
}

export function nextAddress({ id }: Project, next: Next): string {
  switch (next.kind) {
    case 'make trial':
      return `/projects/${id}/make`;
    case 'make':
      return `/projects/${id}/make?envelope=${next.envelope.number}&step=1`;
    case 'write down':
      return `/projects/${id}/outcomes/new?envelope=${next.envelopes[0]!.number}`;
    default:
      return `/envelopes?project=${id}`;
  }
}

/** `Envelope 3`, `Envelopes 2–5`, `Trial piece from scrap`. */
export function nameOf(group: readonly Envelope[]): string {
  const [first, last] = [group[0]!, group.at(-1)!];
  const numbers = first === last ? `${first.number}` : `${first.number}–${last.number}`;
  const name = `${first === last ? 'Envelope' : 'Envelopes'} ${numbers}`;
  if (!first.trial) return name;
  return first.cut === null ? `${name}, tried on scrap` : `${name}, tried first`;
}

/** `offcut K7 of Fern`, `the sheets of Fern`: for sentences. */
export const sayPiece =
  (designs: ReadonlyMap<number, Design>, offcuts: ReadonlyMap<number, Offcut>) =>
  ({ design, offcut }: PieceRef): string => {
    const name = designs.get(design)?.name ?? 'a design that is gone';
    return offcut === null ? `the sheets of ${name}` : `offcut ${offcuts.get(offcut)?.code ?? ''} of ${name}`;
  };
