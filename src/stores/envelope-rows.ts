/** Envelopes and outcomes between their rows and their values. Reads and writes nothing. */
import type { Selectable } from 'kysely';
import type { Envelope, NewOutcome, Outcome } from '#core/project/journal.ts';
import type { Database } from './database.ts';
import type { Tables } from './tables.ts';

export const envelopeRows = (db: Database) =>
  db
    .selectFrom('envelopes')
    .leftJoin('outcomes', 'outcomes.envelope_id', 'envelopes.id')
    .selectAll('envelopes')
    .select([
      'outcomes.at',
      'outcomes.notcher_id',
      'outcomes.felt',
      'outcomes.pocket_width',
      'outcomes.pocket_height',
      'outcomes.square',
      'outcomes.start',
      'outcomes.twin',
      'outcomes.finishes',
      'outcomes.wrong',
      'outcomes.saved_by',
    ]);

type OutcomeColumns = Omit<Selectable<Tables['outcomes']>, 'envelope_id'>;
type Row = Selectable<Tables['envelopes']> & {
  [Column in keyof OutcomeColumns]: OutcomeColumns[Column] | null;
};

export const toEnvelope = (row: Row): Envelope => ({
  id: row.id,
  number: row.number,
  state: row.state,
  trial: row.trial === 1 && row.kept === 0,
  cut: row.cut_id,
  design: row.design_id,
  start: row.start_in_use,
  outcome: row.at === null ? null : toOutcome(row as Row & OutcomeColumns),
});

export const toOutcome = (row: OutcomeColumns): Outcome => ({
  at: row.at,
  notcher: row.notcher_id,
  felt: row.felt,
  pocket: row.pocket_width === null ? null : { width: row.pocket_width, height: row.pocket_height! },
  asMade: row.square === null ? null : { square: row.square, start: row.start! },
  twin: row.twin === 1,
  finishes: row.finishes === null ? null : JSON.parse(row.finishes),
  wrong: row.wrong,
  savedBy: row.saved_by,
});

export const toOutcomeRow = ({ felt, pocket, asMade, twin, finishes, wrong, savedBy }: NewOutcome) => ({
  felt: felt ?? null,
  pocket_width: pocket?.width ?? null,
  pocket_height: pocket?.height ?? null,
  square: asMade?.square ?? null,
  start: asMade?.start ?? null,
  twin: twin ? (1 as const) : (0 as const),
  finishes: finishes ? JSON.stringify(finishes) : null,
  wrong: wrong ?? '',
  saved_by: savedBy ?? '',
});
