/** Gives the rows that JSON columns name their new numbers. Knows how cuts, orders and plans name rows, not why. */

/** The new number of a row of a table. */
export type Renumber = (table: string, number: number) => number;

const NAMED: Readonly<Record<string, string>> = {
  design: 'designs',
  designs: 'designs',
  offcut: 'offcuts',
  project: 'projects',
};
const PIECE = /^(sheet|offcut)-(\d+)$/;
const BLANK = /^(envelope(?:, piece \d+)? \(project )(\d+)\)$/;

/** JSON text with every number changed that names a design, offcut, pad or project. */
export const renumberJson = (json: string, renumber: Renumber): string =>
  JSON.stringify(inside(JSON.parse(json), renumber));

function inside(value: unknown, renumber: Renumber): unknown {
  if (typeof value === 'string') return renamed(value, renumber);
  if (Array.isArray(value)) return value.map((one) => inside(one, renumber));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [
      key,
      NAMED[key] ? numbered(NAMED[key], one, renumber) : inside(one, renumber),
    ]),
  );
}

/** A design stands as a number in a cut and as text in an order. */
function numbered(table: string, value: unknown, renumber: Renumber): unknown {
  if (Array.isArray(value)) return value.map((one) => numbered(table, one, renumber));
  if (typeof value === 'number') return renumber(table, value);
  if (typeof value === 'string' && /^\d+$/.test(value)) return `${renumber(table, Number(value))}`;
  return inside(value, renumber);
}

function renamed(text: string, renumber: Renumber): string {
  const [, piece, of] = PIECE.exec(text) ?? [];
  if (piece) return `${piece}-${renumber(piece === 'sheet' ? 'designs' : 'offcuts', Number(of))}`;
  const [, before, project] = BLANK.exec(text) ?? [];
  return before ? `${before}${renumber('projects', Number(project))})` : text;
}
