/** One project: the next thing to do largest, then its measures large, then all that is known of it; a sheet in print. */
import type { FC } from 'hono/jsx';
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
import { Measures } from './measures.tsx';
import { NextThing } from './next-thing.tsx';
import { Flat, Folded, Fronts } from './pictures.tsx';
import type { ProjectForms, ProjectView } from './view.ts';
import { SAY_STATE, sayPiece } from './words.ts';
import { WordsForm } from './words-form.tsx';

export const ProjectPage: FC<{ view: ProjectView; forms: ProjectForms }> = ({ view, forms }) => {
  const { project } = view.full;
  return (
    <article class="project">
      <Heading {...view} />
      <TagLinks tags={forms.tags} />
      <AwayNote standing={forms.standing} />
      {forms.overtaken ? (
        <p class="caution" role="alert">
          Not undone. {sayOvertaken(forms.overtaken, sayPiece(view.designs, view.offcuts))}
        </p>
      ) : null}
      <JustTaken {...view} />
      {forms.standing?.at ? null : <NextThing {...view} entry={forms.entry} />}
      {project.finishedAt === null && !forms.standing?.at ? (
        <p class="no-print">
          <a href={`/projects/${project.id}/plans/new`}>Plan the whole batch</a>: everything to be cut, from
          the shelf with the least loss.
        </p>
      ) : null}
      {project.lesson ? (
        <blockquote class="lesson">
          <p>{project.lesson}</p>
        </blockquote>
      ) : null}
      <div class="project-body">
        <div>
          {view.recipe ? <Measures {...view} recipe={view.recipe} /> : null}
          {view.recipe ? (
            <PostLine {...view} recipe={view.recipe} design={[...view.designs.values()][0]} />
          ) : null}
          {project.card ? <PartsLine project={project.id} /> : null}
          <Envelopes {...view} token={forms.token} />
          <OwnLessons lessons={forms.lessons} />
          <Taken taken={view.taken} />
          <Cuts {...view} />
          {project.notes ? (
            <section>
              <h2>Notes</h2>
              <p class="notes">{project.notes}</p>
            </section>
          ) : null}
        </div>
        {view.recipe ? (
          <div>
            <Flat {...view} recipe={view.recipe} />
            <Fronts {...view} recipe={view.recipe} />
            <Folded {...view} recipe={view.recipe} />
            <TemplateLinks at={`/templates/projects/${project.id}`} />
          </div>
        ) : null}
      </div>
      <WordsForm project={project} {...forms} withLesson={view.next.kind !== 'lesson'} />
      <PutAway standing={forms.standing} />
    </article>
  );
};

const Heading: FC<ProjectView> = ({ full: { project } }) => (
  <header>
    <h1>{project.title}</h1>
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
  </header>
);
