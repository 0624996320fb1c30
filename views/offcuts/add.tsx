/** Adding offcuts, several in a row: what was just added with its code to pencil on, and the form for the next. */
import type { FC } from 'hono/jsx';
import type { Design, Offcut } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { type Entry, Field, FormProblems } from '#views/common/field.tsx';
import { Once } from '#views/common/once.tsx';
import { fullName } from '#views/stash/words.ts';
import { DesignChoice } from './design-choice.tsx';
import { BorderTick, PlaceField, SizeFields } from './fields.tsx';
import { OffcutPicture, shelfScale } from './picture.tsx';

interface Props {
  /** Names of designs to begin with; none where there is no design yet. */
  readonly likely: readonly string[];
  /** Designs that the name typed may mean. */
  readonly several: readonly Design[];
  readonly places: readonly string[];
  /** The one before in this row, whose design and place are kept. */
  readonly added: Offcut | undefined;
  /** Whose offcuts they are, if that is known. */
  readonly design: Design | undefined;
  readonly entry: Entry;
  readonly units: Units;
  readonly token: string;
}

export const AddOffcuts: FC<Props> = (props) => (
  <>
    <h1>Add offcuts</h1>
    {props.added === undefined ? null : <Added offcut={props.added} units={props.units} />}
    {props.likely.length === 0 ? (
      <p class="lead">
        An offcut belongs to a design. <a href="/pads/new">Add a pad and its designs</a> first.
      </p>
    ) : (
      <AddForm {...props} />
    )}
    <p class="after">
      <a href={props.design ? `/designs/${props.design.id}` : '/stash#offcuts'}>That was the last one</a>
    </p>
  </>
);

/** What follows from the one before is filled in, and the focus is on the first field that does not. */
const AddForm: FC<Props> = ({ likely, several, places, added, design, entry, units, token }) => {
  const known = design !== undefined || (entry.typed.design ?? '') !== '';
  return (
    <form method="post" action="/offcuts" class="sheet">
      <Once token={token} />
      <FormProblems entry={entry} fields={FIELDS} />
      <div class="fields">
        <DesignChoice
          label="Cut from"
          entry={entry}
          likely={likely}
          several={several}
          value={design}
          autofocus={!known}
        />
        <PlaceField entry={entry} places={places} value={added?.place} />
      </div>
      <div class="fields">
        <SizeFields entry={entry} units={units} autofocus={known && several.length === 0} />
        <Field name="count" label="How many alike" kind="count" entry={entry} value="1" />
      </div>
      {design && design.print.direction !== 'one edge' && entry.typed.design === undefined ? null : (
        <BorderTick entry={entry} value={added?.border ?? false} />
      )}
      <Field name="note" label="Note" entry={entry} optional hint="a crease, a torn corner …" />
      <p class="row">
        <button type="submit">Put it on the shelf</button>
        <span class="quiet">Enter does it too; the next one starts at its width.</span>
      </p>
    </form>
  );
};

const FIELDS = ['design', 'width', 'height', 'count', 'border', 'place', 'note'];

const Added: FC<{ offcut: Offcut; units: Units }> = ({ offcut, units }) => (
  <div class="done added" role="status">
    <OffcutPicture offcut={offcut} units={units} scale={shelfScale([offcut])} />
    <p>
      <span class="pencil">{offcut.code}</span>
      Write this on {offcut.count > 1 ? `the back of all ${offcut.count}` : 'its back'}.
    </p>
    <p>
      {offcut.count > 1 ? `${offcut.count} × ` : ''}
      {printExactSize(offcut, units)} of {fullName(offcut.design)}
      {offcut.place === '' ? '' : `, ${offcut.place}`}.{' '}
      <a href={`/offcuts/${offcut.id}/edit`}>Put it right</a>
    </p>
  </div>
);
