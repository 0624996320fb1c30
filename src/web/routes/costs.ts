/** What a project cost in paper. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { costOfBatch } from '#core/stash/cost.ts';
import { paperUsed } from '#stores/cost.ts';
import { listDesigns } from '#stores/designs.ts';
import { readProject } from '#stores/projects.ts';
import { CostPage } from '#views/projects/cost.tsx';
import type { Env } from '../http/env.ts';
import { notFound } from '../http/not-found.ts';
import { reply } from '../http/reply.ts';
import { rowIn } from '../http/url.ts';

export const costs = new Hono<Env>();

costs.get('/:id/cost', async (c) => {
  const db = c.get('db');
  const project = await rowIn(c, readProject);
  if (!project) return notFound(c);
  const used = await paperUsed(db, project.id);
  const ids = [...new Set(used.map(({ design }) => design))];
  const designs = new Map((await listDesigns(db, { ids })).map((design) => [design.id, design]));
  const cost = costOfBatch(used, designs, project.quantity);
  const body = jsx(CostPage, { project, cost, currency: c.get('settings').currency });
  return reply(c, { title: `${project.title}: paper`, section: 'journal', body });
});
