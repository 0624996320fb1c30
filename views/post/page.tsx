/** The post asked about any size: the question on top, the answer below, following as she types. Works nothing out. */
import type { Child, FC } from 'hono/jsx';
import type { Units } from '#shared/length.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';
import { PostFields } from './fields.tsx';

interface Props {
  readonly units: Units;
  readonly entry: Entry;
  readonly answer: Child;
}

export const PostPage: FC<Props> = ({ units, entry, answer }) => (
  <>
    <h1>Can it be posted?</h1>
    <form
      action="/post"
      method="get"
      class="sheet"
      hx-get="/post"
      hx-trigger="input delay:200ms, change"
      hx-target="#post-answer"
      hx-swap="outerHTML"
      hx-replace-url="true"
      hx-sync="this:replace"
    >
      <FormProblems live entry={entry} fields={['width', 'height', 'thick', 'mass', 'address', 'front']} />
      <div class="fields">
        <Field
          name="width"
          label="Envelope width"
          kind="length"
          entry={entry}
          autofocus={!entry.typed.width}
        />
        <Field name="height" label="Envelope height" kind="length" entry={entry} />
      </div>
      <PostFields entry={entry} units={units} mayBeBare />
      <noscript>
        <button type="submit">Ask</button>
      </noscript>
    </form>
    {answer}
    <p>
      No scale at hand? <a href="/paper/card">Reckon weight and thickness from the card’s layers</a>.
    </p>
  </>
);
