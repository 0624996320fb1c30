/** Reads what an address carries: the number of a row, and the way back to where the reader was. Knows no resource. */
import { readId } from '#shared/ids.ts';
import type { Database } from '#stores/database.ts';
import type { Request } from './env.ts';
import type { Typed } from './form.ts';

/** Undefined when it is no number that a row could have, which is answered like a row that isn't there. */
export const rowId = (c: Request): number | undefined => readId(c.req.param('id') ?? '');

/** The row that the address names, as `read` finds it; undefined where there is none. */
export async function rowIn<Row>(
  c: Request,
  read: (db: Database, id: number) => Promise<Row | undefined>,
): Promise<Row | undefined> {
  const id = rowId(c);
  return id === undefined ? undefined : read(c.get('db'), id);
}

/** The number of a row that the query names. */
export const queryId = (c: Request, name: string): number | undefined => readId(c.req.query(name) ?? '');

/** This page with its query, for forms that lead back to it; what a form itself added is left out. */
export function here(c: Request): string {
  const url = new URL(c.req.url);
  url.searchParams.delete('gone');
  return url.pathname + url.search;
}

/** Where a form said it was, without a place on the page, if that is a page of ours. */
export function wayBack(typed: Typed, otherwise: string): string {
  const back = typed.back ?? '';
  if (!/^\/(?!\/)[^\s\\#]*$/.test(back)) return otherwise;
  const { pathname, search } = new URL(back, 'http://here');
  return pathname.startsWith('//') ? otherwise : pathname + search;
}

/** The same address with one more word in its query, before any fragment. */
export function withQuery(address: string, name: string, value: string | number, fragment = ''): string {
  const url = new URL(address, 'http://here');
  url.searchParams.set(name, `${value}`);
  return url.pathname + url.search + (fragment === '' ? url.hash : `#${fragment}`);
}
