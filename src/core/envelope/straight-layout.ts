/**
 * Straight-sided folds as shapes: each blank as it lies with its inside up, and the closed envelope from both sides.
 * Takes the sheets and the stack of the fold's form; knows no fold in particular.
 */
import { type Polygon, point } from '#core/geometry/point.ts';
import { difference, rectangle } from '#core/geometry/polygon.ts';
import { apply, applyToAll, inOrder, mirrorAt, shift, type Transform } from '#core/geometry/transform.ts';
import { roundLength } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { cardInside, mirrored } from './card-inside.ts';
import type { FlatFlap, FlatLayout, FoldedLayout, ScoreLine } from './fold.ts';
import type { Recipe } from './recipe.ts';
import { lyingOpen, pocketShape, type Straight } from './straight.ts';
import { bandOf, type Form, glueOf, type Sheet, type SheetFlap } from './straight-form.ts';

export interface PlacedSheet {
  readonly blank: Size;
  /** From the back view, opened out, to the blank as it lies with its inside up; and back again. */
  readonly toFlat: Transform;
  readonly fromFlat: Transform;
}

/** The blank is the smallest rectangle round the panel and the strips that its flaps are cut from. */
export function placeSheet(sheet: Sheet): PlacedSheet {
  const corners = [
    sheet.panel,
    ...sheet.flaps.map((flap) => applyToAll(lyingOpen(flap.hinge), flap.strip)),
  ].flat();
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const turnOver = sheet.mirrored ? [mirrorAt(width / 2)] : [];
  return {
    blank: { width: roundLength(width, 'up'), height: roundLength(height, 'up') },
    toFlat: inOrder(shift(-left, -top), ...turnOver),
    fromFlat: inOrder(...turnOver, shift(left, top)),
  };
}

/** One layout for each sheet of the form; scores are numbered on from one sheet to the next. */
export function flatLayouts(form: Form, one: Straight): FlatLayout[] {
  const sheets = form.sheets(one);
  const before = (index: number): number =>
    sheets.slice(0, index).reduce((sum, sheet) => sum + sheet.flaps.length, 0);
  return sheets.map((sheet, index) => flatLayout(sheet, before(index)));
}

export function foldedLayout(form: Form, one: Straight, recipe: Recipe): FoldedLayout {
  const { width, height } = one.pocket;
  const joints = form.joints(one);
  const inside = cardInside(recipe.card, recipe.clearance, recipe.pocket);
  return {
    width,
    height,
    front: { pocket: pocketShape(one), flaps: [], seams: [], glue: [], ...inside },
    back: {
      pocket: pocketShape(one),
      flaps: form.stack(one),
      seams: joints.map(bandOf),
      glue: joints.map(glueOf),
      ...mirrored(inside, width),
    },
  };
}

function flatLayout(sheet: Sheet, scoredBefore: number): FlatLayout {
  const { blank, toFlat } = placeSheet(sheet);
  const onFlat = (polygon: Polygon): Polygon => applyToAll(toFlat, polygon);
  return {
    blank,
    outline: rectangle(0, 0, blank.width, blank.height),
    notches: [],
    scores: sheet.flaps.map((flap, index) => scoreOf(flap, scoredBefore + index + 1, toFlat)),
    pocket: onFlat(sheet.panel),
    flaps: [...sheet.flaps].sort(byLetter).map((flap) => flatFlap(flap, onFlat)),
    seams: sheet.seams.map(onFlat),
    glue: sheet.glue.map(onFlat),
  };
}

const byLetter = (one: SheetFlap, other: SheetFlap): number => (one.letter < other.letter ? -1 : 1);

/** As long as the flap is where it is hinged. */
function scoreOf({ letter, hinge, shape }: SheetFlap, order: number, toFlat: Transform): ScoreLine {
  const ends = shape.filter(({ y }) => y === 0).map(({ x }) => x);
  const place = inOrder(lyingOpen(hinge), toFlat);
  const [from, to] = [Math.min(...ends), Math.max(...ends)].map((x) => apply(place, point(x, 0)));
  return { order, flap: letter, from: from!, to: to! };
}

function flatFlap(
  { letter, hinge, shape, strip, finish }: SheetFlap,
  onFlat: (polygon: Polygon) => Polygon,
): FlatFlap {
  const open = (polygon: Polygon): Polygon => onFlat(applyToAll(lyingOpen(hinge), polygon));
  return { letter, shape: open(shape), trims: difference(open(strip), open(shape)), finish };
}
