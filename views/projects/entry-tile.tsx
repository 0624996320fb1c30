/** One project in the journal: its picture, what it is known by, and what it taught. Works nothing out. */
import type { FC } from 'hono/jsx';
import { didWork } from '#core/project/working-measures.ts';
import type { Units } from '#shared/length.ts';
import { When } from '../common/when.tsx';
import { TagLinks } from '../tags/links.tsx';
import type { JournalEntry } from './journal.tsx';
import { SmallFront } from './small-front.tsx';
import { SAY_STATE, sayMeasures } from './words.ts';

export const EntryTile: FC<JournalEntry & { units: Units }> = ({ project, working, design, tags, units }) => {
  const failed = working && !didWork(working);
  return (
    <li class={failed ? 'failed' : undefined}>
      <a href={`/projects/${project.id}`} class="entry">
        <span class="entry-picture">
          <SmallFront project={project} recipe={working?.recipe} design={design} />
        </span>
        <strong>{project.title}</strong>
      </a>
      {working ? (
        <p class="entry-measures">
          {sayMeasures(working, units)}
          {failed ? <strong class="verdict">didn’t work</strong> : null}
        </p>
      ) : null}
      <p class="quiet">
        {SAY_STATE[project.state]} · <When at={project.finishedAt ?? project.changedAt} />
      </p>
      <TagLinks tags={tags} />
      {project.lesson ? <p class="lesson-line">{project.lesson}</p> : null}
    </li>
  );
};
