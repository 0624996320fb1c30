/** The form of one kind of ready-made envelope, to add or to put right. Knows no counts but the first. */
import type { FC } from 'hono/jsx';
import { ENVELOPES } from '#core/envelope/sizes.ts';
import type { ReadyMade } from '#core/stash/ready-made.ts';
import { printSize, typedLength, type Units } from '#shared/length.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';
import { Once } from '../common/once.tsx';

interface Props {
  readonly readyMade: ReadyMade | undefined;
  readonly entry: Entry;
  readonly units: Units;
  readonly token: string;
}

export const ReadyMadeForm: FC<Props> = ({ readyMade, entry, units, token }) => (
  <>
    <h1>{readyMade ? `Put ${readyMade.name} right` : 'Envelopes you bought'}</h1>
    <form method="post" action={readyMade ? `/ready-made/${readyMade.id}` : '/ready-made'} class="sheet">
      {readyMade ? <input type="hidden" name="_method" value="PUT" /> : <Once token={token} />}
      <FormProblems entry={entry} fields={['name', 'width', 'height', 'note', 'count']} />
      <Field
        name="name"
        label="What you call them"
        entry={entry}
        value={readyMade?.name}
        autofocus={!readyMade}
        hint="like A2, kraft"
      />
      <div class="fields">
        {(['width', 'height'] as const).map((name) => (
          <Field
            name={name}
            label={name === 'width' ? 'Width' : 'Height'}
            kind="length"
            entry={entry}
            value={readyMade && typedLength(readyMade[name], units)}
            hint="as they are sold"
          />
        ))}
        {readyMade ? null : <Field name="count" label="How many" kind="count" entry={entry} />}
      </div>
      <Field name="note" label="Note" entry={entry} value={readyMade?.note} optional />
      <p class="row">
        <button type="submit">{readyMade ? 'Keep it so' : 'Put them in the stash'}</button>
        {readyMade ? <a href={`/ready-made/${readyMade.id}`}>Leave it as it was</a> : null}
      </p>
    </form>
    {readyMade ? null : <Standard units={units} />}
  </>
);

/** Sizes as they are sold, to start from. */
const Standard: FC<{ units: Units }> = ({ units }) => (
  <details>
    <summary>Standard envelopes</summary>
    <ul class="names">
      {ENVELOPES.map((one) => (
        <li>
          <a href={startFrom(one, units)}>{one.name}</a> <span class="quiet">{printSize(one, units)}</span>
        </li>
      ))}
    </ul>
  </details>
);

const startFrom = ({ name, width, height }: (typeof ENVELOPES)[number], units: Units): string =>
  `/ready-made/new?${new URLSearchParams({
    name,
    width: typedLength(width, units),
    height: typedLength(height, units),
  })}`;
