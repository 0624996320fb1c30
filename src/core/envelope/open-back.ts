/**
 * Where the folded flaps leave an envelope's back open: the pocket less the union of all that lies over it. Takes the
 * closed view as it is; knows no fold and no measures.
 */
import type { Polygon } from '#core/geometry/point.ts';
import { area, extent, overlap, rectangle, totalArea, without } from '#core/geometry/polygon.ts';
import { PER_INCH } from '#shared/length.ts';
import type { FoldedView } from './fold.ts';
import type { Warning } from './recipe.ts';

/** A warning with the area and its place, seen from the back; undefined where nothing but a pinhole is open. */
export function openBack({ pocket, flaps }: Pick<FoldedView, 'pocket' | 'flaps'>): Warning | undefined {
  const bare = flaps.reduce(
    (rest: Polygon[], { shape }) => rest.flatMap((piece) => without(piece, shape)),
    [pocket],
  );
  const open = totalArea(bare) / (PER_INCH * PER_INCH);
  if (open < PINHOLE) return undefined;
  const message = `The flaps leave the back open ${placesOf(bare, pocket).join(' and ')}.`;
  return { kind: 'back open', message, area: open };
}

/** In square inches; our own choice. Tabs and tapers leave less than this in a corner. */
const PINHOLE = 0.01;

/** A ninth of the back is named when at least this share of what is open lies in it, or it has the most. */
const SHARE = 1 / 4;

const COLUMNS = ['at the left', 'in the middle', 'at the right'];
const ROWS = [' along the top', '', ' along the bottom'];

function placesOf(bare: readonly Polygon[], pocket: Polygon): string[] {
  const [width, height] = [extent(pocket, { x: 1, y: 0 }) / 3, extent(pocket, { x: 0, y: 1 }) / 3];
  const cells = ROWS.flatMap((row, y) =>
    COLUMNS.map((column, x) => {
      const cell = rectangle(x * width, y * height, width, height);
      return { words: column + row, area: bare.reduce((sum, one) => sum + area(overlap(one, cell)), 0) };
    }),
  );
  const least = Math.min(SHARE * totalArea(bare), Math.max(...cells.map((cell) => cell.area)));
  return cells.filter((cell) => cell.area >= least).map(({ words }) => words);
}
