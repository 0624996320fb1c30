/** The form for a project's words: title, how many, notes, lesson, series. */
import type { FC } from 'hono/jsx';
import type { Envelope, Project, Series } from '#core/project/journal.ts';
import type { Tag } from '#shared/tags.ts';
import { type Entry, Field, FormProblems, TextArea } from '../common/field.tsx';
import { TagField } from '../tags/field.tsx';

const FIELDS = ['title', 'quantity', 'notes', 'lesson', 'series', 'tags'];

interface Props {
  readonly project: Project;
  readonly series: readonly Series[];
  readonly tags: readonly Tag[];
  readonly usedTags: readonly Tag[];
  readonly entry: Entry;
  /** Absent where the lesson is asked for elsewhere on the page. */
  readonly withLesson: boolean;
  /** Asked about before it is called finished. */
  readonly lastMade: Envelope | undefined;
}

export const WordsForm: FC<Props> = ({ project, series, tags, usedTags, entry, withLesson, lastMade }) => (
  <details id="words" class="no-print" open={entry.problems.length > 0}>
    <summary>Change title, notes, lesson, series, tags</summary>
    <form method="post" action={`/projects/${project.id}`}>
      <input type="hidden" name="_method" value="PUT" />
      <FormProblems entry={entry} fields={FIELDS} />
      <div class="fields">
        <Field name="title" label="Title" entry={entry} value={project.title} />
        <Field name="quantity" label="How many" kind="count" entry={entry} value={`${project.quantity}`} />
        <div>
          <Field
            name="series"
            label="Series"
            entry={entry}
            value={project.series?.name ?? ''}
            list="series-names"
            hint="What belongs together. Empty: none."
          />
          <datalist id="series-names">
            {series.map(({ name }) => (
              <option value={name}></option>
            ))}
          </datalist>
        </div>
        <TagField tags={tags} usedTags={usedTags} entry={entry} />
      </div>
      <TextArea name="notes" label="Notes" entry={entry} value={project.notes} />
      {withLesson ? (
        <TextArea
          name="lesson"
          label="Lesson"
          entry={entry}
          value={project.lesson}
          hint="For the next time."
        />
      ) : null}
      <div class="row">
        <button type="submit">Save</button>
      </div>
    </form>
    {project.finishedAt || !project.recipe || !lastMade ? (
      <FinishForm project={project} />
    ) : (
      <p>
        <a
          class="button plain small"
          href={`/projects/${project.id}/outcomes/new?envelope=${lastMade.number}&finish=on`}
        >
          {FINISHED}
        </a>
      </p>
    )}
  </details>
);

const FINISHED = 'Nothing more is to come: call it finished';

const FinishForm: FC<{ project: Project }> = ({ project }) => (
  <form method="post" action={`/projects/${project.id}/finish`}>
    {project.finishedAt ? <input type="hidden" name="_method" value="DELETE" /> : null}
    <button type="submit" class="plain small">
      {project.finishedAt ? 'Go on with it after all' : FINISHED}
    </button>
  </form>
);
