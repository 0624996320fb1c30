/** One project of a series in a row: its picture, its card, what to set the tool to, what was made of which paper. */
import type { FC } from 'hono/jsx';
import type { Envelope, Project } from '#core/project/journal.ts';
import { ofTheBatch } from '#core/project/next.ts';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import type { Design } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import type { Tag } from '#shared/tags.ts';
import { When } from '../common/when.tsx';
import { howMany, listed } from '../common/words.ts';
import { SmallFront } from '../projects/small-front.tsx';
import { SAY_KNOWN, SAY_STATE, sayMeasures } from '../projects/words.ts';
import { TagLinks } from '../tags/links.tsx';

export interface SeriesProject {
  readonly project: Project;
  readonly envelopes: readonly Envelope[];
  /** Undefined until its envelope is worked out. */
  readonly working: WorkingMeasures | undefined;
  /** Those its envelopes are of, the first envelope's first. */
  readonly papers: readonly Design[];
  readonly tags: readonly Tag[];
}

export const SeriesRow: FC<SeriesProject & { units: Units }> = ({
  project,
  envelopes,
  working,
  papers,
  tags,
  units,
}) => (
  <li>
    <a href={`/projects/${project.id}`} class="entry">
      <span class="entry-picture">
        <SmallFront project={project} recipe={working?.recipe} design={papers[0]} />
      </span>
      <strong>{project.title}</strong>
    </a>
    <div>
      <p class="quiet">
        {SAY_STATE[project.state]} · <When at={project.finishedAt ?? project.changedAt} />
      </p>
      {project.card ? <p>For a card {printExactSize(project.card, units)}</p> : null}
      {working ? (
        <p class="setting">
          {sayMeasures(working, units)} <small>{SAY_KNOWN[working.known]}</small>
        </p>
      ) : null}
      <p>{sayMade(project, envelopes)}</p>
      {papers.length > 0 ? <p>From {listed(papers.map(({ name }) => name))}</p> : null}
      <TagLinks tags={tags} />
      {project.notes ? <p class="notes quiet">{project.notes}</p> : null}
      {project.lesson ? <p class="lesson-line">{project.lesson}</p> : null}
    </div>
  </li>
);

/** `3 of 4 made, 1 spoiled` */
function sayMade({ quantity }: Project, envelopes: readonly Envelope[]): string {
  const batch = ofTheBatch(envelopes);
  const made = batch.filter(({ state }) => state === 'made').length;
  const spoiled = batch.filter(({ state }) => state === 'spoiled').length;
  const so = made >= quantity ? `${howMany(made, 'envelope')} made` : `${made} of ${quantity} made`;
  return spoiled > 0 ? `${so}, ${spoiled} spoiled` : so;
}
