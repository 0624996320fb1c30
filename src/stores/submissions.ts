/** Forms already sent, so that one sent again does its thing once. Verb: `once(db, token, at, act)`. */
import { type Database, transact } from './database.ts';

/** What the first sending led to; a string is where the reader goes, anything else is kept for nobody. */
type Answer<T> =
  | { readonly repeated: false; readonly value: T }
  | { readonly repeated: true; readonly location: string };

/**
 * Runs `act` unless a form with this token was carried out before. `act` answers with a `location` when it did what was
 * asked; without one (a refusal) the token stays free, so that the form may be sent again.
 */
export function once<T extends { readonly location?: string | undefined }>(
  db: Database,
  token: string,
  at: string,
  act: (db: Database) => Promise<T>,
): Promise<Answer<T>> {
  return transact(db, async (db) => {
    const before = await db
      .selectFrom('submissions')
      .select('location')
      .where('token', '=', token)
      .executeTakeFirst();
    if (before) return { repeated: true, location: before.location };
    const value = await act(db);
    if (value.location !== undefined) {
      await db.insertInto('submissions').values({ token, at, location: value.location }).execute();
    }
    return { repeated: false, value };
  });
}
