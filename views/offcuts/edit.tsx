/** Putting an offcut right: its size, place and note. How many there are is counted again on its own page. */
import type { FC } from 'hono/jsx';
import type { Offcut } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import { type Entry, Field, FormProblems } from '#views/common/field.tsx';
import { fullName } from '#views/stash/words.ts';
import { BorderTick, PlaceField, SizeFields } from './fields.tsx';

interface Props {
  readonly offcut: Offcut;
  readonly places: readonly string[];
  readonly entry: Entry;
  /** Where the reader came from. */
  readonly back: string;
  readonly units: Units;
}

export const EditOffcut: FC<Props> = ({ offcut, places, entry, back, units }) => (
  <>
    <h1>
      Put <span class="code">{offcut.code}</span> right
    </h1>
    <p class="lead">From {fullName(offcut.design)}.</p>
    <form method="post" action={`/offcuts/${offcut.id}`} class="sheet">
      <input type="hidden" name="_method" value="PUT" />
      <input type="hidden" name="back" value={back} />
      <FormProblems entry={entry} fields={['width', 'height', 'border', 'place', 'note']} />
      <div class="fields">
        <SizeFields entry={entry} units={units} value={offcut} autofocus={offcut.place !== ''} />
        <PlaceField entry={entry} places={places} value={offcut.place} autofocus={offcut.place === ''} />
      </div>
      {offcut.design.print.direction === 'one edge' ? (
        <BorderTick entry={entry} value={offcut.border} />
      ) : null}
      <Field name="note" label="Note" entry={entry} value={offcut.note} optional />
      <p class="row">
        <button type="submit">Keep it so</button>
        <a href={back}>Leave it as it was</a>
      </p>
    </form>
  </>
);
