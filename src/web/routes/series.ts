/** Series: the list of them, one at a glance with its projects in order, its name and note. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { SeriesTold } from '#core/project/journal.ts';
import { pageQuery, seriesWords } from '#shared/schemas/project.ts';
import { readStanding } from '#stores/put-away.ts';
import { browseSeries, editSeries, readSeries } from '#stores/series.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { SeriesList } from '#views/series/list.tsx';
import { SeriesPage } from '#views/series/page.tsx';
import { readSeriesProjects } from '../gather/series-projects.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goToSaved, reply } from '../http/reply.ts';
import { rowIn } from '../http/url.ts';

export const series = new Hono<Env>();

const SERIES_AT_ONCE = 40;
const PROJECTS_AT_ONCE = 24;

series.get('/', async (c) => {
  const from = pageFrom(c);
  const found = await browseSeries(c.get('db'), { from, limit: SERIES_AT_ONCE + 1 });
  const pages = { address: '/series', from, size: SERIES_AT_ONCE, more: found.length > SERIES_AT_ONCE };
  const body = jsx(SeriesList, { series: found.slice(0, SERIES_AT_ONCE), pages });
  return reply(c, { title: 'Series', section: 'journal', body });
});

series.get('/:id', async (c) => {
  const found = await rowIn(c, readSeries);
  return found ? showSeries(c, found, BLANK_ENTRY) : notFound(c);
});

series.put('/:id', async (c) => {
  const found = await rowIn(c, readSeries);
  if (!found) return notFound(c);
  const typed = await readForm(c);
  const asked = check(seriesWords, typed);
  if (!asked.ok) return showSeries(c, found, entryOf(typed, asked.problems));
  const edited = await editSeries(c.get('db'), found.id, asked.value);
  if (edited !== 'taken') return goToSaved(c, `/series/${found.id}`);
  const problem = { field: 'name', message: 'Another series has this name already.' };
  return showSeries(c, found, entryOf(typed, [problem]));
});

async function showSeries(c: Request, series: SeriesTold, entry: Entry): Promise<Response> {
  const from = pageFrom(c);
  const projects = await readSeriesProjects(c.get('db'), series.id, { from, limit: PROJECTS_AT_ONCE });
  const standing = await readStanding(c.get('db'), { kind: 'series', id: series.id });
  const pages = {
    address: `/series/${series.id}`,
    from,
    size: PROJECTS_AT_ONCE,
    more: series.projects > from + projects.length,
  };
  return reply(c, {
    title: series.name,
    section: 'journal',
    status: statusOf(entry),
    body: jsx(SeriesPage, { series, standing, projects, pages, entry, units: c.get('units') }),
  });
}

const pageFrom = (c: Request): number => pageQuery.parse(readQuery(c)).from;
