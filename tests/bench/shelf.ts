/**
 * A shelf as large as asked for, from a fixed seed: the demo's year, and copies of its pads, designs, projects and outcomes
 * beside it, written in bulk under the database's own rules. Knows no page.
 */
import type { Insertable, Selectable } from 'kysely';
import { chance } from '#core/cutting/search/random.ts';
import { seedDemo } from '#seed/demo.ts';
import { pencilCode } from '#shared/ids.ts';
import { inches } from '#shared/length.ts';
import { type Database, transact } from '#stores/database.ts';
import type { Tables } from '#stores/tables.ts';

const AT_ONCE = 500;
const DAY = 86_400_000;
const OFFCUTS_OF_ONE = 5;
const DESIGNS_OF_A_PAD = 5;
const MOVEMENTS_OF_ONE = 10;
const ENVELOPES_OF_ONE = 3;
const PROJECTS_OF_A_SERIES = 10;

const ADJECTIVES = 'Quiet Broad Faded Morning Winter Copper Painted Narrow Paper Garden'.split(' ');
const NOUNS = 'harbour orchard lattice meadow lantern ribbon feather gable thicket ledger'.split(' ');

/**
 * `designs` of them with five offcuts each, half as many projects, ten movements each; the newest a day before `now`. The
 * table of what is on it grows in step: 200, 2 000 and 20 000 are the sizes that figures are given for.
 */
export async function fillRealShelf(db: Database, designs: number, now: Date): Promise<void> {
  await seedDemo(db, now);
  await transact(db, async (db) => {
    const { below } = chance(20261130);
    const shelf: Shelf = { db, below, at: (days) => new Date(now.getTime() - days * DAY).toISOString() };
    const own = await addPaper(shelf, designs);
    await addProjects(shelf, own, Math.round(designs / 2));
  });
}

interface Shelf {
  readonly db: Database;
  readonly below: (limit: number) => number;
  readonly at: (daysAgo: number) => string;
}

/** The ids of the designs. */
async function addPaper(shelf: Shelf, designs: number): Promise<number[]> {
  const { db, below, at } = shelf;
  const [pads, papers] = [await rowsOf(db, 'pads'), await rowsOf(db, 'designs')];
  const pad = await copies(db, 'pads', Math.ceil(designs / DESIGNS_OF_A_PAD), (one) => ({
    ...pads[one % pads.length]!,
    name: named(one),
  }));
  const ids = await copies(db, 'designs', designs, (one) => ({
    ...papers[one % papers.length]!,
    name: named(one * 7 + 3),
    pad_id: pad[Math.floor(one / DESIGNS_OF_A_PAD)]!,
    sheets: 0,
  }));
  const firstCode = (await lastId(db, 'offcuts')) + 1;
  const offcuts = await copies(db, 'offcuts', designs * OFFCUTS_OF_ONE, (one) => ({
    design_id: ids[one % ids.length]!,
    width: inches(0.75 + below(181) / 16),
    height: inches(0.75 + below(181) / 16),
    border: 0 as const,
    code: pencilCode(firstCode + one),
    place: `tray ${one % 40}`,
    note: '',
    count: 0,
  }));
  await copies(db, 'movements', designs, (one) => ({
    ...moved(ids[one]!, at(365 - (one % 300))),
    kind: 'bought' as const,
    delta: 8 + below(8),
  }));
  await copies(db, 'movements', offcuts.length, (one) => ({
    ...moved(ids[one % ids.length]!, at(360 - (one % 300))),
    kind: 'counted' as const,
    offcut_id: offcuts[one]!,
    delta: one % 10 === 0 ? 0 : 1 + below(3),
  }));
  return ids;
}

/** Each cut from the shelf, made and told of, in the demo's own measures. */
async function addProjects(shelf: Shelf, designs: readonly number[], wanted: number): Promise<void> {
  const { db, at } = shelf;
  const told = (await rowsOf(db, 'projects')).filter(({ recipe, state }) => recipe && state === 'made');
  const [outcomes, cut] = [await rowsOf(db, 'outcomes'), (await rowsOf(db, 'cuts'))[0]!];
  const series = await copies(db, 'series', Math.ceil(wanted / PROJECTS_OF_A_SERIES), (one) => ({
    name: `${named(one)} ${one + 1}`,
    note: '',
  }));
  const day = (one: number): string => at(1 + (one % 360));
  const projects = await copies(db, 'projects', wanted, (one) => ({
    ...told[one % told.length]!,
    title: `${named(one * 3 + 1)} ${one + 1}`,
    series_id: series[Math.floor(one / PROJECTS_OF_A_SERIES)]!,
    created_at: day(one),
    changed_at: day(one),
    finished_at: day(one),
  }));
  const cuts = await copies(db, 'cuts', wanted, (one) => ({
    ...cut,
    project_id: projects[one]!,
    at: day(one),
    undone_at: null,
  }));
  const papers = (one: number): number => designs[(one * 2) % designs.length]!;
  const lines = Math.max(0, (MOVEMENTS_OF_ONE - OFFCUTS_OF_ONE - 1) * 2);
  await copies(db, 'movements', wanted * lines, (one) => ({
    ...moved(papers(one % wanted), day(one)),
    kind: one < wanted * 4 ? ('cut' as const) : ('counted' as const),
    cut_id: one < wanted * 4 ? cuts[one % wanted]! : null,
    project_id: one < wanted * 4 ? projects[one % wanted]! : null,
    delta: one < wanted * 4 ? -1 : 0,
  }));
  const envelopes = await copies(db, 'envelopes', wanted * ENVELOPES_OF_ONE, (one) => ({
    project_id: projects[Math.floor(one / ENVELOPES_OF_ONE)]!,
    number: 1 + (one % ENVELOPES_OF_ONE),
    cut_id: cuts[Math.floor(one / ENVELOPES_OF_ONE)]!,
    design_id: papers(Math.floor(one / ENVELOPES_OF_ONE)),
    state: 'made' as const,
    trial: 0 as const,
    start_in_use: null,
  }));
  await copies(db, 'outcomes', envelopes.length, (one) => ({
    ...outcomes[one % outcomes.length]!,
    envelope_id: envelopes[one]!,
    at: day(Math.floor(one / ENVELOPES_OF_ONE)),
  }));
}

const moved = (design: number, at: string) => ({
  at,
  design_id: design,
  offcut_id: null,
  project_id: null,
  cut_id: null,
  reverses: null,
  note: '',
});

const named = (one: number): string =>
  `${ADJECTIVES[one % 10]} ${NOUNS[Math.floor(one / 10) % 10]}${one < 100 ? '' : ` ${Math.floor(one / 100)}`}`;

const rowsOf = async <T extends keyof Tables>(db: Database, table: T): Promise<Selectable<Tables[T]>[]> =>
  (await db.selectFrom(table).selectAll().execute()) as never;

async function lastId(db: Database, table: keyof Tables): Promise<number> {
  const { id } = await db
    .selectFrom(table as 'pads')
    .select(({ fn }) => fn.max('id').as('id'))
    .executeTakeFirstOrThrow();
  return id ?? 0;
}

/** Writes rows under the ids that follow those there, and answers with them. Outcomes go by their envelope instead. */
async function copies<T extends keyof Tables>(
  db: Database,
  table: T,
  wanted: number,
  row: (one: number) => Omit<Insertable<Tables[T]>, 'id'>,
): Promise<number[]> {
  const numbered = table !== 'outcomes';
  const first = numbered ? (await lastId(db, table)) + 1 : 0;
  for (let done = 0; done < wanted; done += AT_ONCE) {
    const some = Array.from({ length: Math.min(AT_ONCE, wanted - done) }, (_, one) => ({
      ...row(done + one),
      ...(numbered ? { id: first + done + one } : {}),
    }));
    await db
      .insertInto(table)
      .values(some as never)
      .execute();
  }
  return Array.from({ length: wanted }, (_, one) => first + one);
}
