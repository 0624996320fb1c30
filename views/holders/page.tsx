/** What goes into a box, tin or pocket, and what holds a given number of sets. Works nothing out. */
import type { FC } from 'hono/jsx';
import type { Holder, InHolder } from '#core/sets/holder.ts';
import { printLength, printSize, typedLength, type Units } from '#shared/length.ts';
import { usualRoom } from '#shared/schemas/holders.ts';
import { asking, cardFields } from '#views/envelopes/query.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';

interface Asked {
  readonly units: Units;
  readonly entry: Entry;
}

export const HolderPage: FC<Asked & { inside: InHolder | undefined }> = ({ units, entry, inside }) => (
  <>
    <h1>What goes in?</h1>
    <form action="/holders" method="get" class="sheet">
      <FormProblems entry={entry} fields={['width', 'height', 'depth', 'play', 'clearance', 'setBulk']} />
      <div class="fields">
        <Field
          name="width"
          label="Inside width"
          kind="length"
          entry={entry}
          autofocus={!entry.typed.width}
          hint="of the box, tin or pocket"
        />
        <Field name="height" label="Inside height" kind="length" entry={entry} />
        <Field name="depth" label="Inside depth" kind="length" entry={entry} hint="sets lie one on another" />
      </div>
      <Room units={units} entry={entry} names={['setBulk', 'play', 'clearance']} />
      <button type="submit">See</button>
    </form>
    {inside ? <Inside {...inside} units={units} /> : null}
    <p>
      The other way round: <a href="/holders/sets">what would hold so many sets?</a>
    </p>
  </>
);

const Inside: FC<InHolder & { units: Units }> = ({ card, envelope, sets, units }) => (
  <section class="found">
    <p class="answer">
      Cards up to <strong>{printSize(card, units, 'down')}</strong>,{' '}
      {sets === 1 ? 'one set' : <>{sets} sets</>}.
    </p>
    <p class="lead">In envelopes up to {printSize(envelope, units, 'down')}, closed, one on another.</p>
    <p>
      <a href={envelopeFor(card, envelope, units)}>Find the envelope for that card</a>
    </p>
  </section>
);

/** The card as large as it may be, its envelope held to the holder. */
const envelopeFor = (card: InHolder['card'], envelope: InHolder['envelope'], units: Units): string =>
  asking(cardFields(card, units), {
    boxWidth: typedLength(envelope.width, units),
    boxHeight: typedLength(envelope.height, units),
  });

export const SetsPage: FC<Asked & { holder: (Holder & { readonly sets: number }) | undefined }> = ({
  units,
  entry,
  holder,
}) => (
  <>
    <h1>What holds them?</h1>
    <form action="/holders/sets" method="get" class="sheet">
      <FormProblems entry={entry} fields={['width', 'height', 'sets', 'play', 'setBulk']} />
      <div class="fields">
        <Field
          name="width"
          label="Envelope width"
          kind="length"
          entry={entry}
          autofocus={!entry.typed.width}
          hint="outside, closed"
        />
        <Field name="height" label="Envelope height" kind="length" entry={entry} />
        <Field name="sets" label="How many sets" kind="count" entry={entry} value="1" />
      </div>
      <Room units={units} entry={entry} names={['setBulk', 'play']} />
      <button type="submit">See</button>
    </form>
    {holder ? (
      <section class="found">
        <p class="answer">
          A box inside <strong>{printSize(holder, units, 'up')}</strong>,{' '}
          <strong>{printLength(holder.depth, units, 'up')}</strong> deep.
        </p>
        <p class="lead">
          For {holder.sets === 1 ? 'one set' : `${holder.sets} sets`} lying one on another. Paper springs: try
          it with the real stack before a box is made.
        </p>
      </section>
    ) : null}
    <p>
      The other way round: <a href="/holders">what goes into a box, a tin, a pocket?</a>
    </p>
  </>
);

type RoomName = keyof ReturnType<typeof usualRoom>;

const Room: FC<Asked & { names: readonly RoomName[] }> = ({ units, entry, names }) => {
  const usual = usualRoom(units);
  return (
    <div class="fields">
      {names.map((name) => (
        <Field
          name={name}
          label={ROOM[name].label}
          kind="length"
          entry={entry}
          value={typedLength(usual[name], units)}
          hint={ROOM[name].hint}
        />
      ))}
    </div>
  );
};

const ROOM: Readonly<Record<RoomName, { label: string; hint: string }>> = {
  setBulk: { label: 'One set’s bulk', hint: 'its card in its envelope' },
  play: { label: 'Room for fingers', hint: 'in all, either way' },
  clearance: { label: 'Envelope over card', hint: 'in all, either way' },
};
