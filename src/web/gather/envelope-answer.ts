/** Gathers what stands under a question on the envelopes page: ways, pieces, looks, other envelopes. Writes nothing. */
import { jsx } from 'hono/jsx';
import { foldOf } from '#core/envelope/folds.ts';
import { largestAlike, obstacleOf } from '#core/envelope/obstacle.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { blankWanted, type Fitting, looksOn, sameMeasures } from '#core/project/fitting.ts';
import { fitReadyMade } from '#core/stash/ready-made.ts';
import { type BlankWanted, type Choice, layOut } from '#core/stash/shelf-search.ts';
import type { Design, Piece } from '#core/stash/stash.ts';
import { firstOfEachFold, type Way } from '#core/stash/ways.ts';
import type { Length } from '#shared/length.ts';
import type { WantedFit } from '#shared/outcome.ts';
import type { EnvelopeAsked } from '#shared/schemas/envelope.ts';
import { areaOf } from '#shared/size.ts';
import type { Database } from '#stores/database.ts';
import { readDesign } from '#stores/designs.ts';
import { listReadyMade } from '#stores/ready-made.ts';
import { findLeftOut, findPieces } from '#stores/search.ts';
import { findWays } from '#stores/ways.ts';
import type { Entry } from '#views/common/field.tsx';
import { Answer } from '#views/envelopes/answer.tsx';
import type { Query } from '#views/envelopes/query.ts';
import type { Request } from '../http/env.ts';
import { newToken } from '../http/once.ts';

/** The answer to a question with everything that stands under it. */
export async function answerFor(
  c: Request,
  entry: Entry,
  query: Query,
  { asked, fitting }: { readonly asked: EnvelopeAsked; readonly fitting: Fitting },
): Promise<ReturnType<typeof jsx>> {
  const db = c.get('db');
  const { recipe: asAsked, found } = fitting;
  const ways = await findWays(db, firstOfEachFold(found));
  const recipe = hasChosen(asked) ? asAsked : ways[0]!.recipe;
  const chosen = asked.design === undefined ? undefined : await readDesign(db, asked.design);
  const { look: picked } = chosen ? looksOn(recipe, chosen, asked.look) : { look: undefined };
  const wanted = { ...blankWanted(recipe, picked), ...(chosen && { designs: [chosen.id] }) };
  const pieces = await findPieces(db, wanted);
  const design = chosen ?? pieces.choices[0]?.piece.design;
  const { looks, look } = design ? looksOn(recipe, design, asked.look) : { looks: [], look: undefined };
  const obstacle = obstacleOf(recipe);
  return jsx(Answer, {
    units: c.get('units'),
    post: c.get('settings').post,
    query,
    entry,
    recipe,
    obstacle,
    alike: obstacle && largestAlike(recipe.card, recipe.notcher, recipe.limits),
    tried: query.chart === 'yes',
    ways,
    pieces: await piecesNamed(db, recipe, ways, chosen),
    others: found.filter((other) => !sameMeasures(other, recipe)).slice(0, 8),
    choices: pieces.choices.map((choice) =>
      forCopies(choice, wanted, asked.copies, c.get('settings').keepAtLeast),
    ),
    readyMade: fitReadyMade(await listReadyMade(db), recipe.card, recipe.limits, {
      loose: asked.fit === 'loose',
    }),
    leftOut: await findLeftOut(db, wanted),
    nearest: pieces.nearest,
    smaller: pieces.choices.length > 0 ? [] : await smallerOnes(db, recipe),
    design,
    chosen: chosen !== undefined,
    looks,
    look,
    copies: asked.copies,
    token: newToken(c),
  });
}

const hasChosen = ({ fold, square, start, cShape, dShape }: EnvelopeAsked): boolean =>
  fold !== undefined ||
  square !== undefined ||
  start !== undefined ||
  cShape !== 'as proposed' ||
  dShape !== 'as proposed';

/** A piece for each blank of an envelope that takes two, of the design she chose where she chose one. */
async function piecesNamed(
  db: Database,
  recipe: Recipe,
  ways: readonly Way[],
  chosen: Design | undefined,
): Promise<readonly Piece[]> {
  if (foldOf(recipe).blanks(recipe).length === 1) return [];
  const known = ways.find((way) => sameMeasures(way.recipe, recipe)) ?? (await findWays(db, [recipe]))[0]!;
  return known.pieces.every(({ design }) => !chosen || design.id === chosen.id) ? known.pieces : [];
}

/** More blanks than these are not told apart in a picture. */
const DRAWN_AT_MOST = 24;

/** Drawn with as many blanks as are wanted of it. */
function forCopies(choice: Choice, wanted: BlankWanted, copies: number, keepAtLeast: Length): Choice {
  const cut = layOut(choice.piece, wanted, Math.min(copies, choice.yields, DRAWN_AT_MOST), keepAtLeast);
  return cut ? { ...choice, cut } : choice;
}

/** For each fit the first envelope smaller than this one that something on the shelf will do for. */
async function smallerOnes(db: Database, recipe: Recipe): Promise<{ recipe: Recipe; choice: Choice }[]> {
  const { card, notcher, limits } = recipe;
  const found: { recipe: Recipe; choice: Choice }[] = [];
  for (const fit of ['easy', 'snug'] as const satisfies readonly WantedFit[]) {
    const smaller = solveEnvelope({ card, notcher, limits, want: { fit }, folds: [recipe.fold] }).filter(
      (other) => areaOf(other.blank) < areaOf(recipe.blank) && other.fit === fit,
    );
    for (const other of smaller) {
      const { choices } = await findPieces(db, blankWanted(other), { limit: 1 });
      if (choices[0]) found.push({ recipe: other, choice: choices[0] });
      if (choices[0]) break;
    }
  }
  return found;
}
