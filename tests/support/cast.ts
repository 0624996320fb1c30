/**
 * The small cast that all tests share: three pads, a few designs, offcuts, and a card. Knows only what is on the shelf;
 * a test that needs more adds it by the same verbs.
 */
import type { Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import type { NewProject } from '#core/project/journal.ts';
import type { BlankWanted } from '#core/stash/shelf-search.ts';
import type { Design, NewDesign, NewOffcut, NewPad, Offcut } from '#core/stash/stash.ts';
import { inches } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import type { Swatch } from '#shared/swatch.ts';
import type { Database } from '#stores/database.ts';
import { addDesign } from '#stores/designs.ts';
import { addOffcut } from '#stores/offcuts.ts';
import { addPad } from '#stores/pads.ts';

/** The first evening; `later(n)` is n minutes after it. */
export const FIRST = '2026-03-01T19:00:00.000Z';

export const later = (minutes: number): string =>
  new Date(Date.parse(FIRST) + minutes * 60_000).toISOString();

export const size = (width: number, height: number) => ({ width: inches(width), height: inches(height) });

const SWATCH: Swatch = { motif: 'sprigs', ground: '#f4efe6', inks: ['#3f6b4f'] };

export const MEADOW: NewPad = {
  name: 'Meadow walk',
  kind: 'patterned',
  sheet: size(12, 12),
  measured: {},
  strip: null,
  grammage: 180,
  lowMark: 6,
  source: 'a birthday',
  note: '',
};

export const PLAIN: NewPad = {
  ...MEADOW,
  name: 'White card',
  kind: 'cardstock',
  sheet: size(8.5, 11),
  grammage: 216,
  lowMark: 10,
};

const design = (name: string, print: Print): NewDesign => ({
  name,
  print,
  doubleSided: false,
  swatch: SWATCH,
});

export const FERN = design('Fern', { direction: 'any way' });
export const HARE = design('Hare', { direction: 'upright' });
export const HEM = design('Hem', { direction: 'one edge', border: inches(1.5) });
const WHITE = design('White', { direction: 'any way' });

/** The blank of a diagonal fold: its print lies at 45° however it is turned. */
export const SQUARE_8: BlankWanted = { ...size(8, 8), mayTurn: true };

/** The blank of a straight fold whose print must run up the front. */
export const UPRIGHT_4_BY_9: BlankWanted = { ...size(4, 9), mayTurn: false };

export const scrap = (width: number, height: number, rest: Partial<NewOffcut> = {}): NewOffcut => ({
  ...size(width, height),
  border: false,
  place: 'tray 1',
  note: '',
  ...rest,
});

/** The card that the projects are for, and the first envelope that fits it on a tool nobody has measured yet. */
export const CARD = { ...size(5.875, 3), bulk: inches(1 / 32) };

const UNTRIED = {
  inset: inches(7 / 16),
  zeroOffset: inches(0),
  graduation: inches(1 / 8),
  largestSheet: inches(12),
};

export const RECIPE: Recipe = solveEnvelope({ card: CARD, notcher: UNTRIED })[0]!;

/** The blank that the recipe asks for. */
export const BLANK: BlankWanted = { ...RECIPE.blank, mayTurn: true };

export const THANKS: NewProject = { title: 'Thank you, neighbours', card: CARD, quantity: 3, recipe: RECIPE };

export interface Cast {
  readonly fern: Design;
  readonly hare: Design;
  readonly hem: Design;
  readonly white: Design;
  /** Fern, 8½ × 8½: the least regretted for a square of 8. */
  readonly corner: Offcut;
  /** Fern, three strips of 12 × 3. */
  readonly strips: Offcut;
  /** Hare, 9 × 4, upright. */
  readonly lying: Offcut;
}

/** Sheets: 5 of Fern, 3 of Hare, 2 of Hem, 20 of White. */
export async function fillShelf(db: Database): Promise<Cast> {
  const meadow = await addPad(db, MEADOW);
  const plain = await addPad(db, PLAIN);
  const add = async (pad: number, one: NewDesign, sheets: number): Promise<Design> =>
    (await addDesign(db, { pad, design: one, sheets, at: FIRST }))!;
  const fern = await add(meadow.id, FERN, 5);
  const hare = await add(meadow.id, HARE, 3);
  const hem = await add(meadow.id, HEM, 2);
  const white = await add(plain.id, WHITE, 20);
  const shelve = async (of: Design, offcut: NewOffcut, count = 1): Promise<Offcut> =>
    (await addOffcut(db, { design: of.id, offcut, count, at: FIRST }))!;
  return {
    fern,
    hare,
    hem,
    white,
    corner: await shelve(fern, scrap(8.5, 8.5)),
    strips: await shelve(fern, scrap(12, 3), 3),
    lying: await shelve(hare, scrap(9, 4, { place: 'tray 2' })),
  };
}
