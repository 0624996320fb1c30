/** Opens checked values in tests: the value where one is due, the fields of the problems where a refusal is. */
import type { Checked } from '#shared/checked.ts';
import { inches } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';

export function sound<T>(checked: Checked<T>): T {
  if (!checked.ok)
    throw new Error(checked.problems.map(({ field, message }) => `${field}: ${message}`).join(' '));
  return checked.value;
}

export const refused = (checked: Checked<unknown>): string[] =>
  checked.ok ? [] : checked.problems.map((problem) => problem.field);

export const rect = (width: number, height: number): Size => ({
  width: inches(width),
  height: inches(height),
});
