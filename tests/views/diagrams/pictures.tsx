/** One function per stored picture: what a maker sees of her cards, her paper and her envelopes. */
import { addressDrawing } from '#core/drawing/address.ts';
import { cardDrawing, cardScale } from '#core/drawing/card.ts';
import type { Drawing } from '#core/drawing/drawing.ts';
import { flatDrawing } from '#core/drawing/flat.ts';
import { type Face, foldedDrawing } from '#core/drawing/folded.ts';
import { frontDrawing } from '#core/drawing/front.ts';
import { lookDrawing } from '#core/drawing/looks.ts';
import { makingDrawing } from '#core/drawing/making.ts';
import { type DrawnPart, partDrawing, partScale } from '#core/drawing/part.ts';
import { type DrawnPiece, pieceDrawing, pieceScale } from '#core/drawing/piece.ts';
import { type Wrapped, wrapPathDrawing } from '#core/drawing/wrap-path.ts';
import { yearDrawing } from '#core/drawing/year.ts';
import type { Step } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { addressPlaces } from '#core/post/address.ts';
import { cardBase } from '#core/sets/base.ts';
import { linerOf } from '#core/sets/envelope.ts';
import { notchedPair } from '#core/sets/notches.ts';
import { tag } from '#core/sets/tag.ts';
import { wrap } from '#core/sets/wraps.ts';
import type { Checked } from '#shared/checked.ts';
import { inches, type Units } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import { MOTIFS, type Swatch } from '#shared/swatch.ts';
import { Picture } from '#views/diagrams/picture.tsx';
import { SwatchChip } from '#views/diagrams/swatch.tsx';

const INCHES: Units = { unit: 'in', step: 16 };
const MILLIMETRES: Units = { unit: 'mm' };

const draw = (id: string, drawing: Drawing): string => String(<Picture drawing={drawing} id={id} />);

const FERN: Swatch = { motif: 'sprigs', ground: '#f4efdf', inks: ['#4f6b4a', '#b8644a'] };

const size = (width: number, height: number) => ({ width: inches(width), height: inches(height) });
const laid = (x: number, y: number, width: number, height: number) => ({
  x: inches(x),
  y: inches(y),
  ...size(width, height),
});

const DRAWN_CARDS = [
  { name: 'Desk note', ...size(5.875, 3) },
  { name: 'Gift tag', ...size(2.25, 3.75) },
  { name: 'Keepsake', ...size(5, 7) },
];

export const cardLong = (): string => drawnCard(0);
export const cardTag = (): string => drawnCard(1);
export const cardKeepsake = (): string => drawnCard(2);

const drawnCard = (index: number): string =>
  draw('card', cardDrawing(DRAWN_CARDS[index]!, INCHES, cardScale(DRAWN_CARDS, 110)));

const OFFCUT: DrawnPiece = {
  code: 'F7',
  ...size(9, 8),
  parts: [{ name: 'Blank', sign: 'B', ...laid(0, 0, 7.5, 7.5) }],
  leftovers: [laid(7.5, 0, 1.5, 8)],
  upright: true,
  swatch: FERN,
};

const SHEET: DrawnPiece = {
  code: 'Fern walk',
  ...size(12, 12),
  parts: [
    ...[0, 1, 2, 3].map((n) => ({
      name: 'Tag blank',
      sign: 'A',
      ...laid((n % 2) * 5.125, n < 2 ? 0 : 5.125, 5.125, 5.125),
    })),
    { name: 'Band', sign: 'C', ...laid(10.25, 0, 0.5, 11) },
    { name: 'Mat', sign: 'D', ...laid(0, 10.25, 4.875, 1.25), lit: true },
  ],
  leftovers: [laid(10.75, 0, 1.25, 12), laid(4.875, 10.25, 5.375, 1.75)],
  upright: true,
  border: inches(1.25),
  swatch: FERN,
};

const PIECE_SCALE = pieceScale([OFFCUT, SHEET], 358, 400);

export const pieceOffcut = (): string => draw('piece', pieceDrawing(OFFCUT, INCHES, PIECE_SCALE));
export const pieceSheet = (): string => draw('piece', pieceDrawing(SHEET, INCHES, PIECE_SCALE));
export const pieceSheetMetric = (): string => draw('piece', pieceDrawing(SHEET, MILLIMETRES, PIECE_SCALE));

const chip = (index: number) => (): string => {
  const motif = MOTIFS[index]!;
  const swatch: Swatch = { motif, ground: '#f4efdf', inks: ['#4f6b4a', '#b8644a', '#2f4a63'] };
  return String(<SwatchChip swatch={swatch} id={`chip-${motif}`} name={motif} size={72} />);
};

export const swatchPlain = chip(0);
export const swatchStripes = chip(1);
export const swatchChecks = chip(2);
export const swatchDots = chip(3);
export const swatchSprigs = chip(4);
export const swatchWaves = chip(5);
export const swatchStars = chip(6);
export const swatchScript = chip(7);
export const swatchBorder = chip(8);

const NOTCHER = {
  inset: inches(7 / 16),
  zeroOffset: inches(0),
  graduation: inches(1 / 8),
  largestSheet: inches(12),
};

const envelope = (width: number, height: number, square: number, start: number): Recipe =>
  tryMeasures({
    card: { ...size(width, height), bulk: inches(1 / 32) },
    notcher: NOTCHER,
    square: inches(square),
    start: inches(start),
  });

/** Both long flaps trimmed; nothing trimmed; slim; standing on its short side; too short for its card. */
const LONG = envelope(5.875, 3, 7.5, 2.75);
const BROAD = envelope(5.375, 4.125, 8, 3.5);
const SLIM = envelope(7, 2, 8, 2.125);
const TALL = envelope(2.75, 4, 6, 3.5);
const SHORT = envelope(6.375, 3, 7.5, 2.75);

const flat = (recipe: Recipe, units: Units = INCHES): string =>
  draw('flat', flatDrawing(recipe, foldOf(recipe).flat(recipe)[0]!, units));

export const flatLong = (): string => flat(LONG);
export const flatLongMetric = (): string => flat(LONG, MILLIMETRES);
export const flatBroad = (): string => flat(BROAD);
export const flatSlim = (): string => flat(SLIM);
export const flatTall = (): string => flat(TALL);

const folded = (recipe: Recipe, face: Face): string =>
  draw('folded', foldedDrawing(recipe, foldOf(recipe).folded(recipe), face, INCHES));

export const foldedLongFront = (): string => folded(LONG, 'front');
export const foldedLongBack = (): string => folded(LONG, 'back');
export const foldedBroadBack = (): string => folded(BROAD, 'back');
export const foldedSlimBack = (): string => folded(SLIM, 'back');
export const foldedTallBack = (): string => folded(TALL, 'back');
export const foldedShortFront = (): string => folded(SHORT, 'front');

const look = (recipe: Recipe, print: Print, swatch: Swatch, nth: number): string => {
  const found = foldOf(recipe).looks(recipe, { print, doubleSided: true })[nth]!;
  return draw(
    'look',
    lookDrawing(found, foldOf(recipe).folded(recipe), { blank: recipe.blank, print, swatch }),
  );
};

const BORDERED: Swatch = { motif: 'border', ground: '#f6efe2', inks: ['#2f4a63', '#a8432f'] };
const ONE_EDGE: Print = { direction: 'one edge', border: inches(1.5) };

export const lookUpright = (): string => look(LONG, { direction: 'upright' }, FERN, 0);
export const lookUprightOtherWay = (): string => look(LONG, { direction: 'upright' }, FERN, 1);
export const lookUprightOtherSide = (): string => look(LONG, { direction: 'upright' }, FERN, 4);
export const lookBorder = (): string => look(LONG, ONE_EDGE, BORDERED, 2);
export const lookBorderTall = (): string => look(TALL, ONE_EDGE, BORDERED, 0);

export const frontPrinted = (): string => {
  const print: Print = { direction: 'upright' };
  const [leaning] = foldOf(LONG).looks(LONG, { print, doubleSided: false });
  const piece = { blank: LONG.blank, print, swatch: FERN };
  return draw('front', frontDrawing('Fern set', foldOf(LONG).folded(LONG), { look: leaning!, piece }));
};
export const frontPlain = (): string => draw('front', frontDrawing('Idea', foldOf(TALL).folded(TALL)));

const making = (kind: Step['kind'], nth = 0, print: Print = { direction: 'upright' }): string => {
  const [look] = foldOf(LONG).looks(LONG, { print, doubleSided: false });
  const steps = foldOf(LONG).steps(LONG, 'anticlockwise', look);
  const at = steps.flatMap((step, index) => (step.kind === kind ? [index] : []))[nth]!;
  const [layout] = foldOf(LONG).flat(LONG, 'anticlockwise');
  return draw('making', makingDrawing(LONG, layout!, { steps, at }, INCHES));
};

export const makingCut = (): string => making('cut');
export const makingLayTop = (): string => making('lay');
export const makingLayBorder = (): string => making('lay', 0, ONE_EDGE);
export const makingLayAnyWay = (): string => making('lay', 0, { direction: 'any way' });
export const makingMeasure = (): string => making('measure');
export const makingTurn = (): string => making('turn', 1);
export const makingNotch = (): string => making('notch', 2);
export const makingScore = (): string => making('score', 2);
export const makingTrim = (): string => making('trim');
export const makingFoldSides = (): string => making('fold');
export const makingFoldBottom = (): string => making('fold', 1);
export const makingGlue = (): string => making('glue');
export const makingClose = (): string => making('close');

const address = (width: number, height: number, runs: 'along' | 'up', units: Units = INCHES): string =>
  draw('address', addressDrawing(addressPlaces(size(width, height), runs)!, units));

export const addressAlong = (): string => address(7.25, 5.25, 'along');
export const addressAlongMetric = (): string => address(7.25, 5.25, 'along', MILLIMETRES);
export const addressUp = (): string => address(7.25, 5.25, 'up');
export const addressSlim = (): string => address(9.5, 4.125, 'along');

const part = (made: Checked<DrawnPart>, units: Units = INCHES): string => {
  if (!made.ok) throw new Error(made.problems[0]!.message);
  return draw('part', partDrawing(made.value, units, partScale(made.value, 260)));
};

const KEEPSAKE = { ...size(5, 7), bulk: inches(1 / 16) };
const BAND = {
  kind: 'belly band',
  card: KEEPSAKE,
  fold: 'left',
  path: 'whole card',
  run: 'across',
  breadth: inches(1.5),
  overlap: inches(0.5),
  ends: 'straight',
  copies: 1,
} as const;

export const partBase = (): string => part(cardBase({ card: KEEPSAKE, fold: 'left', copies: 1 }));
export const partGateMetric = (): string =>
  part(cardBase({ card: KEEPSAKE, fold: 'top and bottom', copies: 1 }), MILLIMETRES);
export const partLiner = (): string => part(linerOf(LONG, { glue: inches(3 / 8), copies: 1 }));
export const partBand = (): string => part(wrap(BAND));
export const partNotched = (): string => {
  const pair = notchedPair({
    panel: size(5.25, 2.25),
    base: size(5.5, 2.5),
    edges: 'top and bottom',
    at: inches(1.125),
    ribbon: inches(1 / 4),
    copies: 1,
  });
  return part(pair.ok ? { ok: true, value: pair.value.base } : pair);
};
export const partTag = (): string =>
  part(tag({ size: size(2, 3.5), corner: inches(3 / 8), hole: inches(1 / 8), copies: 1 }));

const path = (wrapped: Wrapped): string => draw('path', wrapPathDrawing(wrapped));

export const wrapPathWhole = (): string => path({ fold: 'left', path: 'whole card', run: 'across' });
export const wrapPathFrontLeaf = (): string => path({ fold: 'left', path: 'front leaf', run: 'across' });
export const wrapPathInsideBack = (): string => path({ fold: 'left', path: 'inside back', run: 'up' });
export const wrapPathGate = (): string => path({ fold: 'sides', path: 'whole card', run: 'across' });
export const wrapPathEnvelope = (): string => path({ fold: 'none', path: 'whole card', run: 'up' });

const month = (name: string, bought: number, used: number, fromOffcuts = 0, spoiled = 0) => ({
  ...{ name, bought, used, fromOffcuts, spoiled },
});

export const yearOfPaper = (): string =>
  draw(
    'year',
    yearDrawing({
      title: 'Paper, month by month',
      words: 'Twelve months, bought beside used.',
      unit: 'sq ft',
      bars: [
        ...[month('J', 36, 4.2, 1.5), month('F', 0, 7, 7), month('M', 0, 3, 0, 0.8), month('A', 0, 0)],
        ...[month('M', 12, 9.5, 2, 1.1), month('J', 0, 6.2, 1), month('J', 0, 0), month('A', 0, 2.4, 2)],
        ...[month('S', 24, 18, 6.5, 2), month('O', 0, 11, 3), month('N', 6, 14.5, 1, 0.5), month('D', 0, 21)],
      ],
    }),
  );
