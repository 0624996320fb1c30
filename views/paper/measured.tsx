/** A finished card measured beside what its layers were reckoned to; and what that says of the maker's cards. */
import type { FC } from 'hono/jsx';
import {
  BULKS_NEEDED,
  type BulkHabit,
  type BulkMeasured,
  MOST_CORRECTED,
} from '#core/paper/bulk-measured.ts';
import {
  inches,
  type Length,
  length,
  printExact,
  roundToStep,
  toMillimetres,
  type Units,
} from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import { type Entry, Field } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { sayRange } from './page.tsx';

interface Props {
  /** The newest first. */
  readonly measured: readonly (BulkMeasured & { readonly id: number })[];
  readonly habit: BulkHabit | undefined;
  readonly fields: Readonly<Record<string, string>>;
  readonly entry: Entry;
  readonly token: string;
  readonly units: Units;
}

export const MeasureBulk: FC<Props> = ({ measured, habit, fields, entry, token, units }) => (
  <section class="no-print">
    <form method="post" action="/paper/card" class="sheet">
      <h2>Is it made? Measure it</h2>
      <Once token={token} />
      {Object.entries(fields).map(([name, value]) => (
        <input type="hidden" name={name} value={value} />
      ))}
      <Field
        name="measured"
        label="It is really"
        kind="length"
        entry={entry}
        hint="thick, closed, where it is thickest"
      />
      <button type="submit">Write it down</button>
    </form>
    {habit ? <p>{sayBulkHabit(habit, units)}</p> : null}
    {measured.length > 0 ? (
      <details>
        <summary>{howMany(measured.length, 'card')} measured</summary>
        <ul class="list">
          {measured.map((one) => (
            <li class="spread">
              <span>
                {sayRange(one.measured, one.measured, units)}, reckoned {sayRange(one.least, one.most, units)}
              </span>
              <form method="post" action={`/paper/bulks/${one.id}`}>
                <input type="hidden" name="_method" value="DELETE" />
                <button type="submit" class="plain small">
                  It was a mistake
                </button>
              </form>
            </li>
          ))}
        </ul>
      </details>
    ) : null}
  </section>
);

/** `Your cards came out about ¹⁄₆₄″ thicker than reckoned, over 5 cards.` */
function sayBulkHabit({ thicker, cards }: BulkHabit, units: Units): string {
  const over = `over ${howMany(cards, 'card')}`;
  const amount = sayAmount(thicker, units);
  if (amount === undefined) return `Your cards came out about as thick as reckoned, ${over}.`;
  return `Your cards came out about ${amount} ${thicker > 0 ? 'thicker' : 'thinner'} than reckoned, ${over}.`;
}

/** Whether the maker takes it into account, on the page of her tools. */
export const BulkCorrection: FC<{ habit: BulkHabit | undefined; correction: Length; units: Units }> = ({
  habit,
  correction,
  units,
}) =>
  habit === undefined && correction === 0 ? null : (
    <section>
      <h2>How thick a card comes out</h2>
      {habit ? <p>{sayBulkHabit(habit, units)}</p> : null}
      {correction === 0 ? null : (
        <form method="post" action="/paper/correction">
          <input type="hidden" name="_method" value="DELETE" />
          <p>
            Every card is reckoned {sayCorrection(correction, units)}, as you asked.{' '}
            <button type="submit" class="plain small">
              Reckon as is usual
            </button>
          </p>
        </form>
      )}
      {habit && habit.cards >= BULKS_NEEDED && habit.thicker !== correction ? (
        <form method="post" action="/paper/correction">
          <p>
            <button type="submit" class="plain small">
              Reckon with that from now on
            </button>
          </p>
        </form>
      ) : null}
      <p class="quiet">
        It rests on <a href="/paper/card">cards by their layers</a> that you measured; never more than{' '}
        {sayAmount(MOST_CORRECTED, units)} either way.
      </p>
    </section>
  );

export const sayCorrection = (correction: Length, units: Units): string =>
  `${sayAmount(correction, units) ?? 'a hair'} ${correction > 0 ? 'thicker' : 'thinner'}`;

/** To a 64th or a tenth of a millimetre; undefined where nothing of it shows there. */
function sayAmount(thicker: Length, units: Units): string | undefined {
  const off = length(Math.abs(thicker));
  if (units.unit === 'mm') {
    const shown = toMillimetres(off).toFixed(1);
    return shown === '0.0' ? undefined : `${shown} mm`;
  }
  const shown = roundToStep(off, inches(1 / 64), 'nearest');
  return shown === 0 ? undefined : printExact(shown, units);
}
