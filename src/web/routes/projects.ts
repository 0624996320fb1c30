/** The journal and its projects: list, new idea, one project's page, its words, finished or not. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { NewProject } from '#core/project/journal.ts';
import { workingMeasures } from '#core/project/working-measures.ts';
import type { Overtaken } from '#core/stash/stash.ts';
import { journalQuery, newIdea, type ProjectWords, projectWords } from '#shared/schemas/project.ts';
import { type Database, transact } from '#stores/database.ts';
import { firstDesigns, listSoFar } from '#stores/journal.ts';
import { lessonsOf } from '#stores/lessons.ts';
import { createProject, editProject, finishProject, readProject, reopenProject } from '#stores/projects.ts';
import { readStanding } from '#stores/put-away.ts';
import { listSeries, seriesNamed } from '#stores/series.ts';
import { tallySets } from '#stores/sets.ts';
import { listTags, tagProject, tagsAround, tagsOf } from '#stores/tags.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { Entries, Journal, type JournalView } from '#views/projects/journal.tsx';
import { ProjectPage } from '#views/projects/page.tsx';
import { readProjectAround } from '../gather/project-around.ts';
import { readProjectView } from '../gather/project-view.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken, once } from '../http/once.ts';
import { goTo, goToSaved, reply } from '../http/reply.ts';
import { rowId } from '../http/url.ts';

export const projects = new Hono<Env>();

const SHOWN_AT_ONCE = 48;
const TAGS_OFFERED = 40;

projects.get('/', (c) => showJournal(c, readQuery(c)));

projects.post('/', async (c) => {
  const typed = await readForm(c);
  const asked = check(newIdea, typed);
  if (!asked.ok) return showJournal(c, {}, entryOf(typed, asked.problems));
  const at = nowIn(c);
  return once(c, typed, async (db) => {
    const project = await createProject(db, { title: asked.value.title }, at);
    return { location: `/projects/${project.id}` };
  });
});

projects.get('/:id', (c) => showProject(c, rowId(c)));

projects.put('/:id', async (c) => {
  const id = rowId(c);
  if (id === undefined) return notFound(c);
  const typed = await readForm(c);
  const asked = check(projectWords, typed);
  if (!asked.ok) return showProject(c, id, { entry: entryOf(typed, asked.problems) });
  const at = nowIn(c);
  const edited = await transact(c.get('db'), async (db) => {
    if (!(await readProject(db, id))) return undefined;
    if (asked.value.tags && typed.tags !== undefined) await tagProject(db, id, asked.value.tags);
    return editProject(db, id, await changesIn(db, asked.value, typed), at);
  });
  return edited ? goToSaved(c, `/projects/${id}`) : notFound(c);
});

projects.post('/:id/finish', async (c) => {
  const id = rowId(c);
  if (id === undefined) return notFound(c);
  const finished = await finishProject(c.get('db'), id, nowIn(c));
  return finished ? goTo(c, `/projects/${id}`) : notFound(c);
});

projects.delete('/:id/finish', async (c) => {
  const id = rowId(c);
  if (id === undefined) return notFound(c);
  const reopened = await reopenProject(c.get('db'), id, nowIn(c));
  return reopened ? goTo(c, `/projects/${id}`) : notFound(c);
});

/** Also what answers a form on the project's page that was refused. */
export async function showProject(
  c: Request,
  id: number | undefined,
  { entry = BLANK_ENTRY, overtaken }: { entry?: Entry; overtaken?: Overtaken } = {},
): Promise<Response> {
  const view = id === undefined ? undefined : await readProjectView(c, id);
  if (!view) return notFound(c);
  const db = c.get('db');
  const { id: project } = view.full.project;
  const around = await readProjectAround(db, view.full);
  const tags = await tagsAround(db, project, TAGS_OFFERED);
  const forms = {
    series: await listSeries(db),
    lessons: await lessonsOf(db, project),
    tags: tags.own,
    standing: await readStanding(db, { kind: 'projects', id: project }),
    usedTags: tags.used,
    entry,
    token: newToken(c),
    tokens: { again: newToken(c), before: newToken(c) },
    overtaken,
  };
  return reply(c, {
    title: view.full.project.title,
    section: 'journal',
    status: overtaken ? 409 : statusOf(entry),
    body: jsx(ProjectPage, { view, around, forms }),
  });
}

async function showJournal(c: Request, asked: Typed, idea: Entry = BLANK_ENTRY): Promise<Response> {
  const view = await readJournal(c.get('db'), asked);
  return reply(c, {
    title: 'Journal',
    section: 'journal',
    status: statusOf(idea),
    body: jsx(Journal, { view, units: c.get('units'), forms: { token: newToken(c), entry: idea } }),
    fragment: jsx(Entries, { ...view, units: c.get('units') }),
  });
}

async function readJournal(db: Database, asked: Typed): Promise<JournalView> {
  const read = check(journalQuery, asked);
  const query = read.ok ? read.value : { q: '' };
  const limit = (query.more ?? 0) + SHOWN_AT_ONCE;
  const found = await listSoFar(db, {
    ...(query.state && { state: query.state }),
    ...(query.series && { series: query.series }),
    ...(query.tag && { tag: query.tag }),
    ...(query.q.trim() !== '' && { text: query.q.trim() }),
    limit: limit + 1,
  });
  const shown = found.slice(0, limit);
  const ids = shown.map(({ project }) => project.id);
  const designs = await firstDesigns(db, ids);
  const tags = await tagsOf(db, ids);
  return {
    entries: shown.map((one) => ({
      project: one.project,
      working: workingMeasures(one),
      design: designs.get(one.project.id),
      tags: tags.get(one.project.id) ?? [],
    })),
    sets: await tallySets(db),
    more: found.length > limit,
    query,
    series: await listSeries(db),
    tags: await listTags(db, { often: true, limit: TAGS_OFFERED }),
  };
}

/** Only what was sent is changed; a series is named, and begun when there is none of that name; no name is none. */
async function changesIn(db: Database, words: ProjectWords, typed: Typed): Promise<Partial<NewProject>> {
  const sent = Object.entries(words).filter(
    ([name]) => name in typed && name !== 'series' && name !== 'tags',
  );
  const series =
    typed.series === undefined
      ? {}
      : { series: words.series ? (await seriesNamed(db, words.series)).id : null };
  return { ...Object.fromEntries(sent), ...series };
}
