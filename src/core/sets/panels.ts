/** What is layered onto a card: mats and panel on its front, a panel or a folded insert inside. Knows no paper. */
import type { Checked, Problem } from '#shared/checked.ts';
import { type Length, length, subtract, times } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { copiesProblem, ifSound, negativeProblem, type SetPart, sizeProblems, type Wanted } from './part.ts';

export interface FrontWish extends Wanted {
  readonly card: Size;
  /** What shows of each layer around the next, from the card inwards: one for each layer. */
  readonly margins: readonly Length[];
}

/** Mats from the largest to the smallest, the front panel last; each is its margin smaller on all four sides. */
export function frontPanels(wish: FrontWish): Checked<SetPart[]> {
  const problems = [...sizeProblems(wish.card), ...copiesProblem(wish), ...marginProblems(wish)];
  return ifSound(problems, () =>
    wish.margins.map((_, index) => ({
      ...panel(layerName(index, wish.margins.length), wish),
      ...shrunk(wish.card, wish.margins.slice(0, index + 1)),
    })),
  );
}

export interface InsideWish extends Wanted {
  readonly card: Size;
  readonly margin: Length;
}

/** A panel for the inside of the back leaf, to write on. */
export function insidePanel(wish: InsideWish): Checked<SetPart> {
  const problems = [...sizeProblems(wish.card), ...copiesProblem(wish), ...insideProblems(wish)];
  return ifSound(problems, () => ({ ...panel('Inside panel', wish), ...shrunk(wish.card, [wish.margin]) }));
}

/**
 * A thin sheet folded once and laid into a book-folded card: fold in fold, and the margin at the three other sides.
 */
export function foldedInsert(wish: InsideWish): Checked<SetPart> {
  const problems = [...sizeProblems(wish.card), ...copiesProblem(wish), ...insideProblems(wish)];
  return ifSound(problems, () => {
    const leaf = subtract(wish.card.width, wish.margin);
    return {
      ...panel('Insert', wish),
      width: times(leaf, 2),
      height: subtract(wish.card.height, times(wish.margin, 2)),
      grain: 'height',
      scores: [{ from: 'left', at: leaf }],
      notes: ['Glue or tie it along the fold only, so that the card still opens flat.'],
    };
  });
}

const panel = (name: string, { copies, upright }: Wanted): Omit<SetPart, 'width' | 'height'> => ({
  name,
  copies,
  material: 'paper',
  upright: upright ?? false,
  scores: [],
  notes: [],
});

const layerName = (index: number, count: number): string => {
  if (index === count - 1) return 'Front panel';
  return count === 2 ? 'Mat' : `Mat ${index + 1}`;
};

function shrunk(card: Size, margins: readonly Length[]): Size {
  const both = margins.reduce<number>((sum, margin) => sum + 2 * margin, 0);
  return { width: length(card.width - both), height: length(card.height - both) };
}

function marginProblems({ card, margins }: FrontWish): Problem[] {
  if (margins.length === 0) return [{ field: 'margins', message: 'Give a margin for at least one layer.' }];
  const negative = margins.flatMap((margin, index) =>
    negativeProblem(margin, `margins.${index}`, 'A margin'),
  );
  if (negative.length > 0) return negative;
  const tooWide = margins.findIndex((_, index) => isNothing(shrunk(card, margins.slice(0, index + 1))));
  return tooWide < 0 ? [] : [{ field: `margins.${tooWide}`, message: NOTHING_LEFT }];
}

function insideProblems({ card, margin }: InsideWish): Problem[] {
  const negative = negativeProblem(margin, 'margin', 'A margin');
  return isNothing(shrunk(card, [margin]))
    ? [...negative, { field: 'margin', message: NOTHING_LEFT }]
    : negative;
}

const NOTHING_LEFT = 'With this margin nothing is left of the layer.';

const isNothing = ({ width, height }: Size): boolean => width <= 0 || height <= 0;
