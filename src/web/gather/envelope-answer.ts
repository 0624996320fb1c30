/** Gathers what stands under a question on the envelopes page: ways, pieces, looks, other envelopes. Writes nothing. */
import type { jsx } from 'hono/jsx';
import { foldOf } from '#core/envelope/folds.ts';
import { largestAlike, obstacleOf } from '#core/envelope/obstacle.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { smallerEnvelopes } from '#core/envelope/smaller.ts';
import { blankWanted, type Fitting, looksOn, sameMeasures } from '#core/project/fitting.ts';
import type { Tool } from '#core/project/learning.ts';
import { fitReadyMade } from '#core/stash/ready-made.ts';
import { type BlankWanted, type Choice, layOut } from '#core/stash/shelf-search.ts';
import type { Design, Piece } from '#core/stash/stash.ts';
import { firstOfEachFold, rankWays, type Way } from '#core/stash/ways.ts';
import { readId } from '#shared/ids.ts';
import type { Length } from '#shared/length.ts';
import type { EnvelopeAsked } from '#shared/schemas/envelope.ts';
import type { Database } from '#stores/database.ts';
import { readDesign } from '#stores/designs.ts';
import { listReadyMade } from '#stores/ready-made.ts';
import { findChoices, findLeftOut, findNearest, readShelf, type Shelf } from '#stores/search.ts';
import { findWays } from '#stores/ways.ts';
import type { Entry } from '#views/common/field.tsx';
import type { Answered } from '#views/envelopes/answer.tsx';
import { type Place, placeNamed } from '#views/envelopes/places.tsx';
import type { Query } from '#views/envelopes/query.ts';
import { AT_ONCE } from '#views/envelopes/shelf.tsx';
import type { Request } from '../http/env.ts';
import { newToken } from '../http/once.ts';
import { lessonsShown, placeFor } from './lessons.ts';

interface Question {
  readonly asked: EnvelopeAsked;
  readonly tool: Tool;
  readonly fitting: Fitting;
  readonly note: ReturnType<typeof jsx>;
}

/** The answer to a question with what stands under it at the place asked for. */
export async function answerFor(
  c: Request,
  entry: Entry,
  query: Query,
  { asked, tool, fitting, note }: Question,
): Promise<Answered> {
  const db = c.get('db');
  const shelf = await readShelf(db, c.get('settings').keepAtLeast);
  const chosen = asked.design === undefined ? undefined : await designOn(db, shelf, asked.design);
  const from = readId(query.from ?? '') ?? 1;
  const found = await searchFor(db, shelf, {
    asked,
    fitting,
    chosen,
    limit: Math.max(LOOKED_AT, from + AT_ONCE),
  });
  const { ways, recipe, pieces, wanted, all } = found;
  const design = chosen ?? all.choices[0]?.piece.design;
  const { looks, look } = design ? looksOn(recipe, design, asked.look) : { looks: [], look: undefined };
  const obstacle = obstacleOf(recipe);
  const places = placesBeside({ obstacle, looks });
  const shown = placeNamed(query.show, places);
  const some = all.choices.length > 0;
  const projectId = readId(query.project ?? '') ?? null;
  const place = { project: projectId, tool: tool.id, designs: design ? [design] : [] };
  const leftOut = shown === 'paper' ? await findLeftOut(db, shelf, wanted) : undefined;
  return {
    ...{ ways, recipe, pieces, obstacle, shown, places, note, query, entry, design, looks, look },
    lessons: await lessonsShown(c, placeFor(recipe, ['fit', 'paper'], place)),
    units: c.get('units'),
    post: c.get('settings').post,
    alike: obstacle && largestAlike(recipe.card, recipe.notcher, recipe.limits),
    tried: query.chart === 'yes',
    others: fitting.found.filter((other) => !sameMeasures(other, recipe)).slice(0, 8),
    choices: [all.choices.slice(0, 1), leftOut ? all.choices.slice(from, from + AT_ONCE) : []]
      .flat()
      .map((choice) => forCopies(choice, wanted, asked.copies, shelf.keepAtLeast)),
    readyMade: fitReadyMade(await listReadyMade(db), recipe.card, recipe.limits, {
      loose: asked.fit === 'loose',
    }),
    shelf: leftOut && { leftOut, count: leftOut.fitting + all.sheets, from },
    nearest: some ? null : await findNearest(db, shelf, wanted),
    smaller: some ? [] : await findSmaller(db, shelf, recipe),
    chosen: chosen !== undefined,
    copies: asked.copies,
    token: newToken(c),
  };
}

/** So many offcuts, and sheets, are looked at for each fold. */
const LOOKED_AT = 12;

/** Where nothing can be made there is no paper for it; where no paper is known, no look. */
const placesBeside = ({ obstacle, looks }: Pick<Answered, 'obstacle' | 'looks'>): readonly Place[] => [
  'measures',
  ...(obstacle ? [] : (['paper'] as const)),
  ...(obstacle || looks.length === 0 ? [] : (['look'] as const)),
  'post',
  ...(obstacle ? [] : (['others'] as const)),
];

/** One of which nothing is left may still be asked for. */
async function designOn(db: Database, { designs }: Shelf, id: number): Promise<Design | undefined> {
  const design = await readDesign(db, id);
  if (design) designs.set(id, design);
  return design;
}

interface Search {
  readonly asked: EnvelopeAsked;
  readonly fitting: Fitting;
  readonly chosen: Design | undefined;
  readonly limit: number;
}

/** What the shelf has for the best of each fold and for the envelope shown: the one asked for, or the best of those. */
async function searchFor(db: Database, shelf: Shelf, { asked, fitting, chosen, limit }: Search) {
  const best = firstOfEachFold(fitting.found);
  const shown = hasChosen(asked) ? [fitting.recipe] : best;
  const recipes = [...best, ...shown.filter((one) => !best.some((other) => sameMeasures(one, other)))];
  const wantedOf = (recipe: Recipe): BlankWanted => wantedOn(recipe, chosen, asked.look);
  const blanks = [...recipes.map((recipe) => blankWanted(recipe)), ...shown.map(wantedOf)];
  const found = await findChoices(db, shelf, blanks, { limit });
  const firsts = recipes.map((recipe, index) => ({ recipe, choices: found[index]!.choices }));
  const all = await findWays(db, shelf, firsts);
  const ways = rankWays(all.slice(0, best.length));
  const recipe = hasChosen(asked) ? fitting.recipe : ways[0]!.recipe;
  const known = all.find((way) => sameMeasures(way.recipe, recipe))!;
  return {
    ...{ ways, recipe },
    pieces: piecesNamed(known, chosen),
    wanted: wantedOf(recipe),
    all: found[recipes.length + shown.indexOf(recipe)]!,
  };
}

const wantedOn = (recipe: Recipe, chosen: Design | undefined, picked: string | undefined): BlankWanted =>
  chosen
    ? { ...blankWanted(recipe, looksOn(recipe, chosen, picked).look), designs: [chosen.id] }
    : blankWanted(recipe);

const hasChosen = ({ fold, square, start, cShape, dShape }: EnvelopeAsked): boolean =>
  fold !== undefined ||
  square !== undefined ||
  start !== undefined ||
  cShape !== 'as proposed' ||
  dShape !== 'as proposed';

/** A piece for each blank of an envelope that takes two, of the design she chose where she chose one. */
const piecesNamed = ({ recipe, pieces }: Way, chosen: Design | undefined): readonly Piece[] =>
  foldOf(recipe).blanks(recipe).length > 1 && pieces.every(({ design }) => !chosen || design.id === chosen.id)
    ? pieces
    : [];

/** More blanks than these are not told apart in a picture. */
const DRAWN_AT_MOST = 24;

/** Drawn with as many blanks as are wanted of it. */
function forCopies(choice: Choice, wanted: BlankWanted, copies: number, keepAtLeast: Length): Choice {
  const cut = layOut(choice.piece, wanted, Math.min(copies, choice.yields, DRAWN_AT_MOST), keepAtLeast);
  return cut ? { ...choice, cut } : choice;
}

/** For each fit the first envelope smaller than this one that something on the shelf will do for. */
async function findSmaller(
  db: Database,
  shelf: Shelf,
  recipe: Recipe,
): Promise<{ recipe: Recipe; choice: Choice }[]> {
  const smaller = (['easy', 'snug'] as const).map((fit) => smallerEnvelopes(recipe, fit));
  const wanted = smaller.flat().map((other) => blankWanted(other));
  const found = await findChoices(db, shelf, wanted, { limit: 1 });
  const choices = new Map(smaller.flat().map((other, index) => [other, found[index]!.choices[0]]));
  return smaller.flatMap((others) => {
    const first = others.find((other) => choices.get(other));
    return first ? [{ recipe: first, choice: choices.get(first)! }] : [];
  });
}
