/** What is wrong with a refused form, in one place that takes the focus: each problem leads to its field. Knows no form. */
import type { FC } from 'hono/jsx';
import type { Problem } from '#shared/checked.ts';

interface Props {
  readonly problems: readonly Problem[];
  /** The fields that the form shows; every other problem is the whole form's. */
  readonly fields: readonly string[];
}

/** Takes the focus where the page loads, with script or without. */
export const Problems: FC<Props> = ({ problems, fields }) =>
  problems.length === 0 ? null : (
    <ul class="problems" tabindex={-1} autofocus aria-label="To put right">
      {problems.map(({ field, message }) => (
        <li>
          {fields.includes(field) ? (
            <a href={`#${field}`}>
              {sayField(field)}: {message}
            </a>
          ) : (
            message
          )}
        </li>
      ))}
    </ul>
  );

const UNLIKE_THEIR_NAME: Readonly<Record<string, string>> = {
  low: 'low mark',
  thick: 'thickness',
  kind: 'paper',
  square: 'square or blank',
};

/** `parts.1.fromLeft` → `Part 2, from left` */
function sayField(name: string): string {
  const [group, row, ...rest] = name.split('.');
  const own = rest.length > 0 ? rest.join(' ') : group!;
  const words = UNLIKE_THEIR_NAME[own] ?? own.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  const said = rest.length > 0 ? `${group!.replace(/s$/, '')} ${Number(row) + 1}, ${words}` : words;
  return said.charAt(0).toUpperCase() + said.slice(1);
}
