/** One project: what to do next, what it is known by and the parts of its set; the rest one tap behind, open in print. */
import type { FC } from 'hono/jsx';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { Project } from '#core/project/journal.ts';
import { lastMade } from '#core/project/next.ts';
import { InPlace } from '#views/common/in-place.tsx';
import { AwayNote, PutAway } from '../common/away.tsx';
import { sayOvertaken } from '../common/overtaken.ts';
import { When } from '../common/when.tsx';
import { OwnLessons } from '../lessons/own.tsx';
import { PostLine } from '../post/post.tsx';
import { Taken } from '../ready-made/list.tsx';
import { PartsLine } from '../sets/links.tsx';
import { TagLinks } from '../tags/links.tsx';
import { TemplateLinks } from '../templates/links.tsx';
import { Cuts, JustTaken } from './cuts.tsx';
import { Envelopes } from './envelopes.tsx';
import { Known } from './known.tsx';
import { MadeBeforeNote } from './made-before.tsx';
import { Measures } from './measures.tsx';
import { NextThing } from './next-thing.tsx';
import { Flat, Folded, Fronts } from './pictures.tsx';
import { SetParts } from './set-parts.tsx';
import type { ProjectAround, ProjectForms, ProjectView } from './view.ts';
import { SAY_STATE, sayPiece } from './words.ts';
import { WordsForm } from './words-form.tsx';

interface Props {
  readonly view: ProjectView;
  readonly around: ProjectAround;
  readonly forms: ProjectForms;
}

export const ProjectPage: FC<Props> = ({ view, around, forms }) => {
  const { project } = view.full;
  return (
    <article class="project">
      <Heading project={project} around={around} />
      <TagLinks tags={forms.tags} />
      <AwayNote standing={forms.standing} />
      {forms.overtaken ? (
        <p class="caution" role="alert">
          Not undone. {sayOvertaken(forms.overtaken, sayPiece(view.designs, view.offcuts))}
        </p>
      ) : null}
      <JustTaken {...view} />
      <MadeBeforeNote
        before={around.madeBefore}
        into={project.id}
        units={view.units}
        token={forms.tokens.before}
      />
      {forms.standing?.at ? null : <NextThing {...view} entry={forms.entry} />}
      <Stands view={view} token={forms.tokens.again} />
      <SetParts rows={around.parts} units={view.units} />
      {project.finishedAt === null && !forms.standing?.at ? <PlanLine project={project.id} /> : null}
      {project.card ? <PartsLine project={project.id} /> : null}
      {project.notes ? (
        <section>
          <h2>Notes</h2>
          <p class="notes">{project.notes}</p>
        </section>
      ) : null}
      <OwnLessons lessons={forms.lessons} />
      <Behind view={view} token={forms.token} />
      <WordsForm
        project={project}
        {...forms}
        withLesson={view.next.kind !== 'lesson'}
        lastMade={lastMade(view.full.envelopes)}
      />
      <PutAway standing={forms.standing} />
    </article>
  );
};

/** What it is known by and what it taught. */
const Stands: FC<{ view: ProjectView; token: string }> = ({ view, token }) => (
  <>
    {view.working ? (
      <Known
        project={view.full.project}
        working={view.working}
        toMake={view.recipe}
        design={[...view.designs.values()][0]}
        units={view.units}
        token={token}
      />
    ) : null}
    {view.full.project.lesson ? (
      <blockquote class="lesson">
        <p>{view.full.project.lesson}</p>
      </blockquote>
    ) : null}
  </>
);

const PlanLine: FC<{ project: number }> = ({ project }) => (
  <p class="no-print">
    <a href={`/projects/${project}/plans/new`}>Plan the whole batch</a>: everything to be cut, from the shelf
    with the least loss.
  </p>
);

/** What is asked for less often. */
const Behind: FC<{ view: ProjectView; token: string }> = ({ view, token }) => (
  <div class="one-tap-behind">
    {view.working ? <Drawn view={view} recipe={view.working.recipe} /> : null}
    {view.full.envelopes.length > 0 ? (
      <details>
        <summary>Each envelope: trial, made, spoiled</summary>
        <Envelopes project={view.full.project.id} envelopes={view.full.envelopes} token={token} />
      </details>
    ) : null}
    {view.full.cuts.length + view.taken.length > 0 ? (
      <details>
        <summary>Paper taken, and what was left of it</summary>
        <div>
          <Taken taken={view.taken} />
          <Cuts {...view} />
        </div>
      </details>
    ) : null}
  </div>
);

const Drawn: FC<{ view: ProjectView; recipe: Recipe }> = ({ view, recipe }) => (
  <details>
    <summary>The recipe, drawn with every measure</summary>
    <div class="project-body">
      <div>
        <Measures {...view} recipe={recipe} />
        <PostLine {...view} recipe={recipe} design={[...view.designs.values()][0]} />
        <TemplateLinks at={`/templates/projects/${view.full.project.id}`} />
      </div>
      <div>
        <Flat recipe={recipe} units={view.units} />
        <Fronts {...view} recipe={recipe} />
        <Folded recipe={recipe} units={view.units} />
      </div>
    </div>
  </details>
);

const Heading: FC<{ project: Project; around: ProjectAround }> = ({ project, around }) => (
  <header>
    <InPlace kind="project-title" id={project.id} text={project.title} />
    <p class="quiet">
      {SAY_STATE[project.state]}, {project.quantity === 1 ? 'one envelope' : `${project.quantity} envelopes`}{' '}
      · begun <When at={project.createdAt} />
      {project.finishedAt ? (
        <>
          {' '}
          · finished <When at={project.finishedAt} />
        </>
      ) : null}
      {project.series ? (
        <>
          {' '}
          · <a href={`/series/${project.series.id}`}>{project.series.name}</a>
        </>
      ) : null}
    </p>
    <Relatives {...around} />
  </header>
);

const Relatives: FC<Pick<ProjectAround, 'origin' | 'again'>> = ({ origin, again }) =>
  origin || again.length > 0 ? (
    <p class="quiet">
      {origin ? (
        <>
          Made again from <a href={`/projects/${origin.id}`}>{origin.title}</a>.{' '}
        </>
      ) : null}
      {again.length > 0 ? 'Made again as ' : null}
      {again.map(({ id, title }, index) => (
        <>
          {index > 0 ? ', ' : ''}
          <a href={`/projects/${id}`}>{title}</a>
        </>
      ))}
      {again.length > 0 ? '.' : null}
    </p>
  ) : null;
