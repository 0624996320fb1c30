/**
 * The search's questions as SQL expressions over a row of offcuts: does the blank fit, what is the regret, what is
 * lacking. The same arithmetic as the core's, in the same order; runs no query.
 */
import { type RawBuilder, type SqlBool, sql } from 'kysely';
import type { BlankWanted } from '#core/stash/shelf-search.ts';
import type { Length } from '#shared/length.ts';
import { type Size, shorter, turned } from '#shared/size.ts';

type Condition = RawBuilder<SqlBool>;
export type Amount = RawBuilder<number>;

const W = sql.ref<Length>('offcuts.width');
const H = sql.ref<Length>('offcuts.height');
export const SHORTER = sql<number>`min(${W}, ${H})`;

const isSquare = ({ width, height }: Size): boolean => width === height;

export const printDecides = (blank: Size & { mayTurn: boolean }): boolean =>
  !isSquare(blank) && !blank.mayTurn;

const mayBeTurned = (wanted: BlankWanted): Condition =>
  wanted.border ? sql`FALSE` : wanted.mayTurn ? sql`TRUE` : sql`designs.direction = 'any way'`;

/** Depth of the printed border that the offcut still has; 0 where it has none. */
export const DEPTH = sql<number>`CASE WHEN offcuts.border = 1
  THEN coalesce((SELECT of.border FROM designs AS of WHERE of.id = offcuts.design_id), 0) ELSE 0 END`;

/** How high the blank may be: down to the border where it does not ask for it. */
type Room = RawBuilder<number>;

export const roomOf = ({ border }: BlankWanted): Room => (border ? sql`${H}` : sql`max(0, ${H} - ${DEPTH})`);

export const fitsIn =
  (room: Room) =>
  ({ width, height }: Size): Condition =>
    sql`(${W} >= ${width} AND ${room} >= ${height})`;

/** The thinnest that any way to lie asks for comes first, so that the index on the shelf can serve it. */
export function anyWay(wanted: BlankWanted, holds: (blank: Size) => Condition): Condition {
  const thick = sql`${SHORTER} >= ${shorter(wanted)}`;
  if (isSquare(wanted)) return sql`${thick} AND ${holds(wanted)}`;
  return sql`${thick} AND (${holds(wanted)} OR (${mayBeTurned(wanted)} AND ${holds(turned(wanted))}))`;
}

/** The least of an amount over the ways in which the blank may lie. */
export function leastOf(wanted: BlankWanted, amount: (blank: Size) => Amount): Amount {
  if (isSquare(wanted)) return amount(wanted);
  return sql`min(${amount(wanted)}, CASE WHEN ${mayBeTurned(wanted)} THEN ${amount(turned(wanted))} ELSE 9e99 END)`;
}

/** As the core's regret of the better first cut, the blank in a corner; out of reach where it does not fit. */
export function regretOf(blank: Size, keep: Length, room: Room): Amount {
  const { width, height } = blank;
  const [beside, beyond] = [sql<number>`(${W} - ${width})`, sql<number>`(${H} - ${height})`];
  const whole = worthOf(W, H, keep);
  const down = sql`${whole} - ${worthOf(beside, H, keep)} - ${worthOf(sql`${width}`, beyond, keep)}`;
  const across = sql`${whole} - ${worthOf(beside, sql`${height}`, keep)} - ${worthOf(W, beyond, keep)}`;
  return sql`CASE WHEN ${fitsIn(room)(blank)} THEN min(${down}, ${across}) ELSE 9e99 END`;
}

/** In floating numbers and in the core's order of multiplying, so that both give the same last bit. */
const worthOf = (width: RawBuilder<unknown>, height: RawBuilder<unknown>, keep: Length): Amount =>
  sql`CASE WHEN min(${width}, ${height}) < ${keep} THEN 0.0
    ELSE CAST(${width} AS REAL) * ${height} * min(${width}, ${height}) END`;

export const worseLack =
  (room: Room) =>
  ({ width, height }: Size): Amount =>
    sql`max(0, ${width} - ${W}, ${height} - ${room})`;

export const wholeLack =
  (room: Room) =>
  ({ width, height }: Size): Amount =>
    sql`(max(0, ${width} - ${W}) + max(0, ${height} - ${room}))`;
