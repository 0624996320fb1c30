/** Series: their name and note. Their projects are shown by the journal. */
import { Hono } from 'hono';
import type { Series } from '#core/project/journal.ts';
import { seriesWords } from '#shared/schemas/project.ts';
import { editSeries, readSeries } from '#stores/series.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goTo } from '../http/reply.ts';
import { rowIn } from '../http/url.ts';
import { showJournal } from './projects.ts';

export const series = new Hono<Env>();

series.get('/:id', async (c) => {
  const found = await seriesIn(c);
  return found ? goTo(c, `/projects?series=${found.id}`) : notFound(c);
});

series.put('/:id', async (c) => {
  const found = await seriesIn(c);
  if (!found) return notFound(c);
  const { id } = found;
  const typed = await readForm(c);
  const asked = check(seriesWords, typed);
  if (!asked.ok) {
    return showJournal(c, { series: `${id}` }, { series: entryOf(typed, asked.problems) });
  }
  const edited = await editSeries(c.get('db'), id, asked.value);
  if (edited?.name === asked.value.name) return goTo(c, `/projects?series=${id}`);
  const problems = [{ field: 'name', message: 'Another series has this name already.' }];
  return showJournal(c, { series: `${id}` }, { series: entryOf(typed, problems) });
});

const seriesIn = (c: Request): Promise<Series | undefined> => rowIn(c, readSeries);
