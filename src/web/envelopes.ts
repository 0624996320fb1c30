/** The envelopes page: from the card in hand to a recipe, its look and the paper for it. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { THIN_BULK } from '#core/envelope/fit.ts';
import type { Notcher, Recipe, Want } from '#core/envelope/recipe.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { blankWanted, type Fitting, fitEnvelope, looksOn } from '#core/project/fitting.ts';
import type { Project } from '#core/project/journal.ts';
import { fitReadyMade } from '#core/project/ready-made.ts';
import { type BlankWanted, type Choice, layOut } from '#core/project/search.ts';
import { firstOfEachFold } from '#core/project/ways.ts';
import type { Checked, Problem } from '#shared/checked.ts';
import { readId } from '#shared/ids.ts';
import { type Length, typedLength, type Units } from '#shared/length.ts';
import { WANTED_FITS, type WantedFit } from '#shared/outcome.ts';
import { type EnvelopeAsked, envelopeForm } from '#shared/schemas/envelope.ts';
import type { Size } from '#shared/size.ts';
import { listCardSizes } from '#stores/card-sizes.ts';
import type { Database } from '#stores/database.ts';
import { readDesign } from '#stores/designs.ts';
import { chosenNotcher } from '#stores/notchers.ts';
import { readProject } from '#stores/projects.ts';
import { listReadyMade } from '#stores/ready-made.ts';
import { findPieces } from '#stores/search.ts';
import type { Settings } from '#stores/settings.ts';
import { findWays } from '#stores/ways.ts';
import { Answer, NoAnswer } from '#views/envelopes/answer.tsx';
import { EnvelopesPage, LiveNotes } from '#views/envelopes/page.tsx';
import { asking, measuresOf, UNCHOSEN } from '#views/envelopes/query.ts';
import type { Entry } from '#views/parts/field.tsx';
import type { Env, Request } from './env.ts';
import { check, entryOf, readQuery, statusOf, type Typed, tellRounding } from './form.ts';
import { notFound } from './not-found.ts';
import { newToken } from './once.ts';
import { goTo, reply } from './reply.ts';

export const envelopes = new Hono<Env>();

const LENGTH_FIELDS = ['width', 'height', 'bulk', 'boxWidth', 'boxHeight', 'square', 'start'];

envelopes.get('/', (c) => showEnvelopes(c, { typed: readQuery(c), problems: [] }));

/** The page for what was typed; `problems` come from an action that was refused with the same fields. */
export async function showEnvelopes(c: Request, { typed, problems }: Entry): Promise<Response> {
  const units = c.get('units');
  const project = await projectAsked(c, typed);
  if (project === null) return notFound(c);
  if (project && !typed.width && project.card) return goTo(c, asking(carriedFrom(project, units), {}));
  if (!typed.width && !typed.height)
    return show(c, { typed, problems }, project, 'Tap a card, or type its size.');
  const answered = await answerTo(c, typed);
  const entry = tellRounding(entryOf(typed, [...problems, ...answered.problems]), LENGTH_FIELDS, units);
  if (!answered.fitting) return show(c, entry, project, 'The envelope follows here.');
  return show(c, entry, project, await answerFor(c, entry, answered.asked, answered.fitting));
}

type Answered =
  | { readonly asked: EnvelopeAsked; readonly fitting: Fitting; readonly problems: readonly Problem[] }
  | { readonly fitting?: undefined; readonly problems: readonly Problem[] };

/** Where only her own measures or finishes are at fault, the envelope is answered without them. */
async function answerTo(c: Request, typed: Typed): Promise<Answered> {
  const units = c.get('units');
  const asked = check(envelopeForm(units, defaultsFrom(c.get('settings'))), typed);
  const plainly = async (problems: readonly Problem[]): Promise<Answered> => {
    const answered = await answerTo(c, without(typed, UNCHOSEN));
    return { ...answered, problems: [...problems, ...answered.problems] };
  };
  if (!asked.ok) {
    const chosenOnly = asked.problems.every(({ field }) => field in UNCHOSEN);
    return chosenOnly ? plainly(asked.problems) : { problems: asked.problems };
  }
  const { notcher } = await chosenNotcher(c.get('db'));
  const fitting = envelopeAsked(asked.value, notcher, units);
  return fitting.ok
    ? { asked: asked.value, fitting: fitting.value, problems: [] }
    : plainly(fitting.problems);
}

const without = (typed: Typed, names: Typed): Typed =>
  Object.fromEntries(Object.entries(typed).filter(([name]) => !(name in names)));

/** The recipe that a checked question asks for. */
export const envelopeAsked = (asked: EnvelopeAsked, notcher: Notcher, units: Units): Checked<Fitting> =>
  fitEnvelope(
    {
      card: asked,
      notcher,
      want: wantOf(asked),
      fold: asked.fold,
      blank: {
        ...(asked.cutWidth && { width: asked.cutWidth }),
        ...(asked.cutHeight && { height: asked.cutHeight }),
      },
      square: asked.square,
      start: asked.start,
      flapC: { shape: asked.cShape, depth: asked.cDepth, more: asked.cMore },
      flapD: { shape: asked.dShape, depth: asked.dDepth, more: asked.dMore },
    },
    units,
  );

export const defaultsFrom = ({ wantedFit }: Settings) => ({ bulk: THIN_BULK, fit: wantedFit });

/** Within a limit on the outer size the snuggest is looked for, unless she says how it should sit. */
function wantOf({ fit, boxWidth, boxHeight, front }: EnvelopeAsked): Want {
  const lie = front === 'any' ? {} : { front };
  if (boxWidth === undefined && boxHeight === undefined) return { fit, ...lie };
  return {
    ...lie,
    largestOuter: { ...(boxWidth && { width: boxWidth }), ...(boxHeight && { height: boxHeight }) },
  };
}

/** Undefined when none is asked for, null when there is no such project. */
async function projectAsked(c: Request, { project }: Typed): Promise<Project | undefined | null> {
  if (!project) return undefined;
  const id = readId(project);
  return (id !== undefined && (await readProject(c.get('db'), id))) || null;
}

function carriedFrom({ id, card, recipe }: Project, units: Units): Typed {
  const { width, height, bulk } = card!;
  return {
    project: `${id}`,
    width: typedLength(width, units),
    height: typedLength(height, units),
    bulk: typedLength(bulk, units),
    ...(recipe && measuresOf(recipe, units)),
  };
}

async function show(
  c: Request,
  entry: Entry,
  project: Project | undefined,
  answer: Answerable,
): Promise<Response> {
  const units = c.get('units');
  const { bulk, fit } = defaultsFrom(c.get('settings'));
  const body = typeof answer === 'string' ? jsx(NoAnswer, { message: answer }) : answer;
  const page = jsx(EnvelopesPage, {
    units,
    cards: await listCardSizes(c.get('db')),
    entry,
    fit: WANTED_FITS.find((one) => one === entry.typed.fit) ?? fit,
    bulk: typedLength(bulk, units),
    project,
    answer: body,
  });
  const fragment = `${body}${jsx(LiveNotes, { entry })}`;
  return reply(c, {
    title: 'Envelopes',
    section: 'envelopes',
    body: page,
    fragment,
    status: statusOf(entry),
  });
}

type Answerable = string | ReturnType<typeof jsx>;

async function answerFor(
  c: Request,
  entry: Entry,
  asked: EnvelopeAsked,
  { recipe: asAsked, found }: Fitting,
): Promise<Answerable> {
  const db = c.get('db');
  const ways = await findWays(db, firstOfEachFold(found));
  const recipe = hasChosen(asked) ? asAsked : ways[0]!.recipe;
  const chosen = asked.design === undefined ? undefined : await readDesign(db, asked.design);
  const { look: picked } = chosen ? looksOn(recipe, chosen, asked.look) : { look: undefined };
  const wanted = { ...blankWanted(recipe, picked), ...(chosen && { designs: [chosen.id] }) };
  const pieces = await findPieces(db, wanted);
  const design = chosen ?? pieces.choices[0]?.piece.design;
  const { looks, look } = design ? looksOn(recipe, design, asked.look) : { looks: [], look: undefined };
  return jsx(Answer, {
    units: c.get('units'),
    post: c.get('settings').post,
    query: entry.typed,
    entry,
    recipe,
    tried: entry.typed.chart === 'yes',
    ways,
    others: found.filter((other) => !sameMeasures(other, recipe)).slice(0, 8),
    choices: pieces.choices.map((choice) =>
      forCopies(choice, wanted, asked.copies, c.get('settings').keepAtLeast),
    ),
    fitting: fitReadyMade(await listReadyMade(db), recipe.card, recipe.limits),
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

const sameMeasures = (one: Recipe, other: Recipe): boolean =>
  one.fold === other.fold && one.blank.width === other.blank.width && one.starts[0] === other.starts[0];

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

const areaOf = ({ width, height }: Size): number => width * height;
