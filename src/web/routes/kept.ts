/** Keeping the measures of an envelope without taking paper: one made, one seen elsewhere, one from last year. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { NewProject, Project } from '#core/project/journal.ts';
import { readId } from '#shared/ids.ts';
import { keepMeasures } from '#stores/kept-measures.ts';
import { listNotchers } from '#stores/notchers.ts';
import { readProject } from '#stores/projects.ts';
import type { Entry } from '#views/common/field.tsx';
import { noonOf, typedDay } from '#views/common/when.tsx';
import { cardFields } from '#views/envelopes/query.ts';
import { KeepPage } from '#views/kept/page.tsx';
import { cardAsked } from '../gather/card-asked.ts';
import { findKept, type Kept } from '../gather/kept-asked.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { entryOf, readForm, readQuery, statusOf, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken, once } from '../http/once.ts';
import { reply } from '../http/reply.ts';
import { newProject } from './new-project.ts';

export const kept = new Hono<Env>();

kept.get('/new', async (c) => {
  const typed = readQuery(c);
  const project = await projectIn(c, typed);
  if (project === null) return notFound(c);
  const card = project?.card ? cardFields(project.card, c.get('units')) : {};
  return show(c, { typed: fromEnvelope({ ...card, ...typed }, c), problems: [] }, project);
});

kept.post('/', async (c) => {
  const typed = await readForm(c);
  const found = await findKept(c, typed);
  if (!found.ok) return show(c, entryOf(typed, found.problems), (await projectIn(c, typed)) ?? undefined);
  return once<Record<never, never>>(
    c,
    typed,
    async (db) => {
      const id = await keepMeasures(db, measuresOf(c, found.value), nowIn(c));
      return id === undefined ? {} : { location: `/projects/${id}` };
    },
    () => notFound(c),
  );
});

function measuresOf(c: Request, { asked, fitting: { recipe }, tool }: Kept) {
  const { copies, title, notes, came, felt, pocket, project } = asked;
  const named = newProject(recipe, copies, c.get('units'));
  const opened: NewProject = { ...named, title: title || named.title, notcher: tool, notes };
  if (came !== 'made') return { opened, project, made: null };
  const asMade = recipe.fold === 'diagonal' ? { square: recipe.blank.width, start: recipe.starts[0] } : null;
  const size = pocket && { width: pocket.width, height: pocket.height };
  const outcome = { felt: felt === '' ? null : felt, pocket: size ?? null, asMade };
  return { opened, project, made: { at: momentOf(c, asked.day), copies, notcher: tool, outcome } };
}

/** Now, or the noon of an earlier day. */
const momentOf = (c: Request, day: string): string => (day === typedDay(nowIn(c)) ? nowIn(c) : noonOf(day));

/** A question of the envelopes page as this form has it: card and blank in one field each. */
function fromEnvelope(typed: Typed, c: Request): Typed {
  const units = c.get('units');
  const { card, typed: fields } = cardAsked(typed, units);
  const { square = '', cutWidth = '', cutHeight = '', width: _, height: __, ...rest } = fields;
  return { ...rest, card, blank: square || (cutWidth && cutHeight ? `${cutWidth} x ${cutHeight}` : '') };
}

/** Undefined where none is named, null where there is no such project. */
async function projectIn(c: Request, { project }: Typed) {
  if (!project) return undefined;
  const id = readId(project);
  return (id !== undefined && (await readProject(c.get('db'), id))) || null;
}

async function show(c: Request, entry: Entry, project: Project | undefined): Promise<Response> {
  const tools = (await listNotchers(c.get('db'))).map(({ tool }) => tool);
  const body = jsx(KeepPage, {
    project,
    tools,
    today: typedDay(nowIn(c)),
    units: c.get('units'),
    entry,
    token: newToken(c),
  });
  return reply(c, { title: 'Keep these measures', section: 'journal', body, status: statusOf(entry) });
}
