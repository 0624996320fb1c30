/**
 * The looks of straight-sided folds: the print stays straight, and the recipe says which way it runs on the front.
 * Carries the print through the fold as transforms; knows no motif and no colour.
 */
import { foldOver, inOrder, mirrorAt, shift, type Transform, turn } from '#core/geometry/transform.ts';
import type { Print } from '#shared/print.ts';
import type { Look, LookPaper, Placement } from './fold.ts';
import { placementOf } from './placement.ts';
import type { FlapLetter, Recipe, Side } from './recipe.ts';
import type { Form, Sheet } from './straight-form.ts';
import { placeSheet } from './straight-layout.ts';
import { straightOf, uprightLie } from './straight-recipe.ts';

/** The print with its top one way and the other; more where the paper's other side may come out. */
export function straightLooks(form: Form, recipe: Recipe, { print, doubleSided }: LookPaper): Look[] {
  const faces: Placement['faceDown'][] = doubleSided ? ['print', 'back'] : ['print'];
  const upright = recipe.front === uprightLie(recipe.pocket);
  const turns = print.direction === 'any way' ? [upright ? 0 : 1] : upright ? [0, 2] : [3, 1];
  return faces.flatMap((faceDown) =>
    turns.map((quarters) => lookOf(form, recipe, { faceDown, quarters }, print)),
  );
}

function lookOf(
  form: Form,
  recipe: Recipe,
  { faceDown, quarters }: { readonly faceDown: Placement['faceDown']; readonly quarters: number },
  print: Print,
): Look {
  const sheets = form.sheets(straightOf(recipe));
  const told = print.direction !== 'any way';
  const face = faceDown === 'back' ? 'Other side out' : 'Print out';
  return {
    id: told ? `${faceDown}-${ON_FRONT[quarters]}` : faceDown,
    words: told ? `${face}, ${WORDS[ON_FRONT[quarters]!]}` : face,
    placement: placementOf(faceDown, quarters, print),
    front: inOrder(backOf(sheets[0]!, quarters), mirrorAt(recipe.pocket.width / 2)),
    flaps: recipe.flaps.map(({ letter }) => ({ letter, transform: onBack(sheets, letter, quarters) })),
  };
}

/** Where the top of the print points on the front, for each way that it points on the blank with its inside up. */
const ON_FRONT: readonly Side[] = ['top', 'left', 'bottom', 'right'];

const WORDS: Readonly<Record<Side, string>> = {
  top: 'its top up',
  bottom: 'its top down',
  left: 'its top to the left',
  right: 'its top to the right',
};

/** From the outer face, upright, to the sheet in the back view, opened out. */
function backOf(sheet: Sheet, quarters: number): Transform {
  const { blank, fromFlat } = placeSheet(sheet);
  const { width, height } = blank;
  const [across, up] = quarters % 2 === 0 ? [width, height] : [height, width];
  return inOrder(
    mirrorAt(across / 2),
    shift(-across / 2, -up / 2),
    turn(2 * quarters),
    shift(width / 2, height / 2),
    fromFlat,
  );
}

/** The outer face of a flap; of C, where it is a panel of its own, of that panel. */
function onBack(sheets: readonly Sheet[], letter: FlapLetter, quarters: number): Transform {
  const sheet = sheets.find(({ flaps }) => flaps.some((flap) => flap.letter === letter));
  if (!sheet) return backOf(sheets.find(({ mirrored }) => mirrored)!, quarters);
  const { hinge } = sheet.flaps.find((flap) => flap.letter === letter)!;
  return inOrder(backOf(sheet, quarters), foldOver(hinge));
}
