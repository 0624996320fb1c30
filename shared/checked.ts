/** The one shape in which input is read at the door: a value, or all of its problems at once. */

/** What is wrong, in the reader's words, and the field it stands beside ('' = the whole form). */
export interface Problem {
  readonly field: string;
  readonly message: string;
}

export type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const accept = <T>(value: T): Checked<T> => ({ ok: true, value });

export const refuse = (field: string, message: string): Checked<never> => ({
  ok: false,
  problems: [{ field, message }],
});
