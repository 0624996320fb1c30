/** Tells the demo: a year at one maker's table, through the stores' own verbs and on the day each thing happened. */

import type { Look } from '#core/envelope/fold.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { blankWanted, looksOn } from '#core/project/fitting.ts';
import type { BlankWanted } from '#core/stash/shelf-search.ts';
import { inches, length } from '#shared/length.ts';
import { addCardSize } from '#stores/card-sizes.ts';
import { takePiece } from '#stores/cuts.ts';
import { type Database, transact } from '#stores/database.ts';
import { addDesign, readDesign } from '#stores/designs.ts';
import { listEnvelopes, recordOutcome } from '#stores/envelopes.ts';
import { lessonsOf, showAlways } from '#stores/lessons.ts';
import { binOffcut, buySheets, countSheets } from '#stores/movements.ts';
import { chosenNotcher, editNotcher } from '#stores/notchers.ts';
import { addOffcut, listOffcuts } from '#stores/offcuts.ts';
import { addPad } from '#stores/pads.ts';
import { changeStart, createProject, editProject, finishProject, readProject } from '#stores/projects.ts';
import { addReadyMade, putToUse } from '#stores/ready-made.ts';
import { findPieces } from '#stores/search.ts';
import { addSeries, listSeries } from '#stores/series.ts';
import { editSettings } from '#stores/settings.ts';
import { spoilBlank } from '#stores/spoil.ts';
import { tagProject } from '#stores/tags.ts';
import { BOUGHT_LATER, OFFCUTS, READY_MADE, SHELF } from './shelf.ts';
import { evening, felt, measuredPocket } from './telling.ts';
import { AGAIN_ON_VELLUM, CARDS, type Evening, IDEAS, SERIES, YEAR } from './year.ts';

/** Fills an empty database; `now` is the day the demo ends on. */
export function seedDemo(db: Database, now: Date): Promise<void> {
  return transact(db, async (db) => {
    await nameTools(db);
    const designs = await fillShelf(db, evening(now, 364));
    for (const series of SERIES) await addSeries(db, series);
    for (const one of YEAR) {
      await buyBefore(db, one.daysAgo, designs, now);
      await spend(db, one, designs, now);
    }
    await keepHouse(db, designs, now);
    for (const { title, card = null, notes } of IDEAS) {
      await createProject(db, { title, card, notes }, evening(now, 5));
    }
    await spend(db, AGAIN_ON_VELLUM, designs, now);
  });
}

async function nameTools(db: Database): Promise<void> {
  const { tool } = await chosenNotcher(db);
  await editNotcher(db, tool.id, { ...tool, name: 'The red notcher' });
  await editSettings(db, { currency: '£' });
  for (const { name, card } of CARDS) await addCardSize(db, { name, ...card });
}

async function fillShelf(db: Database, at: string): Promise<Map<string, number>> {
  const ids = new Map<string, number>();
  for (const { pad, designs } of SHELF) {
    const { id } = await addPad(db, pad);
    for (const { sheets, ...design } of designs) {
      const first = sheets - boughtLater(design.name);
      ids.set(design.name, (await addDesign(db, { pad: id, design, sheets: first, at }))!.id);
    }
  }
  for (const { design, width, height, count, place, note = '', border = false } of OFFCUTS) {
    const offcut = { width: inches(width), height: inches(height), place, note, border };
    await addOffcut(db, { design: ids.get(design)!, offcut, count, at });
  }
  return ids;
}

const boughtLater = (design: string): number =>
  BOUGHT_LATER.reduce((sum, { sheets }) => sum + (sheets[design] ?? 0), 0);

/** What came since the evening before. */
async function buyBefore(
  db: Database,
  daysAgo: number,
  designs: Map<string, number>,
  now: Date,
): Promise<void> {
  const before = YEAR.map((one) => one.daysAgo).filter((days) => days > daysAgo);
  const since = Math.min(...before);
  for (const { sheets, note, ...bought } of BOUGHT_LATER) {
    if (bought.daysAgo <= daysAgo || bought.daysAgo > since) continue;
    for (const [name, count] of Object.entries(sheets)) {
      const at = evening(now, bought.daysAgo, -90);
      await buySheets(db, designs.get(name)!, { sheets: count, at, note });
    }
  }
}

async function spend(db: Database, one: Evening, designs: Map<string, number>, now: Date): Promise<void> {
  const at = (minutes: number): string => evening(now, one.daysAgo, minutes);
  const recipe = await recipeFor(db, one);
  const series = (await listSeries(db)).find(({ name }) => name === one.series)?.id ?? null;
  const { tool } = await chosenNotcher(db);
  const { title, copies, notes = '' } = one;
  const look = await lookFor(db, one, recipe, designs);
  const planned = {
    title,
    card: one.card,
    quantity: copies,
    recipe,
    look: look ?? null,
    notes,
    series,
    notcher: tool.id,
  };
  const project = (await createProject(db, planned, at(0))).id;
  if (one.tags) await tagProject(db, project, one.tags);
  const begun = { ...one, project, recipe, designs };
  await takeAll(db, begun, blankWanted(recipe, look), at(5));
  if (one.spoiled) await spoilFirst(db, begun, at(20));
  await fold(db, begun, at);
  if (one.lesson) {
    await editProject(db, project, { lesson: one.lesson }, at(58));
    if (one.always) await showAlways(db, (await lessonsOf(db, project)).at(-1)!.id, true);
    await finishProject(db, project, at(59));
  }
}

async function recipeFor(db: Database, { card }: Evening): Promise<Recipe> {
  const { notcher } = await chosenNotcher(db);
  return solveEnvelope({ card, notcher })[0]!;
}

async function lookFor(
  db: Database,
  { papers, look }: Evening,
  recipe: Recipe,
  designs: Map<string, number>,
): Promise<Look | undefined> {
  const design = (await readDesign(db, designs.get(papers[0]!)!))!;
  return looksOn(recipe, design, look).look;
}

/** An evening whose project is there. */
interface Begun extends Evening {
  readonly project: number;
  readonly recipe: Recipe;
  /** By name. */
  readonly designs: ReadonlyMap<string, number>;
}

async function takeAll(
  db: Database,
  { project, papers, copies, designs }: Begun,
  wanted: BlankWanted,
  at: string,
): Promise<void> {
  for (let missing = copies; missing > 0; missing -= 1) {
    const paper = papers[copies - missing] ?? papers.at(-1)!;
    const { choices } = await findPieces(db, { ...wanted, designs: [designs.get(paper)!] }, { limit: 1 });
    const piece = choices[0]!.piece;
    const ref = { design: piece.design.id, offcut: piece.offcut?.id ?? null };
    await takePiece(db, { piece: ref, wanted, copies: 1, project, at });
  }
}

async function spoilFirst(
  db: Database,
  { project, recipe, papers, spoiled, designs }: Begun,
  at: string,
): Promise<void> {
  const wanted = blankWanted(recipe);
  const [blank] = await listEnvelopes(db, project);
  const { choices } = await findPieces(
    db,
    { ...wanted, designs: [designs.get(papers.at(-1)!)!] },
    { limit: 1 },
  );
  const piece = choices[0]!.piece;
  const replacement = { piece: { design: piece.design.id, offcut: piece.offcut?.id ?? null }, wanted };
  await spoilBlank(db, blank!.id, { ...spoiled!, replacement }, at);
}

async function fold(db: Database, one: Begun, at: (minutes: number) => string): Promise<void> {
  const { project, recipe } = one;
  const blanks = (await listEnvelopes(db, project)).filter(({ state }) => state === 'blank');
  const made = blanks.slice(0, one.folded ?? blanks.length);
  for (const [index, { id }] of made.entries()) {
    if (index === 1 && one.shiftAfterTrial) {
      const start = length(recipe.starts[0] + inches(one.shiftAfterTrial));
      await changeStart(db, project, start, at(30));
    }
    const start = (await readProject(db, project))!.start ?? recipe.starts[0];
    const pocket = measuredPocket(recipe.blank.width, start);
    const isMeasured = index < (one.measured ?? 0);
    const note = index === 0 ? { wrong: one.wrong ?? '', savedBy: one.savedBy ?? '' } : {};
    await recordOutcome(
      db,
      id,
      { felt: felt(pocket, recipe), pocket: isMeasured ? pocket : null, ...note },
      at(35 + index),
    );
  }
}

/** Paper bought, counted again and thrown out, as happens in between. */
async function keepHouse(db: Database, designs: Map<string, number>, now: Date): Promise<void> {
  const chalk = designs.get('Chalk')!;
  await countSheets(db, chalk, { sheets: 21, at: evening(now, 30), note: 'three had got damp' });
  await buySheets(db, designs.get('Fog')!, {
    sheets: 4,
    at: evening(now, 28),
    note: 'the stall had it again',
  });
  for (const { width, height, bought, used, ...named } of READY_MADE) {
    const envelope = { ...named, width: inches(width), height: inches(height) };
    const { id } = await addReadyMade(db, { envelope, count: bought, at: evening(now, 60) });
    if (used > 0) await putToUse(db, id, { count: used, project: null, at: evening(now, 25) });
  }
  const strips = await listOffcuts(db, { designs: [designs.get('Deck boards')!] });
  const narrow = strips.find(({ width }) => width === inches(1));
  if (narrow) await binOffcut(db, narrow.id, { count: 1, at: evening(now, 20), note: 'cat' });
}
