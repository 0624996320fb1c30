/** The form of a pad: a new one, or one put right. */
import type { FC } from 'hono/jsx';
import type { Pad } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import { typedMoney } from '#shared/money.ts';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import { Choice, type Entry, Field, FormProblems, TextArea } from '#views/common/field.tsx';
import { Once } from '#views/common/once.tsx';
import { printGrammage } from '#views/stash/words.ts';
import { SHEET_FIELDS, SheetFields } from './size.tsx';

interface Props {
  /** The one to put right; a new one without. */
  readonly pad?: Pad;
  readonly entry: Entry;
  readonly units: Units;
  readonly currency: string;
  readonly token: string;
}

export const PadForm: FC<Props> = ({ pad, entry, units, currency, token }) => (
  <>
    <h1>{pad ? `Put ${pad.name} right` : 'Add a pad'}</h1>
    <p class="lead">
      Paper that was bought together: a pad, a packet, a roll cut up. Its designs, and how many sheets of
      each, come next.
    </p>
    <form method="post" action={pad ? `/pads/${pad.id}` : '/pads'} class="sheet">
      {pad ? <input type="hidden" name="_method" value="PUT" /> : <Once token={token} />}
      <FormProblems entry={entry} fields={FIELDS} />
      <Fields pad={pad} entry={entry} units={units} />
      <PriceFields pad={pad} entry={entry} currency={currency} />
      <p class="row">
        <button type="submit">{pad ? 'Keep it so' : 'Add it'}</button>
        <a href={pad ? `/pads/${pad.id}` : '/stash'}>{pad ? 'Leave it as it was' : 'Not now'}</a>
      </p>
    </form>
  </>
);

const FIELDS = ['name', 'kind', ...SHEET_FIELDS, 'weight', 'low', 'source', 'note', 'price', 'priceSheets'];

const PriceFields: FC<{ pad: Pad | undefined; entry: Entry; currency: string }> = ({
  pad,
  entry,
  currency,
}) => (
  <div class="fields">
    <Field
      name="price"
      label="Price"
      kind="count"
      entry={entry}
      value={pad?.price ? typedMoney(pad.price.hundredths) : ''}
      hint={
        currency === '' ? 'like £12.50; empty if you don’t mind' : `in ${currency}; empty if you don’t mind`
      }
    />
    <Field
      name="priceSheets"
      label="for so many sheets"
      kind="count"
      entry={entry}
      value={`${pad?.price?.sheets ?? ''}`}
      hint="as many as that bought"
    />
  </div>
);

const Fields: FC<{ pad: Pad | undefined; entry: Entry; units: Units }> = ({ pad, entry, units }) => (
  <>
    <div class="fields">
      <Field
        name="name"
        label="What you call it"
        entry={entry}
        value={pad?.name}
        hint="as on its cover, or your own word"
        autofocus
      />
      <Choice
        name="kind"
        label="Paper"
        entry={entry}
        value={pad?.kind}
        choices={PAPER_KINDS.map((kind) => ({ value: kind, label: kind }))}
      />
    </div>
    <SheetFields pad={pad} entry={entry} units={units} />
    <div class="fields">
      <Field
        name="weight"
        label="Weight"
        entry={entry}
        value={pad && pad.grammage !== null ? printGrammage(pad.grammage) : ''}
        hint="216 g/m² or 80 lb cover; empty if unknown"
      />
      <Field
        name="low"
        label="Low mark"
        kind="count"
        entry={entry}
        value={`${pad?.lowMark ?? 4}`}
        hint="say so at this many sheets; 0: never"
      />
      <Field name="source" label="Where it came from" entry={entry} value={pad?.source} optional />
    </div>
    <TextArea name="note" label="Note" entry={entry} value={pad?.note} />
  </>
);
