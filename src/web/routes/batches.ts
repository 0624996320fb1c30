/** What is to be cut for a project, asked as one batch: its missing blanks, parts typed in, others of its series. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { PaperGone } from '#core/batch/again-from.ts';
import { type Batch, partsLeft } from '#core/batch/batch.ts';
import type { Plan } from '#core/batch/planned.ts';
import { SUGGESTIONS, type Suggestion, suggest, suggestionsFor } from '#core/batch/suggest.ts';
import { pieceName, type Shelf } from '#core/batch/to-order.ts';
import type { Place } from '#core/project/lessons.ts';
import { lacking } from '#core/project/next.ts';
import { type Design, refOf } from '#core/stash/stash.ts';
import type { PaperAsked } from '#shared/batch.ts';
import type { Problem } from '#shared/checked.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import { type BatchTyped, batchForm } from '#shared/schemas/plan.ts';
import { readPlan } from '#stores/plans.ts';
import type { Entry } from '#views/common/field.tsx';
import { NewPlanPage } from '#views/plans/new.tsx';
import { readAgainBatch } from '../gather/again-batch.ts';
import { renumbered, typedBatch, withBrought, withEmptyPart, withParts } from '../gather/batch-form.ts';
import { designIn, readBatchPapers } from '../gather/batch-papers.ts';
import { beginPlan } from '../gather/begin-plan.ts';
import { type Bench, cuttingFor, readBench, readWholeShelf } from '../gather/bench.ts';
import { lessonsShown, papersOf, placeIn } from '../gather/lessons.ts';
import { type PapersNamed, readPapersNamed } from '../gather/papers-named.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken } from '../http/once.ts';
import { reply } from '../http/reply.ts';
import { queryId, rowIn } from '../http/url.ts';

export const batches = new Hono<Env>();

batches.get('/:id/plans/new', async (c) => {
  const bench = await benchIn(c);
  if (!bench) return notFound(c);
  const { typed: brought } = entryOf(readQuery(c), []);
  const again = bench.last ? undefined : await readAgainBatch(c.get('db'), bench);
  const left = again ? asAgain(c, bench, again.batch) : await asLeft(c, bench);
  const entry = { typed: withBrought(left, brought), problems: [] };
  return show(c, bench, { entry, several: new Map() }, again?.gone);
});

batches.post('/:id/plans', async (c) => {
  const bench = await benchIn(c);
  if (!bench) return notFound(c);
  const named = await readPapersNamed(c.get('db'), renumbered(await readForm(c)));
  const { typed } = named;
  const again = (problems: readonly Problem[], of = typed) =>
    show(c, bench, { ...named, entry: entryOf(of, problems) });
  const changed = changedRows(c, bench, typed);
  if (changed) return again(named.problems, changed);
  const asked = check(batchForm(c.get('units')), typed);
  if (named.problems.length > 0 || !asked.ok)
    return again(withNamed(named.problems, asked.ok ? [] : asked.problems));
  const shelf = await readWholeShelf(c);
  const batch = batchOf(bench, shelf, asked.value);
  const ready = cuttingFor(c, bench, shelf, batch);
  if (ready.problems.length > 0) return again(ready.problems);
  return beginPlan(c, typed, { project: bench.own.project.id, batch, ...ready.cutting });
});

/** What the name of a paper lacks is said once. */
const withNamed = (named: readonly Problem[], others: readonly Problem[]): Problem[] => [
  ...named,
  ...others.filter(({ field }) => !named.some((one) => one.field === field)),
];

const benchIn = (c: Request): Promise<Bench | undefined> => rowIn(c, (_, id) => readBench(c, id));

/** What is still to be cut of the batch named in the address or asked for last, or the missing blanks alone. */
async function asLeft(c: Request, { own, kinds, last: newest }: Bench): Promise<Typed> {
  const after = queryId(c, 'after');
  const named = after === undefined || after === newest?.id ? newest : await readPlan(c.get('db'), after);
  const last = named?.project === own.project.id ? named : newest;
  const blanks = { blanks: `${lacking(own)}` };
  if (!last) return { ...blanks, ...typedBatch(FIRST_BATCH(kinds), c.get('units')) };
  const parts = partsLeft(last.batch, last.cut ? last : { ...last, plan: null, spoiled: [] });
  return { ...blanks, ...typedBatch({ ...last.batch, parts }, c.get('units')) };
}

/** All that the project before asked for, and the missing blanks. */
const asAgain = (c: Request, { own }: Bench, batch: Omit<Batch, 'blanks'>): Typed => ({
  blanks: `${lacking(own)}`,
  ...typedBatch(batch, c.get('units')),
});

/** The last plan, as long as it waits to be cut. */
const standing = ({ last }: Bench): Plan | undefined => (last && !last.cut && !last.fault ? last : undefined);

const FIRST_BATCH = (kinds: readonly PaperKind[]): Omit<Batch, 'blanks'> => ({
  paper: kinds.includes('patterned') ? { of: 'kind', kind: 'patterned' } : ANY,
  parts: [],
  match: 'each set',
  keep: [],
});

const ANY: PaperAsked = { of: 'any' };

/** The form with a part added or dropped, where that is what was pressed. */
function changedRows(c: Request, { own, kinds }: Bench, typed: Typed): Typed | undefined {
  const pressed = typed.do ?? '';
  if (pressed === 'keep') return typed;
  const dropped = /^drop-(\d{1,3})$/.exec(pressed)?.[1];
  if (dropped !== undefined) return renumbered(typed, Number(dropped));
  const copies = /^[1-9]\d{0,2}$/.test(typed.blanks ?? '') ? Number(typed.blanks) : own.project.quantity;
  if (pressed === 'add') return withEmptyPart(typed, copies);
  const suggestion = SUGGESTIONS.find((one): one is Suggestion => pressed === `add-${one}`);
  if (!suggestion) return undefined;
  const units = c.get('units');
  return withParts(typed, suggest(suggestion, { soFar: own, copies, kinds, units }), units);
}

function batchOf({ own, others }: Bench, shelf: Shelf, typed: BatchTyped): Batch {
  const { blanks, others: wanted, keep, ...rest } = typed;
  const names = new Set(shelf.pieces.map((piece) => pieceName(refOf(piece))));
  return {
    ...rest,
    keep: keep.filter((name) => names.has(name)),
    blanks: [
      { project: own.project.id, copies: own.project.recipe ? blanks : 0, missing: lacking(own) },
      ...others
        .filter(({ project }) => wanted.includes(project.id))
        .map((other) => ({ project: other.project.id, copies: lacking(other), missing: lacking(other) })),
    ],
  };
}

async function show(
  c: Request,
  bench: Bench,
  { entry, several }: { readonly entry: Entry } & Pick<PapersNamed, 'several'>,
  gone: readonly PaperGone[] = [],
): Promise<Response> {
  const { own, others, kinds } = bench;
  const papers = await readBatchPapers(c, own.project, entry.typed);
  const body = jsx(NewPlanPage, {
    ...papers,
    project: own.project,
    missing: lacking(own),
    others: others.map((one) => ({ project: one.project, missing: lacking(one) })),
    last: standing(bench),
    gone,
    several,
    kinds,
    suggestions: suggestionsFor(own.project),
    lessons: await lessonsShown(c, {
      ...placeIn(own.project, ['paper', 'cut'], []),
      ...papersAsked(kinds, papers.chosen, entry.typed.paper ?? ''),
    }),
    entry,
    units: c.get('units'),
    token: newToken(c),
  });
  return reply(c, {
    title: `A batch for ${own.project.title}`,
    section: 'journal',
    status: statusOf(entry),
    body,
  });
}

/** The paper that the form asks for, by which lessons come up; all that lies there where any will do. */
function papersAsked(
  kinds: readonly PaperKind[],
  chosen: readonly Design[],
  typed: string,
): Pick<Place, 'designs' | 'kinds'> {
  const design = chosen.find(({ id }) => id === designIn(typed));
  if (design) return papersOf([design]);
  const kind = kinds.find((one) => typed === `kind-${one}`);
  return { designs: [], kinds: kind ? [kind] : kinds };
}
