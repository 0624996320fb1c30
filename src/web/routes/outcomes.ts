/** How envelopes came out: the form, writing it down for one or several alike, and what a measured pocket teaches. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { z } from 'zod';
import { checkFinishes } from '#core/envelope/finish.ts';
import { turnedPocket } from '#core/envelope/pocket-turned.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { alike } from '#core/project/as-made.ts';
import { recipeOf } from '#core/project/in-use.ts';
import type { Envelope, NewOutcome } from '#core/project/journal.ts';
import { isAbout, learn } from '#core/project/learning.ts';
import type { Checked, Problem } from '#shared/checked.ts';
import type { Units } from '#shared/length.ts';
import type { LessonStep } from '#shared/lesson.ts';
import { outcomeForm, withdrawalForm } from '#shared/schemas/outcome.ts';
import type { Size } from '#shared/size.ts';
import { transact } from '#stores/database.ts';
import { recordOutcome, withdrawOutcome } from '#stores/envelopes.ts';
import { lessonsOf, placeTelling } from '#stores/lessons.ts';
import { readNotcher } from '#stores/notchers.ts';
import { finishProject } from '#stores/projects.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { OutcomeForm, pocketAsked } from '#views/outcomes/form.tsx';
import { OutcomeRecord } from '#views/outcomes/record.tsx';
import type { ProjectView } from '#views/projects/view.ts';
import { viewIn } from '../gather/project-view.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken, once } from '../http/once.ts';
import { goTo, goToSaved, reply } from '../http/reply.ts';

export const outcomes = new Hono<Env>();

outcomes.get('/:id/outcomes/new', (c) => {
  const { envelope, finish } = readQuery(c);
  return showForm(c, envelope, BLANK_ENTRY, { finish: finish === 'on' });
});

outcomes.post('/:id/outcomes', async (c) => {
  const view = await viewIn(c);
  const typed = await readForm(c);
  const envelope = view && foldedIn(view, typed.envelope);
  const recipe = envelope && recipeOf(view.full.project, envelope);
  if (!recipe) return notFound(c);
  const asked = readOutcome(recipe, typed, c.get('units'));
  const shown = { finish: typed.finish === 'on' };
  if (!asked.ok) return showForm(c, typed.envelope, entryOf(typed, asked.problems), shown);
  const { outcome, rest, step, finish, turned } = asked.value;
  if (turned) return showForm(c, typed.envelope, entryOf(typed, []), { ...shown, turned });
  const home = `/projects/${view.full.project.id}`;
  return once(c, typed, async (db) => {
    const at = envelope.outcome?.at ?? nowIn(c);
    for (const one of [envelope, ...(rest ? restOf(view, envelope) : [])]) {
      await recordOutcome(db, one.id, outcome, at);
    }
    if (typed.step !== undefined) await placeTelling(db, view.full.project.id, outcome, step);
    if (finish) await finishProject(db, view.full.project.id, nowIn(c));
    return { location: outcome.pocket ? `${home}/outcomes/${envelope.number}` : home };
  });
});

outcomes.get('/:id/outcomes/:number', async (c) => {
  const view = await viewIn(c);
  const envelope = view && foldedIn(view, c.req.param('number'));
  const pocket = envelope?.outcome?.pocket;
  if (!view || !envelope?.outcome || !pocket) return notFound(c);
  const after = await readNotcher(c.get('db'), envelope.outcome.notcher ?? 0);
  if (!after) return goTo(c, `/projects/${view.full.project.id}`);
  const { id } = view.full.project;
  const index = after.observations.findIndex((one) => isAbout(one, id, envelope.number));
  const body = jsx(OutcomeRecord, {
    project: view.full.project,
    envelope,
    pocket,
    before: learn(
      after.tool,
      after.observations.filter((one) => one.project.id !== id),
    ),
    after,
    problem: after.calibration.problems.find(({ field }) => field === `observations.${index}`)?.message,
    units: c.get('units'),
  });
  return reply(c, { title: 'What the pocket says', section: 'journal', body });
});

/** Written down by mistake: this one, or with it those written down alike. */
outcomes.delete('/:id/outcomes/:number', async (c) => {
  const view = await viewIn(c);
  const envelope = view?.full.envelopes.find((one) => `${one.number}` === c.req.param('number'));
  const asked = check(withdrawalForm, await readForm(c));
  if (!view || !envelope?.outcome || !asked.ok) return notFound(c);
  await transact(c.get('db'), async (db) => {
    for (const { id } of asked.value.rest ? [envelope, ...likeIt(view, envelope)] : [envelope])
      await withdrawOutcome(db, id, nowIn(c));
  });
  return goToSaved(c, `/projects/${view.full.project.id}`);
});

/** One that may be written about: not a spoiled blank, whose tale is told. */
const foldedIn = ({ full }: ProjectView, number: string | undefined): Envelope | undefined =>
  full.envelopes.find((one) => `${one.number}` === number && one.state !== 'spoiled');

/** The others that are folded and of which nothing is noted, or those noted alike. */
const restOf = (view: ProjectView, envelope: Envelope): Envelope[] =>
  envelope.outcome
    ? likeIt(view, envelope)
    : view.full.envelopes.filter((one) => one.id !== envelope.id && one.state === 'made' && !one.outcome);

const likeIt = ({ full }: ProjectView, envelope: Envelope): Envelope[] =>
  alike(full.envelopes)
    .find((group) => group.includes(envelope))!
    .filter((one) => one !== envelope);

/** With the pocket `turned`, she is asked whether its sides were swapped; with `finish`, it is the last that is asked. */
async function showForm(
  c: Request,
  number: string | undefined,
  entry: Entry,
  { finish, turned }: { finish: boolean; turned?: Size },
) {
  const view = await viewIn(c);
  const envelope = view && foldedIn(view, number);
  const recipe = envelope && recipeOf(view.full.project, envelope);
  if (!recipe) return notFound(c);
  const { full, units } = view;
  const rest = restOf(view, envelope);
  const body = jsx(OutcomeForm, {
    project: full.project,
    recipe,
    envelope,
    rest,
    units,
    entry,
    turned,
    finish: finish ? view.working : undefined,
    lesson: (await lessonsOf(c.get('db'), full.project.id)).find(({ words }) =>
      [envelope.outcome?.wrong, envelope.outcome?.savedBy].includes(words),
    ),
    token: newToken(c),
  });
  const status = turned ? 422 : statusOf(entry);
  return reply(c, { title: 'How it came out', section: 'journal', status, body });
}

interface Read {
  readonly outcome: NewOutcome & { readonly wrong: string; readonly savedBy: string };
  readonly rest: boolean;
  /** Where its lesson comes up, as far as she says. */
  readonly step: LessonStep | null;
  readonly finish: boolean;
  readonly turned: Size | undefined;
}

function readOutcome(recipe: Recipe, typed: Typed, units: Units): Checked<Read> {
  const read = check(outcomeForm(units), typed);
  if (!read.ok) return read;
  const { felt, twin, finishes, wrong, savedBy, rest, step, finish, square, start } = read.value;
  const finished = checkFinishes(recipe, finishes, units);
  const problems = [
    ...(finished.ok ? [] : finished.problems),
    ...startProblems(square ?? recipe.blank.width, start),
  ];
  if (problems.length > 0) return { ok: false, problems };
  const planned = recipe.starts[twin ? 1 : 0];
  const measures = { square: square ?? recipe.blank.width, start: start ?? planned };
  const { pocket, turned } = pocketAnswered(recipe, read.value, { ...measures, twin });
  const outcome = {
    felt: felt === '' ? null : felt,
    pocket,
    asMade: square || start ? measures : null,
    twin,
    finishes: Object.keys(finishes).length > 0 ? finishes : null,
    wrong,
    savedBy,
  };
  return { ok: true, value: { outcome, rest, step, finish, turned } };
}

/** The pocket to be noted; `turned` where it first has to be asked. An answer holds for the pocket it was given to. */
function pocketAnswered(
  recipe: Recipe,
  { pocket, sides, asked }: Pick<z.infer<ReturnType<typeof outcomeForm>>, 'pocket' | 'sides' | 'asked'>,
  asMade: Parameters<typeof turnedPocket>[2],
): { pocket: Size | null; turned?: Size } {
  const turned = pocket ? turnedPocket(recipe, pocket, asMade) : undefined;
  if (!pocket || !turned) return { pocket };
  if (sides === '' || asked !== pocketAsked(pocket)) return { pocket, turned };
  return { pocket: sides === 'turned' ? turned : pocket };
}

const startProblems = (square: number, start: number | undefined): Problem[] =>
  start === undefined || start < square
    ? []
    : [{ field: 'start', message: 'The start lies outside the square.' }];
