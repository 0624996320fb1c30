/** The envelopes page: from the card in hand to how it fits, the paper to take, its drawing and its look. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { Fitting } from '#core/project/fitting.ts';
import type { Project, ProjectSoFar } from '#core/project/journal.ts';
import type { Tool } from '#core/project/learning.ts';
import { workingMeasures } from '#core/project/working-measures.ts';
import type { Problem } from '#shared/checked.ts';
import { readId } from '#shared/ids.ts';
import { typedLength, type Units } from '#shared/length.ts';
import { WANTED_FITS } from '#shared/outcome.ts';
import { type EnvelopeAsked, envelopeForm } from '#shared/schemas/envelope.ts';
import { listCardSizes } from '#stores/card-sizes.ts';
import { readSoFar } from '#stores/journal.ts';
import { findMadeBefore } from '#stores/made-before.ts';
import { readProject } from '#stores/projects.ts';
import type { Entry } from '#views/common/field.tsx';
import { Answer, type Answered, NoAnswer } from '#views/envelopes/answer.tsx';
import { sayAnswer } from '#views/envelopes/headline.tsx';
import { More } from '#views/envelopes/more.tsx';
import { EnvelopesPage, LiveNotes, Told } from '#views/envelopes/page.tsx';
import { ShownField } from '#views/envelopes/places.tsx';
import { asking, cardFields, measuresOf, UNCHOSEN } from '#views/envelopes/query.ts';
import { MadeBeforeNote } from '#views/projects/made-before.tsx';
import { besideCard, type CardAsked, cardAsked } from '../gather/card-asked.ts';
import { answerFor } from '../gather/envelope-answer.ts';
import { defaultsFrom, findEnvelope } from '../gather/envelope-asked.ts';
import { stillTyping } from '../gather/still-typing.ts';
import type { Env, Request } from '../http/env.ts';
import { entryOf, readQuery, statusOf, type Typed, tellRounding } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken } from '../http/once.ts';
import { goTo, reply, wantsFragment } from '../http/reply.ts';

export const envelopes = new Hono<Env>();

const LENGTH_FIELDS = ['bulk', 'boxWidth', 'boxHeight', 'square', 'start'];

envelopes.get('/', (c) => showEnvelopes(c, { typed: readQuery(c), problems: [] }));

/** The page for what was typed; `problems` come from an action that was refused with the same fields. */
export async function showEnvelopes(c: Request, refused: Entry): Promise<Response> {
  const units = c.get('units');
  const project = await projectAsked(c, refused.typed);
  if (project === null) return notFound(c);
  const asked = cardAsked(refused.typed, units);
  const { typed } = asked;
  if (project?.card && asked.card === '' && refused.typed.card === undefined)
    return goTo(c, asking(carriedFrom((await readSoFar(c.get('db'), project.id))!, units)));
  const answered = asked.card === '' || asked.problems.length > 0 ? asked : await answerTo(c, typed);
  const entry = entryFor(asked, [...refused.problems, ...answered.problems], units);
  const waiting = wantsFragment(c) ? stillTyping(entry, units) : undefined;
  if (waiting) return c.html(`${jsx(LiveNotes, { entry: waiting, units })}`, 200, KEEP_ADDRESS);
  if (asked.card === '') return show(c, entry, project, 'Which card is in your hand?');
  if (!('fitting' in answered) || !answered.fitting)
    return show(c, entry, project, 'The envelope follows here.');
  const before = await findMadeBefore(c.get('db'), answered.asked, project?.id);
  const note = jsx(MadeBeforeNote, { before, into: project?.id, units, token: newToken(c) });
  return show(c, entry, project, await answerFor(c, entry, typed, { ...answered, note }));
}

function entryFor({ typed, card, note }: CardAsked, problems: readonly Problem[], units: Units): Entry {
  const entry = tellRounding(entryOf({ ...typed, card }, problems.map(besideCard)), LENGTH_FIELDS, units);
  return note ? { ...entry, notes: { ...entry.notes, card: note } } : entry;
}

/** While she types, the last answer stays until the next one is whole. */
const KEEP_ADDRESS = { 'HX-Replace-Url': 'false', Vary: 'HX-Request', 'Cache-Control': 'no-store' };

type Found =
  | {
      readonly asked: EnvelopeAsked;
      readonly tool: Tool;
      readonly fitting: Fitting;
      readonly problems: readonly Problem[];
    }
  | { readonly fitting?: undefined; readonly problems: readonly Problem[] };

/** Where only her own measures or finishes are at fault, the envelope is answered without them. */
async function answerTo(c: Request, typed: Typed): Promise<Found> {
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

/** With what worked before anything else. */
function carriedFrom(soFar: ProjectSoFar, units: Units): Typed {
  const { id, card } = soFar.project;
  const working = workingMeasures(soFar);
  return {
    project: `${id}`,
    ...cardFields(card!, units),
    ...(working && measuresOf(working.recipe, units)),
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
  const body = typeof answer === 'string' ? jsx(NoAnswer, { message: answer }) : jsx(Answer, answer);
  const page = jsx(EnvelopesPage, {
    units,
    cards: wantsFragment(c) ? [] : await listCardSizes(c.get('db')),
    entry,
    fit: WANTED_FITS.find((one) => one === entry.typed.fit) ?? fit,
    bulk: typedLength(bulk, units),
    project,
    answer: body,
  });
  return reply(c, {
    title: 'Envelopes',
    section: 'envelopes',
    body: page,
    fragment: fragmentOf(c, entry, answer, body),
    status: statusOf(entry),
  });
}

type Answerable = string | Answered;

/** Going to another place swaps that alone; typing swaps the answer, its notes and what is told of it. */
function fragmentOf(c: Request, entry: Entry, answer: Answerable, body: ReturnType<typeof jsx>): string {
  if (typeof answer !== 'string' && c.req.header('HX-Target') === 'div#more')
    return `${jsx(More, answer)}${jsx(ShownField, { shown: answer.shown, outOfBand: true })}`;
  const told = typeof answer === 'string' ? answer : sayAnswer(answer);
  return `${body}${jsx(LiveNotes, { entry, units: c.get('units') })}${jsx(Told, { answer: told })}`;
}
