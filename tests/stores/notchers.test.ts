/** The maker's tools: defaults, what outcomes teach, pins, fresh starts. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_INSET } from '#core/envelope/fit.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import type { NewTool } from '#core/project/learning.ts';
import { inches } from '#shared/length.ts';
import { takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { recordOutcome } from '#stores/envelopes.ts';
import {
  addNotcher,
  chooseNotcher,
  chosenNotcher,
  editNotcher,
  listNotchers,
  readNotcher,
  resetNotcher,
} from '#stores/notchers.ts';
import { BLANK, CARD, fillShelf, later, RECIPE, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

/** The tool as it really is, which only its envelopes tell. */
const TRUE = {
  inset: inches(1 / 2),
  zeroOffset: inches(1 / 16),
  graduation: inches(1 / 8),
  largestSheet: inches(12),
};

const RULER = {
  name: 'Ruler and bone',
  kind: 'ruler' as const,
  graduation: inches(1 / 16),
  largestSheet: inches(24),
  turning: 'anticlockwise' as const,
  pinnedInset: null,
  pinnedZeroOffset: null,
};

const pin = async (db: Database, pins: Partial<NewTool>) =>
  editNotcher(db, 1, { ...(await readNotcher(db, 1))!.tool, ...pins });

const threeEnvelopes = async (db: Database, notcher?: number) => {
  const { fern } = await fillShelf(db);
  const project = { ...THANKS, ...(notcher !== undefined && { notcher }) };
  const piece = { design: fern.id, offcut: null };
  const taken = await takePiece(db, { piece, wanted: BLANK, copies: 3, project, at: later(1) });
  if (!taken || 'refused' in taken) throw new Error('not cut');
  return taken.envelopes;
};

const pocketOf = (start = RECIPE.starts[0]) =>
  tryMeasures({ card: CARD, notcher: TRUE, square: RECIPE.blank.width, start }).pocket;

describe('a tool', () => {
  it('starts with the defaults', async () => {
    const db = await emptyDatabase();
    const chosen = await chosenNotcher(db);
    expect(chosen.notcher).toEqual({
      inset: DEFAULT_INSET,
      zeroOffset: 0,
      graduation: inches(1 / 8),
      largestSheet: inches(12),
      turning: 'clockwise',
    });
    expect(chosen).toMatchObject({ inset: { from: 'default' }, tool: { chosen: true, name: 'My notcher' } });
  });

  it('learns from a pocket measured both ways, from either start', async () => {
    const db = await emptyDatabase();
    const [one, two] = await threeEnvelopes(db);
    await recordOutcome(db, one!, { pocket: pocketOf() }, later(2));
    const once = await chosenNotcher(db);
    expect(once.inset).toEqual({ from: 'learned', pockets: 1 });
    expect(Math.abs(once.notcher.inset - TRUE.inset)).toBeLessThanOrEqual(2);
    expect(Math.abs(once.notcher.zeroOffset - TRUE.zeroOffset)).toBeLessThanOrEqual(2);
    const twin = pocketOf(RECIPE.starts[1]);
    await recordOutcome(
      db,
      two!,
      { pocket: { width: twin.height, height: twin.width }, twin: true },
      later(3),
    );
    const twice = await chosenNotcher(db);
    expect(twice.inset).toEqual({ from: 'learned', pockets: 2 });
    expect(Math.abs(twice.notcher.zeroOffset - TRUE.zeroOffset)).toBeLessThanOrEqual(2);
  });

  it('names the observation that is off', async () => {
    const db = await emptyDatabase();
    const [one, two, three] = await threeEnvelopes(db);
    const { width, height } = pocketOf();
    await recordOutcome(db, one!, { pocket: { width, height } }, later(2));
    await recordOutcome(db, two!, { pocket: { width: height, height: width } }, later(3));
    await recordOutcome(db, three!, { pocket: { width, height } }, later(4));
    const { calibration, observations, inset } = await chosenNotcher(db);
    expect(inset).toEqual({ from: 'learned', pockets: 2 });
    expect(calibration.outliers.map((index) => observations[index]?.envelope)).toEqual([two]);
    expect(observations[1]).toMatchObject({ number: 2, project: { title: THANKS.title }, at: later(3) });
  });

  it('is held where it is pinned, and learns again where it is not', async () => {
    const db = await emptyDatabase();
    const [one] = await threeEnvelopes(db);
    await recordOutcome(db, one!, { pocket: pocketOf() }, later(2));
    const pinned = (await pin(db, { pinnedInset: inches(3 / 8) }))!;
    expect(pinned).toMatchObject({ inset: { from: 'pinned' }, zeroOffset: { from: 'learned' } });
    expect(pinned.notcher.inset).toBe(inches(3 / 8));
    expect((await pin(db, { pinnedInset: null }))?.inset).toEqual({ from: 'learned', pockets: 1 });
  });

  it('forgets what it learned before a fresh start', async () => {
    const db = await emptyDatabase();
    const [one, two] = await threeEnvelopes(db);
    await recordOutcome(db, one!, { pocket: pocketOf() }, later(2));
    await pin(db, { pinnedZeroOffset: inches(1 / 8) });
    expect(await resetNotcher(db, 1, later(3))).toMatchObject({
      inset: { from: 'default' },
      observations: [],
    });
    await recordOutcome(db, two!, { pocket: pocketOf() }, later(4));
    expect(await chosenNotcher(db)).toMatchObject({ inset: { from: 'learned', pockets: 1 } });
  });

  it('does not take a word put right for a new outcome', async () => {
    const db = await emptyDatabase();
    const [one] = await threeEnvelopes(db);
    await recordOutcome(db, one!, { pocket: pocketOf() }, later(2));
    await resetNotcher(db, 1, later(3));
    await recordOutcome(db, one!, { pocket: pocketOf(), wrong: 'glue on the front' }, later(4));
    expect((await chosenNotcher(db)).inset).toEqual({ from: 'default' });
  });

  it('learns only from envelopes made on it', async () => {
    const db = await emptyDatabase();
    const ruler = await addNotcher(db, RULER);
    const [one] = await threeEnvelopes(db, ruler.tool.id);
    await recordOutcome(db, one!, { pocket: pocketOf() }, later(2));
    expect((await listNotchers(db)).map(({ inset }) => inset.from)).toEqual(['default', 'learned']);
  });

  it('is chosen, edited and read', async () => {
    const db = await emptyDatabase();
    const { tool } = await addNotcher(db, RULER);
    expect(tool).toMatchObject({ ...RULER, chosen: false });
    expect((await chooseNotcher(db, tool.id))?.tool.chosen).toBe(true);
    expect((await readNotcher(db, 1))?.tool.chosen).toBe(false);
    expect((await editNotcher(db, tool.id, { ...RULER, name: 'Steel rule' }))?.tool.name).toBe('Steel rule');
    expect(await chooseNotcher(db, 99)).toBeUndefined();
    expect(await editNotcher(db, 99, RULER)).toBeUndefined();
  });
});
