/** Taking paper off the shelf for a project, and undoing it. */
import { Hono } from 'hono';
import { foldOf } from '#core/envelope/folds.ts';
import { adopted } from '#core/project/adopt.ts';
import { blankWanted, looksOn } from '#core/project/fitting.ts';
import type { NewProject } from '#core/project/journal.ts';
import { cutForm } from '#shared/schemas/cut.ts';
import { type GonePiece, readCut, takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { readDesign } from '#stores/designs.ts';
import { readSoFar } from '#stores/journal.ts';
import { plannedAlike } from '#stores/kept-measures.ts';
import { editProject } from '#stores/projects.ts';
import { undoCut } from '#stores/undo.ts';
import { findEnvelope } from '../gather/envelope-asked.ts';
import { nowIn } from '../http/clock.ts';
import type { Env } from '../http/env.ts';
import { entryOf, readForm } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { once } from '../http/once.ts';
import { goTo } from '../http/reply.ts';
import { rowIn } from '../http/url.ts';
import { showEnvelopes } from './envelopes.ts';
import { newProject } from './new-project.ts';
import { showProject } from './projects.ts';

export const cuts = new Hono<Env>();

cuts.post('/', async (c) => {
  const units = c.get('units');
  const typed = await readForm(c);
  const found = await findEnvelope(c, cutForm, typed);
  if (!found.ok) return showEnvelopes(c, entryOf(typed, found.problems));
  const { asked, tool, fitting } = found.value;
  const design = await readDesign(c.get('db'), asked.design);
  if (!design) return notFound(c);
  const { recipe } = fitting;
  const { copies, offcut, project } = asked;
  if (foldOf(recipe).blanks(recipe).length > 1) return showEnvelopes(c, entryOf(typed, [NEEDS_A_PLAN]));
  const { look } = looksOn(recipe, design, asked.look);
  const opened = { ...newProject(recipe, copies, units, design), notcher: tool.id, look: look ?? null };
  return once<{ refused: GonePiece[] }>(
    c,
    typed,
    async (db) => {
      const at = nowIn(c);
      const piece = { design: design.id, offcut };
      const wanted = blankWanted(recipe, look);
      const owner = project ?? (await plannedAlike(db, opened))?.id;
      const taken = await takePiece(db, { piece, wanted, copies, project: owner ?? opened, at });
      if (!taken) return { refused: [] };
      if ('refused' in taken) return { refused: [...taken.pieces] };
      if (owner !== undefined) await adopt(db, owner, opened, at);
      return { location: `/projects/${taken.project}` };
    },
    ({ refused }) =>
      refused.length === 0 ? notFound(c) : showEnvelopes(c, entryOf(typed, [sayGone(refused[0]!)])),
  );
});

/** Everything back on the shelf, or the reason why not. */
cuts.delete('/:id', async (c) => {
  const cut = await rowIn(c, readCut);
  if (!cut) return notFound(c);
  const undone = await undoCut(c.get('db'), cut.id, nowIn(c));
  if (!undone || !('refused' in undone)) return goTo(c, `/projects/${cut.project}#cut-${cut.id}`);
  return showProject(c, cut.project, { overtaken: undone });
});

async function adopt(db: Database, id: number, opened: NewProject, at: string): Promise<void> {
  const changes = adopted((await readSoFar(db, id))!, opened);
  if (changes) await editProject(db, id, changes, at);
}

const NEEDS_A_PLAN = {
  field: '',
  message: 'This envelope takes two pieces of paper. Begin its project below, and plan both cuts together.',
};

const sayGone = ({ wanted, left, changed }: GonePiece) => ({
  field: '',
  message: changed
    ? 'That piece has another size than it had a moment ago. Nothing was taken: choose again below.'
    : left === 0
      ? 'That piece isn’t there any more: it was taken meanwhile, perhaps in another tab. Nothing was taken now; choose another below.'
      : `Only ${left} of ${wanted} are left there. Nothing was taken: choose again below.`,
});
