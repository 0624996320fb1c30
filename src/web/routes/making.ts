/** Making a project's envelopes: step by step, the trial piece, what is folded or spoiled. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { alike } from '#core/project/as-made.ts';
import { paperInUse, turningOf } from '#core/project/in-use.ts';
import type { Envelope } from '#core/project/journal.ts';
import { momentAt } from '#core/project/lesson-moments.ts';
import { hasTried } from '#core/project/next.ts';
import type { Fit } from '#shared/outcome.ts';
import { madeForm, spoiledForm, unmadeForm } from '#shared/schemas/outcome.ts';
import { transact } from '#stores/database.ts';
import { addTrial, makeEnvelope, recordOutcome, unmakeEnvelope } from '#stores/envelopes.ts';
import { placeTelling } from '#stores/lessons.ts';
import { spoilBlank } from '#stores/spoil.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import type { LessonsShown } from '#views/lessons/shown.tsx';
import { Folded } from '#views/making/folded.tsx';
import { MakingStep, type MakingView } from '#views/making/page.tsx';
import { Spoiled } from '#views/making/spoiled.tsx';
import { Trial } from '#views/making/trial.tsx';
import type { ProjectView } from '#views/projects/view.ts';
import { ENVELOPE, lessonsShown, placeIn } from '../gather/lessons.ts';
import { viewIn } from '../gather/project-view.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken, once } from '../http/once.ts';
import { goTo, goToSaved, reply } from '../http/reply.ts';
import { rowId } from '../http/url.ts';

export const making = new Hono<Env>();

making.get('/:id/make', async (c) => {
  const view = await viewIn(c);
  if (!view) return notFound(c);
  const { envelope: number, step } = readQuery(c);
  if (!view.recipe) return goTo(c, `/projects/${view.full.project.id}`);
  if (number === undefined) return showNext(c, view, view.recipe);
  const envelope = envelopeIn(view, number);
  return envelope ? showStep(c, makingView(view, view.recipe, envelope), view, step) : notFound(c);
});

making.post('/:id/trials', async (c) => {
  const id = rowId(c);
  const typed = await readForm(c);
  if (id === undefined || !(await viewIn(c))?.recipe) return notFound(c);
  return once(c, typed, async (db) => {
    const trial = (await addTrial(db, id, nowIn(c)))!;
    return { location: `/projects/${id}/make?envelope=${trial.number}&step=1` };
  });
});

/** Folded, and perhaps tried with the card; a first one that is tight leads to another start. */
making.post('/:id/made', async (c) => {
  const view = await viewIn(c);
  const typed = await readForm(c);
  const asked = check(madeForm, typed);
  const envelope = view && asked.ok ? envelopeIn(view, `${asked.value.envelope}`) : undefined;
  if (!view || !asked.ok || !envelope) return notFound(c);
  const home = `/projects/${view.full.project.id}`;
  const felt = FELT[asked.value.goes];
  return once(c, typed, async (db) => {
    if (felt) await recordOutcome(db, envelope.id, { ...envelope.outcome, felt }, nowIn(c));
    else for (const { id } of madeNow(view, envelope, asked.value.rest)) await makeEnvelope(db, id, nowIn(c));
    return { location: felt ? `${home}/start` : home };
  });
});

/** Ticked off by mistake: this one, or with it those told in one line with it. What is written up stays made. */
making.delete('/:id/made', async (c) => {
  const view = await viewIn(c);
  const asked = check(unmadeForm, await readForm(c));
  const envelope = view && asked.ok ? envelopeIn(view, `${asked.value.envelope}`) : undefined;
  if (!view || !asked.ok || !envelope) return notFound(c);
  const group = alike(view.full.envelopes).find((envelopes) => envelopes.includes(envelope))!;
  await transact(c.get('db'), async (db) => {
    for (const { id } of asked.value.rest ? group : [envelope]) await unmakeEnvelope(db, id, nowIn(c));
  });
  return goToSaved(c, `/projects/${view.full.project.id}`);
});

making.get('/:id/spoiled', async (c) => showSpoiled(c, readQuery(c).envelope, BLANK_ENTRY));

making.post('/:id/spoiled', async (c) => {
  const view = await viewIn(c);
  const typed = await readForm(c);
  const asked = check(spoiledForm, typed);
  if (!asked.ok) return showSpoiled(c, typed.envelope, entryOf(typed, asked.problems));
  const envelope = view && envelopeIn(view, typed.envelope);
  if (!view || !envelope) return notFound(c);
  return once<{ refused: string }>(
    c,
    typed,
    async (db) => {
      const { id } = view.full.project;
      const { step, ...spoiled } = asked.value;
      const done = await spoilBlank(db, envelope.id, spoiled, nowIn(c));
      if (done && !('refused' in done)) {
        await placeTelling(db, id, spoiled, step);
        return { location: `/projects/${id}` };
      }
      return {
        refused: `Envelope ${envelope.number} is ${envelope.state} already, so it can’t be spoiled as a blank.`,
      };
    },
    ({ refused }) => showSpoiled(c, typed.envelope, entryOf(typed, [{ field: '', message: refused }])),
  );
});

/** What she felt, where it did not simply go in: that is left to be written down. */
const FELT: Record<string, Fit | undefined> = { tight: 'tight', no: "won't go" };

const envelopeIn = ({ full }: ProjectView, number: string | undefined): Envelope | undefined =>
  full.envelopes.find((one) => `${one.number}` === number);

/** This one, or with it every other blank of the batch. */
const madeNow = ({ full }: ProjectView, envelope: Envelope, rest: boolean): Envelope[] => [
  envelope,
  ...full.envelopes.filter(
    (one) => rest && one.id !== envelope.id && one.state === 'blank' && one.cut !== null,
  ),
];

/** Without an envelope named: the trial first, then whatever waits. */
function showNext(c: Request, { full, next, units }: ProjectView, recipe: Recipe) {
  const { project, envelopes } = full;
  if (hasTried(envelopes)) {
    const number = next.kind === 'make' ? next.envelope.number : undefined;
    return goTo(c, `/projects/${project.id}${number ? `/make?envelope=${number}&step=1` : ''}`);
  }
  const blank = next.kind === 'make trial' ? next.envelope : undefined;
  if (blank?.cut === null) return goTo(c, `/projects/${project.id}/make?envelope=${blank.number}&step=1`);
  const body = jsx(Trial, { project, recipe, blank, units, token: newToken(c) });
  return reply(c, { title: 'A trial piece', section: 'journal', body });
}

/** Steps count from one in addresses; the one after the last asks whether the card goes in. */
async function showStep(c: Request, shown: MakingView, view: ProjectView, asked = '1') {
  const { full } = view;
  const last = shown.steps.length;
  const at = /^\d{1,3}$/.test(asked) ? Math.max(1, Math.min(Number(asked), last + 1)) : 1;
  const where = at > last ? 'Folded' : `Step ${at} of ${last}`;
  const title = `${where} · ${full.project.title}`;
  const first = !hasTried(full.envelopes);
  const body =
    at > last
      ? jsx(Folded, { ...shown, token: newToken(c), first })
      : jsx(MakingStep, { ...shown, at: at - 1, lessons: await lessonsAt(c, shown, view, at - 1) });
  return reply(c, { title, section: 'journal', body, titled: true });
}

/** From scrap, the paper is what the project is of. */
function lessonsAt(
  c: Request,
  { project, envelope, steps }: MakingView,
  { designs }: ProjectView,
  at: number,
): Promise<LessonsShown> | undefined {
  const moment = momentAt(steps, at);
  const own = envelope.design === null ? undefined : designs.get(envelope.design);
  const papers = own ? [own] : [...designs.values()];
  return moment && lessonsShown(c, { ...placeIn(project, [moment], papers), parts: ENVELOPE });
}

function makingView({ full, designs, units }: ProjectView, recipe: Recipe, envelope: Envelope): MakingView {
  const fold = foldOf(recipe);
  const design = envelope.design === null ? undefined : designs.get(envelope.design);
  const paper = design && paperInUse(full.project, recipe, design);
  const look = paper?.look;
  return {
    project: full.project,
    envelope,
    recipe,
    layouts: fold.flat(recipe, turningOf(recipe)),
    steps: fold.steps(recipe, turningOf(recipe), look),
    paper: paper && { ...paper.piece, placement: paper.look.placement },
    units,
  };
}

async function showSpoiled(c: Request, number: string | undefined, entry: Entry) {
  const view = await viewIn(c);
  const envelope = view && envelopeIn(view, number);
  if (!view || !envelope) return notFound(c);
  const body = jsx(Spoiled, { project: view.full.project, envelope, entry, token: newToken(c) });
  return reply(c, { title: 'A spoiled blank', section: 'journal', status: statusOf(entry), body });
}
