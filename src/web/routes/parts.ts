/** The parts of a set, worked out from a card and its envelope, and handed on to a project's order. Writes nothing. */
import { Hono } from 'hono';
import { Fragment, jsx } from 'hono/jsx';
import type { z } from 'zod';
import type { DrawnPart } from '#core/drawing/part.ts';
import type { Wrapped } from '#core/drawing/wrap-path.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { ProjectSoFar } from '#core/project/journal.ts';
import { workingMeasures } from '#core/project/working-measures.ts';
import { MAKE_PART } from '#core/sets/kinds.ts';
import type { Checked, Problem } from '#shared/checked.ts';
import { readId } from '#shared/ids.ts';
import { envelopeForm } from '#shared/schemas/envelope.ts';
import {
  FOLDED_AT,
  hasCard,
  PART_KINDS,
  PATHS,
  type PartKind,
  partForms,
  RUNS,
  type SetPartAsked,
} from '#shared/schemas/parts.ts';
import { readSoFar } from '#stores/journal.ts';
import { listProjects } from '#stores/projects.ts';
import type { Entry } from '#views/common/field.tsx';
import { cardFields } from '#views/envelopes/query.ts';
import { OtherParts, PartsAnswer, PartsPage } from '#views/sets/page.tsx';
import { PART_NAMES } from '#views/sets/words.ts';
import { defaultsFrom, envelopeAsked, settingIn } from '../gather/envelope-asked.ts';
import { lessonsShown, placeFor } from '../gather/lessons.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readQuery, statusOf, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goTo, reply } from '../http/reply.ts';

export const parts = new Hono<Env>();

parts.get('/', async (c) => {
  const asked = await cardIn(c);
  if (!asked) return notFound(c);
  const { typed } = asked;
  if (!typed.width && !typed.height)
    return show(c, entryOf(typed, []), jsx(OtherParts, { entry: { typed } }));
  const envelope = await envelopeIn(c, asked);
  const made = SHOWN.map((kind) => ({ kind, parts: make(c, kind, typed, envelope) }));
  const problems = problemsOf(made.map((one) => one.parts));
  const groups = made.flatMap(({ kind, parts }) => (parts.ok ? [{ kind, parts: parts.value }] : []));
  const entry = entryOf(typed, groups.length > 0 ? [] : problems);
  const rest = jsx(OtherParts, { entry, kinds: PART_KINDS.filter((kind) => !SHOWN.includes(kind)) });
  const answer = groups.length > 0 ? await answerFor(c, entry, { groups, envelope }) : null;
  return show(c, entry, jsx(Fragment, null, answer, rest));
});

/** On to the order of a project, with the parts that were ticked. */
parts.get('/order', async (c) => {
  const typed = readQuery(c);
  const project = await projectIn(c, typed);
  if (!project) return notFound(c);
  const taken = Object.entries(typed).filter(([name]) => {
    const number = /^parts\.(\d{1,3})\.[a-z]+$/.exec(name)?.[1];
    return number !== undefined && typed[`take.${number}`] === 'on';
  });
  return goTo(c, `/projects/${project.project.id}/plans/new?${new URLSearchParams(taken)}`);
});

parts.get('/:kind', async (c) => {
  const asked = await partsAsked(c);
  if (!asked) return notFound(c);
  const { kind, typed } = asked;
  if (hasCard(kind) && !typed.width && !typed.height) return show(c, entryOf(typed, []), null, kind);
  return showParts(c, asked);
});

export interface PartsAsked {
  readonly kind: PartKind;
  readonly typed: Typed;
  readonly envelope: Recipe | undefined;
  readonly made: Checked<readonly DrawnPart[]>;
}

/** The parts that an address and its query ask for; undefined where there is no such kind or project. */
export async function partsAsked(c: Request): Promise<PartsAsked | undefined> {
  const kind = PART_KINDS.find((one) => one === c.req.param('kind'));
  const asked = await cardIn(c);
  if (!kind || !asked) return undefined;
  const envelope = await envelopeIn(c, asked);
  return { kind, typed: asked.typed, envelope, made: make(c, kind, asked.typed, envelope) };
}

/** The page of one kind of part, or what is wrong beside its fields. */
export async function showParts(c: Request, { kind, typed, envelope, made }: PartsAsked): Promise<Response> {
  const entry = entryOf(typed, made.ok ? [] : made.problems);
  const answer = made.ok
    ? await answerFor(c, entry, { groups: [{ kind, parts: made.value }], envelope, alone: kind })
    : null;
  return show(c, entry, answer, kind);
}

/** On the page for a whole set; the others are asked for one at a time. */
const SHOWN: readonly PartKind[] = ['base', 'front', 'inside', 'liner', 'wrap'];

interface CardAsked {
  readonly typed: Typed;
  readonly project: ProjectSoFar | undefined;
}

/** A project brings its own card; undefined where there is no such project. */
async function cardIn(c: Request): Promise<CardAsked | undefined> {
  const typed = readQuery(c);
  if (!typed.project) return { typed, project: undefined };
  const project = await projectIn(c, typed);
  if (!project) return undefined;
  const { card, quantity } = project.project;
  if (typed.width || typed.height || !card) return { typed, project };
  return { typed: { ...typed, ...cardFields(card, c.get('units')), copies: `${quantity}` }, project };
}

async function projectIn(c: Request, { project }: Typed): Promise<ProjectSoFar | undefined> {
  const id = readId(project ?? '');
  return id === undefined ? undefined : readSoFar(c.get('db'), id);
}

/** The one chosen, else the project's own while the card is, else the one that the envelopes page would find. */
async function envelopeIn(c: Request, { typed, project }: CardAsked): Promise<Recipe | undefined> {
  const asked = check(envelopeForm(c.get('units'), defaultsFrom(c.get('settings'))), typed);
  if (!asked.ok) return undefined;
  const chosen = typed.fold || typed.square || typed.cutWidth;
  const own = !chosen && project && workingMeasures(project)?.recipe;
  const { width, height } = asked.value;
  if (own && own.card.width === width && own.card.height === height) return own;
  const fitting = envelopeAsked(asked.value, await settingIn(c), c.get('units'));
  return fitting.ok ? fitting.value.recipe : undefined;
}

function make<Kind extends PartKind>(
  c: Request,
  kind: Kind,
  typed: Typed,
  envelope: Recipe | undefined,
): Checked<readonly DrawnPart[]> {
  const form: unknown = partForms(c.get('units'))[kind];
  const asked = check(form as z.ZodType<SetPartAsked<Kind>>, typed);
  return asked.ok ? MAKE_PART[kind](asked.value, envelope) : asked;
}

const problemsOf = (made: readonly Checked<unknown>[]): Problem[] => {
  const all = made.flatMap((one) => (one.ok ? [] : one.problems));
  return all.filter(({ field }, index) => all.findIndex((other) => other.field === field) === index);
};

const NOWHERE = { steps: [], designs: [], kinds: [], tool: null, size: null, fold: null };

interface Worked {
  readonly groups: readonly { readonly kind: PartKind; readonly parts: readonly DrawnPart[] }[];
  readonly envelope: Recipe | undefined;
  readonly alone?: PartKind;
}

async function answerFor(c: Request, entry: Entry, { groups, envelope, alone }: Worked) {
  const projects = (await listProjects(c.get('db'), { limit: 60 })).filter((one) => one.finishedAt === null);
  const place = {
    ...(envelope ? placeFor(envelope, [], { project: null, tool: null, designs: [] }) : NOWHERE),
    parts: groups.map(({ kind }) => kind),
    project: readId(entry.typed.project ?? '') ?? null,
  };
  return jsx(PartsAnswer, {
    lessons: await lessonsShown(c, place),
    groups,
    projects,
    alone: alone !== undefined,
    wrapped: alone === 'wrap' ? wrappedIn(entry.typed) : undefined,
    envelope,
    entry,
    units: c.get('units'),
  });
}

/** Round the closed envelope there is no fold. */
const wrappedIn = (typed: Typed): Wrapped => ({
  fold: typed.round === 'the closed envelope' ? 'none' : pick(FOLDED_AT, typed.foldAt),
  path: pick(PATHS, typed.path),
  run: pick(RUNS, typed.run),
});

const pick = <T extends string>(choices: readonly T[], typed: string | undefined): T =>
  choices.find((one) => one === typed) ?? choices[0]!;

const show = (
  c: Request,
  entry: Entry,
  answer: ReturnType<typeof jsx> | null,
  kind?: PartKind,
): Response | Promise<Response> =>
  reply(c, {
    title: kind ? PART_NAMES[kind] : 'The parts of a set',
    section: 'envelopes',
    body: jsx(PartsPage, { kind, entry, units: c.get('units'), answer }),
    status: statusOf(entry),
  });
