/** Another start for what is still to be made, once a trial piece was tight. Knows no steps. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { checkMeasures } from '#core/envelope/door.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { startMoves, withStart } from '#core/project/in-use.ts';
import type { ProjectSoFar } from '#core/project/journal.ts';
import { recipeToMake } from '#core/project/working-measures.ts';
import { add, type Length, times, type Units } from '#shared/length.ts';
import { startForm } from '#shared/schemas/outcome.ts';
import { changeStart } from '#stores/projects.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { Shift } from '#views/making/shift.tsx';
import { viewIn } from '../gather/project-view.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, statusOf } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goTo, reply } from '../http/reply.ts';

export const starts = new Hono<Env>();

starts.get('/:id/start', async (c) => showShift(c, BLANK_ENTRY));

starts.put('/:id/start', async (c) => {
  const view = await viewIn(c);
  if (!view?.recipe || !startMoves(view.recipe)) return notFound(c);
  const typed = await readForm(c);
  const asked = check(startForm(c.get('units')), typed);
  if (!asked.ok) return showShift(c, entryOf(typed, asked.problems));
  const possible = checkMeasures(measures(view.recipe, asked.value.start), c.get('units'));
  if (!possible.ok) return showShift(c, entryOf(typed, possible.problems));
  const { id } = view.full.project;
  await changeStart(c.get('db'), id, startAsked(view.full, asked.value.start), nowIn(c));
  return goTo(c, `/projects/${id}`);
});

async function showShift(c: Request, entry: Entry) {
  const view = await viewIn(c);
  if (!view?.recipe) return notFound(c);
  const { recipe, full, units } = view;
  const body = jsx(Shift, {
    project: full.project,
    recipe,
    others: startsBeside(recipe, units),
    units,
    entry,
  });
  return reply(c, { title: 'A tight trial', section: 'journal', status: statusOf(entry), body });
}

/** Null where the next one is made to that start anyway, once no other is asked for. */
const startAsked = ({ project, envelopes }: ProjectSoFar, start: Length): Length | null =>
  recipeToMake({ project: { ...project, start: null }, envelopes })?.starts[0] === start ? null : start;

/** One graduation more and one less, where they leave a pocket. */
const startsBeside = (recipe: Recipe, units: Units): Recipe[] =>
  (startMoves(recipe) ? [1, -1] : [])
    .map((way) => add(recipe.starts[0], times(recipe.notcher.graduation, way)))
    .filter((start) => checkMeasures(measures(recipe, start), units).ok)
    .map((start) => withStart(recipe, start));

const measures = ({ card, notcher, blank }: Recipe, start: Length) => ({
  card,
  notcher,
  square: blank.width,
  start,
});
