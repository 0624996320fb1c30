/** Her fits as read back from the journal: which pocket counts, what is told once, pins, and a fresh start. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#core/envelope/fit.ts';
import { FELT_AT_MOST, type FitHabits } from '#core/project/fits.ts';
import type { NewOutcome } from '#core/project/journal.ts';
import { inches } from '#shared/length.ts';
import type { Database } from '#stores/database.ts';
import { addTrial, recordOutcome } from '#stores/envelopes.ts';
import { readFits } from '#stores/fits.ts';
import { createProject } from '#stores/projects.ts';
import { editSettings, readSettings } from '#stores/settings.ts';
import { CARD, later, RECIPE, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

const FREE: FitHabits = { pins: { snug: null, easy: null, loose: null }, since: null };

const clearing = (width: number, height = width) => ({
  width: inches(width + 1 / 32) + CARD.width,
  height: inches(height + 1 / 32) + CARD.height,
});

/** Trials of one project, each with its outcome, a minute apart. */
async function tell(db: Database, outcomes: readonly NewOutcome[], from = 1): Promise<number> {
  const { id } = await createProject(db, THANKS, later(0));
  for (const [index, outcome] of outcomes.entries()) {
    const trial = (await addTrial(db, id, later(0)))!;
    await recordOutcome(db, trial.id, outcome, later(from + index));
  }
  return id;
}

const measured = (felt: NewOutcome['felt'], width: number, height = width): NewOutcome =>
  ({ felt, pocket: clearing(width, height) }) as NewOutcome;

describe('her fits', () => {
  it('are the defaults in a new book', async () => {
    const fits = await readFits(await emptyDatabase(), FREE);
    expect(fits).toMatchObject({ limits: DEFAULT_LIMITS, felt: [], sources: { easy: 'default' } });
  });

  it('come from measured pockets, else from the recipe’s, oldest first', async () => {
    const db = await emptyDatabase();
    await tell(db, [measured('tight', 0.1, 0.125), { felt: 'easy' }, { wrong: 'felt nothing' }]);
    expect((await readFits(db, FREE)).felt).toEqual([
      { felt: 'tight', clearance: { width: inches(0.1), height: inches(0.125) } },
      { felt: 'easy', clearance: RECIPE.clearance },
    ]);
  });

  it('hear once what was written for several at once', async () => {
    const db = await emptyDatabase();
    const { id } = await createProject(db, THANKS, later(0));
    for (const minute of [1, 1, 1, 2]) {
      const trial = (await addTrial(db, id, later(0)))!;
      await recordOutcome(db, trial.id, { felt: 'snug' }, later(minute));
    }
    expect((await readFits(db, FREE)).felt).toHaveLength(2);
  });

  it('read no more than the newest', async () => {
    const db = await emptyDatabase();
    const many = Array.from({ length: FELT_AT_MOST + 3 }, (): NewOutcome => ({ felt: 'easy' }));
    await tell(db, [...many, { felt: 'loose' }]);
    const { felt } = await readFits(db, FREE);
    expect(felt).toHaveLength(FELT_AT_MOST);
    expect(felt.at(-1)).toMatchObject({ felt: 'loose' });
  });

  it('are learned, kept to what is pinned, and forgotten on a fresh start', async () => {
    const db = await emptyDatabase();
    await tell(
      db,
      Array.from({ length: 12 }, (_, index) =>
        measured(index % 2 ? 'tight' : 'easy', index % 2 ? 0.12 : 0.21),
      ),
    );
    const { limits, sources } = await readFits(db, FREE);
    expect(limits.snug).toBeGreaterThan(inches(0.11));
    expect(sources).toEqual({ snug: 'learned', easy: 'learned', loose: 'default' });
    const pins = { snug: null, easy: null, loose: inches(0.1) };
    await editSettings(db, { fits: { pins, since: null } });
    const pinned = await readFits(db, (await readSettings(db)).fits);
    expect(pinned.limits).toEqual({ snug: inches(0.1), easy: inches(0.1), loose: inches(0.1) });
    expect(pinned.sources.loose).toBe('pinned');
    await editSettings(db, { fits: { ...FREE, since: later(12) } });
    expect((await readFits(db, (await readSettings(db)).fits)).limits).toEqual(DEFAULT_LIMITS);
  });
});
