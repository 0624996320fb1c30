/** The tags of one project, each leading to all that bear it. */
import type { FC } from 'hono/jsx';
import type { Tag } from '#shared/tags.ts';

export const TagLinks: FC<{ tags: readonly Tag[] }> = ({ tags }) =>
  tags.length === 0 ? null : (
    <ul class="tags" aria-label="Tags">
      {tags.map(({ name }) => (
        <li>
          <a href={taggedWith(name)}>{name}</a>
        </li>
      ))}
    </ul>
  );

export const taggedWith = (name: string): string => `/projects?${new URLSearchParams({ tag: name })}`;
