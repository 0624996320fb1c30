/** Tags: all of them, and another name for one. Which projects bear a tag is for the journal to show. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { pageQuery, tagWords } from '#shared/schemas/project.ts';
import type { Tag } from '#shared/tags.ts';
import { listTags, readTag, renameTag } from '#stores/tags.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { taggedWith } from '#views/tags/links.tsx';
import { RenameTag, TagsPage } from '#views/tags/page.tsx';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goToSaved, reply } from '../http/reply.ts';
import { rowIn } from '../http/url.ts';

export const tags = new Hono<Env>();

const SHOWN_AT_ONCE = 60;

tags.get('/', async (c) => {
  const { from } = pageQuery.parse(readQuery(c));
  const found = await listTags(c.get('db'), { from, limit: SHOWN_AT_ONCE + 1 });
  const pages = { address: '/tags', from, size: SHOWN_AT_ONCE, more: found.length > SHOWN_AT_ONCE };
  const body = jsx(TagsPage, { tags: found.slice(0, SHOWN_AT_ONCE), pages });
  return reply(c, { title: 'Tags', section: 'journal', body });
});

tags.get('/:id', async (c) => {
  const found = await rowIn(c, readTag);
  return found ? showTag(c, found, BLANK_ENTRY) : notFound(c);
});

tags.put('/:id', async (c) => {
  const found = await rowIn(c, readTag);
  if (!found) return notFound(c);
  const typed = await readForm(c);
  const asked = check(tagWords, typed);
  if (!asked.ok) return showTag(c, found, entryOf(typed, asked.problems));
  const { name } = (await renameTag(c.get('db'), found.id, asked.value.name))!;
  return goToSaved(c, taggedWith(name));
});

const showTag = (c: Request, tag: Tag, entry: Entry): Response | Promise<Response> =>
  reply(c, {
    title: tag.name,
    section: 'journal',
    status: statusOf(entry),
    body: jsx(RenameTag, { tag, entry }),
  });
