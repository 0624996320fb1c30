/** A card described by its layers: thickness, weight, grain; and on to its envelope. Works nothing out. */
import type { FC } from 'hono/jsx';
import { type BulkMeasured, bulkHabit } from '#core/paper/bulk-measured.ts';
import type { Layered } from '#core/paper/layers.ts';
import { type Length, printSize, type Units } from '#shared/length.ts';
import { printMass, typedMass } from '#shared/mass.ts';
import { GRAINS } from '#shared/schemas/paper.ts';
import { massUnit } from '#shared/schemas/post.ts';
import type { Size } from '#shared/size.ts';
import { asking, cardFields } from '#views/envelopes/query.ts';
import { Choice, type Entry, Field, FormProblems } from '../common/field.tsx';
import { MeasureBulk, sayCorrection } from './measured.tsx';
import { sayRange } from './page.tsx';

interface Props {
  readonly units: Units;
  readonly entry: Entry;
  /** As it is reckoned, with her correction where she took one. */
  readonly card: (Layered & { readonly size: Size }) | undefined;
  readonly correction: Length;
  readonly measured: readonly (BulkMeasured & { readonly id: number })[];
  readonly token: string;
}

export const CardPage: FC<Props> = ({ units, entry, card, correction, measured, token }) => (
  <>
    <h1>A card by its layers</h1>
    {card ? <Answer {...card} correction={correction} units={units} /> : null}
    {card ? (
      <MeasureBulk
        {...{ measured, entry, token, units }}
        habit={bulkHabit(measured)}
        fields={Object.fromEntries(FIELDS.map((name) => [name, entry.typed[name] ?? '']))}
      />
    ) : null}
    <form action="/paper/card" method="get" class="sheet">
      <FormProblems entry={entry} fields={[...FIELDS, 'measured']} />
      <div class="fields">
        <Field
          name="width"
          label="Card width"
          kind="length"
          entry={entry}
          autofocus={!entry.typed.width}
          hint="folded"
        />
        <Field name="height" label="Card height" kind="length" entry={entry} />
      </div>
      <div class="fields">
        <Field name="base" label="The card itself" entry={entry} value="80 lb cover" hint={WEIGHT} />
        <Choice
          name="grain"
          label="Its grain runs"
          entry={entry}
          value="not known"
          choices={GRAINS.map((grain) => ({ value: grain, label: grain }))}
        />
      </div>
      <div class="fields">
        {LAYERS.map(({ name, label }) => (
          <Field name={name} label={label} entry={entry} hint={WEIGHT} optional />
        ))}
      </div>
      <div class="fields">
        <Field
          name="raisedBy"
          label="Stands out by"
          kind="length"
          entry={entry}
          hint="foam, a bow, a charm"
        />
        <Field name="extra" label="And weighs" kind="length" entry={entry} hint="what isn’t paper" />
      </div>
      <button type="submit">See</button>
    </form>
  </>
);

const WEIGHT = 'like 65 lb cover, 160 g/m²';

const LAYERS = [
  { name: 'layer1', label: 'First layer on its front' },
  { name: 'layer2', label: 'Second layer' },
  { name: 'layer3', label: 'Third layer' },
  { name: 'inside', label: 'A panel inside' },
] as const;

const FIELDS = ['width', 'height', 'base', 'grain', 'raisedBy', 'extra', ...LAYERS.map(({ name }) => name)];

const Answer: FC<Layered & { size: Size; correction: Length; units: Units }> = ({
  bulk,
  mass,
  lumps,
  notes,
  size,
  correction,
  units,
}) => (
  <section class="found">
    <p class="answer">
      <strong>{sayRange(bulk.least, bulk.most, units)}</strong> thick,{' '}
      <strong>{printMass(mass, massUnit(units))}</strong>.
    </p>
    {correction === 0 ? null : (
      <p class="quiet">
        Reckoned {sayCorrection(correction, units)} than usual, as you asked on{' '}
        <a href="/tools">your tools</a>.
      </p>
    )}
    {lumps ? <p>Something stands up from it: to the post it is uneven.</p> : null}
    <ul>
      {notes.map((note) => (
        <li>{note}</li>
      ))}
    </ul>
    <p>
      <a
        href={asking(cardFields({ ...size, bulk: bulk.most }, units), {
          cardMass: typedMass(mass, massUnit(units)),
        })}
      >
        Find the envelope for this {printSize(size, units)} card, as thick as it may be, and ask whether it
        can be posted
      </a>
    </p>
  </section>
);
