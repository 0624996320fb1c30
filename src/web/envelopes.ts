/** The envelopes page: from the card in hand to a recipe, its look and the paper for it. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { Fitting } from '#core/project/fitting.ts';
import type { Project } from '#core/project/journal.ts';
import type { Problem } from '#shared/checked.ts';
import { readId } from '#shared/ids.ts';
import { typedLength, type Units } from '#shared/length.ts';
import { WANTED_FITS } from '#shared/outcome.ts';
import { type EnvelopeAsked, envelopeForm } from '#shared/schemas/envelope.ts';
import { listCardSizes } from '#stores/card-sizes.ts';
import { readProject } from '#stores/projects.ts';
import { NoAnswer } from '#views/envelopes/answer.tsx';
import { EnvelopesPage, LiveNotes } from '#views/envelopes/page.tsx';
import { asking, cardFields, measuresOf, UNCHOSEN } from '#views/envelopes/query.ts';
import type { Entry } from '#views/parts/field.tsx';
import type { Env, Request } from './env.ts';
import { answerFor } from './envelope-answer.ts';
import { defaultsFrom, findEnvelope } from './envelope-asked.ts';
import { entryOf, readQuery, statusOf, type Typed, tellRounding } from './form.ts';
import { notFound } from './not-found.ts';
import { goTo, reply } from './reply.ts';

export const envelopes = new Hono<Env>();

const LENGTH_FIELDS = ['width', 'height', 'bulk', 'boxWidth', 'boxHeight', 'square', 'start'];

envelopes.get('/', (c) => showEnvelopes(c, { typed: readQuery(c), problems: [] }));

/** The page for what was typed; `problems` come from an action that was refused with the same fields. */
export async function showEnvelopes(c: Request, { typed, problems }: Entry): Promise<Response> {
  const units = c.get('units');
  const project = await projectAsked(c, typed);
  if (project === null) return notFound(c);
  if (project && !typed.width && project.card) return goTo(c, asking(carriedFrom(project, units)));
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
  const found = await findEnvelope(c, envelopeForm, typed);
  if (found.ok) return { ...found.value, problems: [] };
  const { problems } = found;
  if (!problems.every(({ field }) => field in UNCHOSEN)) return { problems };
  const plain = await answerTo(c, without(typed, UNCHOSEN));
  return { ...plain, problems: [...problems, ...plain.problems] };
}

const without = (typed: Typed, names: Typed): Typed =>
  Object.fromEntries(Object.entries(typed).filter(([name]) => !(name in names)));

/** Undefined when none is asked for, null when there is no such project. */
async function projectAsked(c: Request, { project }: Typed): Promise<Project | undefined | null> {
  if (!project) return undefined;
  const id = readId(project);
  return (id !== undefined && (await readProject(c.get('db'), id))) || null;
}

function carriedFrom({ id, card, recipe }: Project, units: Units): Typed {
  return {
    project: `${id}`,
    ...cardFields(card!, units),
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
