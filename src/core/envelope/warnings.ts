/**
 * Looks a recipe over and says in plain words what the maker should know before she cuts. Messages carry no figures:
 * `describeWarning` adds the amount in the reader's units.
 */

import { printArea } from '#shared/area.ts';
import { add, inches, type Length, length, printLength, subtract, type Units } from '#shared/length.ts';
import { longer, type Size, shorter } from '#shared/size.ts';
import type { FoldedView } from './fold.ts';
import { openBack } from './open-back.ts';
import { beyondOuter } from './ranking.ts';
import type { Recipe, Want, Warning, WarningKind } from './recipe.ts';
import { flapAt } from './turned-square.ts';

/** Glue on a narrower strip than this gives way when the card is pushed in (our own choice). */
const LEAST_GLUE = inches(1 / 8);

type Unwarned = Omit<Recipe, 'warnings'>;

/** What the measures themselves call for, the gravest first; `back` is the envelope as they fold it. */
export const warningsOf = (recipe: Unwarned, back: Pick<FoldedView, 'pocket' | 'flaps'>): Warning[] =>
  [
    wontGo(recipe),
    turnTheCard(recipe),
    largerThanTool(recipe),
    ...passingFlaps(recipe),
    openBack(back),
    flapsApart(recipe),
    thinSeam(recipe),
    cutSeam(recipe),
  ].filter((warning) => warning !== undefined);

/** The kinds that come from a wish and not from the measures. */
export const WISH_WARNINGS: readonly WarningKind[] = ['larger than the limit', 'print lies otherwise'];

/** What the wish calls for that the recipe does not give. */
export const wishWarnings = (recipe: Unwarned, want: Want): Warning[] =>
  [beyondLimit(recipe.pocket, want), otherLie(recipe, want)].filter((warning) => warning !== undefined);

/** A sentence, with the amount in the reader's units where there is one. */
export function describeWarning({ kind, message, amount, area }: Warning, units: Units): string {
  if (area !== undefined) return `${message} ${AMOUNT[kind](printArea(area, units))}`;
  return amount === undefined ? message : `${message} ${AMOUNT[kind](printLength(amount, units))}`;
}

const AMOUNT: Record<WarningKind, (amount: string) => string> = {
  "won't go": (amount) => `It lacks ${amount}.`,
  'turn the card': (amount) => amount,
  'larger than the tool': (amount) => `It is ${amount} too long.`,
  'larger than the limit': (amount) => `It is ${amount} over.`,
  'flaps do not meet': (amount) => `The gap is ${amount}.`,
  'back open': (amount) => `${amount} of it lie bare.`,
  'flap passes the fold': (amount) => `It sticks out by ${amount}.`,
  'seam too thin': (amount) => `There is room for ${amount} of glue.`,
  'seam cut away': (amount) => `Leave at least ${amount} from the score.`,
  'print lies otherwise': (amount) => amount,
};

const warn = (kind: WarningKind, message: string, amount?: Length): Warning => ({
  kind,
  message,
  ...(amount !== undefined && { amount }),
});

function wontGo({ clearance }: Unwarned): Warning | undefined {
  const least = shorter(clearance);
  return least < 0
    ? warn("won't go", 'The card is too large for this pocket.', length(0 - least))
    : undefined;
}

const turnTheCard = ({ cardTurned }: Unwarned): Warning | undefined =>
  cardTurned ? warn('turn the card', 'The card goes in only after a quarter turn.') : undefined;

function largerThanTool({ blank, notcher }: Unwarned): Warning | undefined {
  const over = longer(blank) - notcher.largestSheet;
  return over > 0
    ? warn('larger than the tool', 'The sheet is larger than your tool takes.', length(over))
    : undefined;
}

function passingFlaps({ flaps, pocket }: Unwarned): Warning[] {
  return flaps.flatMap(({ letter, side, reach }) => {
    const across = side === 'left' || side === 'right' ? pocket.width : pocket.height;
    if (reach <= across) return [];
    return [
      warn('flap passes the fold', `Flap ${letter} passes the opposite fold.`, subtract(reach, across)),
    ];
  });
}

function flapsApart({ flaps, pocket }: Unwarned): Warning | undefined {
  const gap = shorter(pocket) - add(flapAt(flaps, 'C').reach, flapAt(flaps, 'D').reach);
  if (gap < 0) return undefined;
  return warn('flaps do not meet', 'The two long flaps do not reach over each other.', length(gap));
}

function cutSeam({ flaps, seam }: Unwarned): Warning | undefined {
  const { keepsSeamTo, reach } = flapAt(flaps, 'C');
  if (seam.areaUncut - seam.area < seam.areaUncut / 1000 || keepsSeamTo === undefined) return undefined;
  const message = 'Part of the seam is cut away with flap C.';
  return warn('seam cut away', message, reach < keepsSeamTo ? keepsSeamTo : undefined);
}

const thinSeam = ({ seam }: Unwarned): Warning | undefined =>
  seam.glueWidth < LEAST_GLUE
    ? warn('seam too thin', 'The seam is too thin to glue well.', seam.glueWidth)
    : undefined;

function beyondLimit(pocket: Size, want: Want): Warning | undefined {
  const over = beyondOuter(pocket, want);
  return over > 0
    ? warn('larger than the limit', 'The envelope is larger than you allow.', length(over))
    : undefined;
}

function otherLie({ front }: Unwarned, { front: wanted }: Want): Warning | undefined {
  if (wanted === undefined || wanted === front) return undefined;
  return warn('print lies otherwise', `On this fold the print lies ${front}, not ${wanted}.`);
}
