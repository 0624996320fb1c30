/** `checkData` finds what is broken: each invariant is broken behind the rules' back, with the triggers taken away. */
import { type RawBuilder, sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import { checkData } from '#stores/checks.ts';
import { takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { recordOutcome } from '#stores/envelopes.ts';
import { binOffcut, putBack } from '#stores/movements.ts';
import { spoilBlank } from '#stores/spoil.ts';
import { undoCut } from '#stores/undo.ts';
import { BLANK, fillShelf, later, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

/** An evening with a bit of everything: cut 1 stands with three envelopes, cut 2 is undone. */
async function evening(): Promise<Database> {
  const db = await emptyDatabase();
  const { fern, hem, strips } = await fillShelf(db);
  const take = { wanted: BLANK, project: THANKS };
  await takePiece(db, { ...take, piece: { design: fern.id, offcut: null }, copies: 3, at: later(1) });
  await takePiece(db, { ...take, piece: { design: hem.id, offcut: null }, copies: 1, at: later(2) });
  await undoCut(db, 2, later(3));
  await recordOutcome(db, 1, { felt: 'easy', finishes: { C: { shape: 'pointed' } } }, later(4));
  await spoilBlank(db, 2, { wrong: 'slipped' }, later(5));
  await binOffcut(db, strips.id, { at: later(6), count: 1 });
  await putBack(db, strips.id, later(7));
  return db;
}

async function withoutRules(db: Database): Promise<void> {
  const { rows } = await sql<{ name: string }>`SELECT name FROM sqlite_master WHERE type = 'trigger'`.execute(
    db,
  );
  for (const { name } of rows) await sql`DROP TRIGGER ${sql.ref(name)}`.execute(db);
  await sql`PRAGMA foreign_keys = OFF`.execute(db);
  await sql`PRAGMA ignore_check_constraints = ON`.execute(db);
}

const BROKEN: readonly (readonly [string, RawBuilder<unknown>, RegExp])[] = [
  ['a lesson lost', sql`DELETE FROM lessons`, /told of project 1 is not among its lessons/],
  ['a lesson of its own', sql`UPDATE lessons SET words = 'jumped'`, /lesson 1 is not what was told/],
  ['a tag', sql`INSERT INTO tags (name) VALUES ('birthday')`, /no project bears the tag birthday/],
  ['sheets', sql`UPDATE designs SET sheets = 9 WHERE id = 1`, /sum of their movements, design: 1/],
  ['a count', sql`UPDATE offcuts SET count = count + 1 WHERE id = 1`, /sum of its movements, offcut: 1/],
  ['a lost line', sql`DELETE FROM movements WHERE id = 1`, /sum of their movements, design: 1/],
  [
    'a history',
    sql`UPDATE movements SET delta = -5 WHERE id = 1`,
    /fewer than none at some time, movement: 1/,
  ],
  ['a design', sql`UPDATE movements SET design_id = 2 WHERE offcut_id = 1`, /offcut of another design/],
  ['a reversal', sql`UPDATE movements SET delta = 2 WHERE kind = 'put back'`, /does not mirror/],
  ['a project', sql`UPDATE movements SET project_id = NULL WHERE cut_id = 1`, /cut of another project/],
  ['an undoing', sql`UPDATE cuts SET undone_at = NULL WHERE id = 2`, /not undone as it is, cut: 2/],
  [
    'a measured side',
    sql`UPDATE pads SET measured_width = 21 WHERE id = 1`,
    /width of pad 1 is measured far/,
  ],
  [
    'a strip',
    sql`UPDATE pads SET strip_edge = 'left', strip_depth = width WHERE id = 2`,
    /strip of pad 2 leaves no paper/,
  ],
  ['a code', sql`UPDATE offcuts SET code = 'ZZ' WHERE id = 1`, /code that is not its own, offcut: 1/],
  ['a swatch', sql`UPDATE designs SET swatch = '{"motif":"cats"}' WHERE id = 1`, /swatch .* design: 1/],
  ['a recipe', sql`UPDATE projects SET recipe = '{}' WHERE id = 1`, /recipe of project 1/],
  ['a look', sql`UPDATE projects SET look = '[]' WHERE id = 1`, /look of project 1/],
  ['a state', sql`UPDATE projects SET state = 'idea' WHERE id = 1`, /project 1 is called idea but is cut/],
  ['pieces', sql`UPDATE cuts SET pieces = '[]' WHERE id = 1`, /pieces of cut 1 cannot be read/],
  [
    'a tree',
    sql`UPDATE cuts SET pieces = json_set(pieces, '$[0].cuts.at', 1) WHERE id = 1`,
    /cut 1: the parts/,
  ],
  ['a cut', sql`UPDATE cuts SET pieces = json_set(pieces, '$[0].cuts.at', 99999999)`, /misses its block/],
  [
    'a leftover',
    sql`UPDATE cuts SET pieces = json_remove(pieces, '$[0].leftovers[0]')`,
    /leftovers are not those/,
  ],
  [
    'a piece',
    sql`UPDATE cuts SET pieces = json_set(pieces, '$[0].piece.design', 2)`,
    /not what the ledger says/,
  ],
  ['a blank', sql`DELETE FROM envelopes WHERE id = 3`, /cut 1 has 2 envelopes/],
  ['an envelope', sql`UPDATE envelopes SET project_id = 2`, /envelope 1 comes from a cut of another/],
  [
    'a made one',
    sql`UPDATE envelopes SET state = 'blank' WHERE id = 1`,
    /envelope 1 is a blank with an outcome/,
  ],
  ['a spoiled one', sql`DELETE FROM outcomes WHERE envelope_id = 2`, /envelope 2 is spoiled without a word/],
  ['finishes', sql`UPDATE outcomes SET finishes = '{"C":7}'`, /finishes of envelope 1/],
  ['a foreign key', sql`DELETE FROM pads WHERE id = 1`, /names a row of pads that is not there/],
  ['the settings', sql`DELETE FROM settings`, /exactly one row of settings/],
  ['a CHECK', sql`UPDATE offcuts SET width = 0 WHERE id = 1`, /CHECK constraint failed in offcuts/],
];

describe('checkData', () => {
  it('finds nothing after an honest evening', async () => {
    expect(await checkData(await evening())).toEqual([]);
  });

  it.each(BROKEN)('finds %s that is broken', async (_, breaking, words) => {
    const db = await evening();
    await withoutRules(db);
    await breaking.execute(db);
    await sql`PRAGMA ignore_check_constraints = OFF`.execute(db);
    expect((await checkData(db)).join('\n')).toMatch(words);
  });
});
