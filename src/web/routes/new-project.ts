/** Beginning a project with an envelope worked out and no paper taken yet, or giving it to an idea: its cuts are planned next. */
import { Hono } from 'hono';
import type { Recipe } from '#core/envelope/recipe.ts';
import { looksOn } from '#core/project/fitting.ts';
import type { NewProject } from '#core/project/journal.ts';
import type { Design } from '#core/stash/stash.ts';
import { printSize, type Units } from '#shared/length.ts';
import { envelopeForm } from '#shared/schemas/envelope.ts';
import { readDesign } from '#stores/designs.ts';
import { keepMeasures } from '#stores/kept-measures.ts';
import { findEnvelope } from '../gather/envelope-asked.ts';
import { nowIn } from '../http/clock.ts';
import type { Env } from '../http/env.ts';
import { entryOf, readForm } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { once } from '../http/once.ts';
import { showEnvelopes } from './envelopes.ts';

export const newProjects = new Hono<Env>();

newProjects.post('/', async (c) => {
  const units = c.get('units');
  const typed = await readForm(c);
  const found = await findEnvelope(c, envelopeForm, typed);
  if (!found.ok) return showEnvelopes(c, entryOf(typed, found.problems));
  const { asked, tool, fitting } = found.value;
  const { recipe } = fitting;
  const { copies, design: id, look: picked, project: named } = asked;
  const design = id === undefined ? undefined : await readDesign(c.get('db'), id);
  const look = design && looksOn(recipe, design, picked).look;
  const opened = { ...newProject(recipe, copies, units, design), notcher: tool.id, look: look ?? null };
  return once<Record<never, never>>(
    c,
    typed,
    async (db) => {
      const id = await keepMeasures(db, { opened, project: named, made: null }, nowIn(c));
      return id === undefined ? {} : { location: `/projects/${id}/plans/new` };
    },
    () => notFound(c),
  );
});

export function newProject(recipe: Recipe, copies: number, units: Units, design?: Design): NewProject {
  const { width, height, bulk } = recipe.card;
  const what = copies === 1 ? 'Envelope' : `${copies} envelopes`;
  return {
    title: `${what}${design ? ` in ${design.name},` : ''} for ${printSize(recipe.card, units)}`,
    card: { width, height, bulk },
    quantity: copies,
    recipe,
  };
}
