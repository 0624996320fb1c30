/** All tags with how often each is used, and the form to call one otherwise or to make one of two. */
import type { FC } from 'hono/jsx';
import type { Tag, TagUsed } from '#shared/tags.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';
import { Pages, type PagesProps } from '../common/pages.tsx';
import { howMany } from '../common/words.ts';
import { taggedWith } from './links.tsx';

export const TagsPage: FC<{ tags: readonly TagUsed[]; pages: PagesProps }> = ({ tags, pages }) => (
  <>
    <h1>Tags</h1>
    {tags.length === 0 ? (
      <p class="lead">None yet. A project’s tags are typed among its words, with commas between.</p>
    ) : null}
    <ul class="list">
      {tags.map(({ id, name, projects }) => (
        <li class="spread">
          <span>
            <a href={taggedWith(name)}>{name}</a> <span class="quiet">{howMany(projects, 'project')}</span>
          </span>
          <a href={`/tags/${id}`} class="quiet">
            Rename
          </a>
        </li>
      ))}
    </ul>
    <Pages {...pages} />
  </>
);

export const RenameTag: FC<{ tag: Tag; entry: Entry }> = ({ tag, entry }) => (
  <>
    <p>
      <a href="/tags">Tags</a>
    </p>
    <h1>{tag.name}</h1>
    <form method="post" action={`/tags/${tag.id}`} class="sheet">
      <input type="hidden" name="_method" value="PUT" />
      <FormProblems entry={entry} fields={['name']} />
      <Field
        name="name"
        label="Its name from now on"
        entry={entry}
        value={tag.name}
        hint="With another tag’s name, the two become that one."
        autofocus
      />
      <div class="row">
        <button type="submit">Rename it</button>
        <a href={taggedWith(tag.name)}>Leave it</a>
      </div>
    </form>
  </>
);
