/** Which paper to take, in one sentence: a piece with its place, a sheet to open, or what to look for. Works nothing out. */
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { Choice, Nearest } from '#core/stash/shelf-search.ts';
import type { Design, Piece } from '#core/stash/stash.ts';
import { printExact, type Units } from '#shared/length.ts';
import { capital } from '../common/words.ts';
import { sayBlanks } from './fold-words.ts';

export interface Papers {
  readonly recipe: Recipe;
  readonly choices: readonly Choice[];
  /** For an envelope of two pieces, one for each. */
  readonly pieces: readonly Piece[];
  readonly nearest: Nearest | null;
  readonly design: Design | undefined;
  readonly chosen: boolean;
  readonly copies: number;
}

/** `Take WK, behind the door.` `Open a sheet of Bramble.` `Nothing on the shelf will do; a square of 9″ would.` */
export function sayPaper(papers: Papers, units: Units): string {
  const [first] = papers.choices;
  if (!first) return sayNone(papers, units);
  if (foldOf(papers.recipe).blanks(papers.recipe).length > 1) return sayBoth(papers, first.piece);
  return papers.copies === 1 ? `${sayTake([first.piece])}.` : sayBatch(first, papers.copies);
}

/** As a sentence begins: `Take WK, behind the door`, `Open a sheet of Bramble`, or one and the other. */
const sayTake = (pieces: readonly Piece[]): string =>
  capital(
    pieces
      .map((piece) => (piece.offcut ? `take ${sayOffcut(piece)}` : `open a sheet of ${piece.design.name}`))
      .join(', and '),
  );

/** Its code and its place, or where it has none what it is of. */
const sayOffcut = ({ offcut, design }: Piece): string =>
  offcut!.place ? `${offcut!.code}, ${offcut!.place}` : `${offcut!.code}, an offcut of ${design.name}`;

function sayBatch({ piece, yields }: Choice, copies: number): string {
  if (yields * piece.count < copies) return `Plan the batch, beginning with ${sayBegin(piece)}.`;
  const needed = Math.ceil(copies / yields);
  if (needed === 1) return `${sayTake([piece])}: it gives all ${copies}.`;
  return piece.offcut
    ? `Take ${needed} of ${sayOffcut(piece)}: they give all ${copies}.`
    : `Open ${needed} sheets of ${piece.design.name}: they give all ${copies}.`;
}

function sayBoth({ pieces, copies }: Papers, first: Piece): string {
  const [one, other] = pieces;
  const apart = one && other && (one.offcut ?? other.offcut) !== null && one.offcut?.id !== other.offcut?.id;
  if (copies === 1 && apart) return `${sayTake(pieces)}.`;
  return `Plan ${copies === 1 ? 'both cuts' : 'the batch'}, beginning with ${sayBegin(first)}.`;
}

const sayBegin = (piece: Piece): string =>
  piece.offcut ? sayOffcut(piece) : `a sheet of ${piece.design.name}`;

function sayNone({ recipe, nearest, chosen, design }: Papers, units: Units): string {
  if (!nearest) return `There is no paper on the shelf yet: it takes ${sayNeeded(recipe, units)}.`;
  const where = chosen && design ? `left of ${design.name}` : 'on the shelf';
  return `Nothing ${where} will do; ${sayNeeded(recipe, units)} would.`;
}

/** `a square of 9″`, `a piece of 8¼ × 11⅝″`, `pieces of … and …`. */
export function sayNeeded(recipe: Recipe, units: Units): string {
  const [blank, second] = foldOf(recipe).blanks(recipe);
  if (second) return `pieces of ${sayBlanks(recipe, units)}`;
  return blank!.width === blank!.height
    ? `a square of ${printExact(blank!.width, units)}`
    : `a piece of ${sayBlanks(recipe, units)}`;
}
