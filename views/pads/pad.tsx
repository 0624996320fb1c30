/** One pad: how many sheets are left, its designs with theirs, and what was noted when it came. */

import type { FC } from 'hono/jsx';
import { designRunsLow, runsLow } from '#core/stash/low.ts';
import type { Design, Pad, PadWithDesigns } from '#core/stash/stash.ts';
import { inches, type Units } from '#shared/length.ts';
import { printMoney } from '#shared/money.ts';
import type { Standing } from '#shared/put-away.ts';
import { boughtField } from '#shared/schemas/pad.ts';
import { AwayNote, PutAway } from '#views/common/away.tsx';
import { type Entry, Field, FormProblems } from '#views/common/field.tsx';
import { InPlace } from '#views/common/in-place.tsx';
import { Once } from '#views/common/once.tsx';
import { howMany } from '#views/common/words.ts';
import { SheetPicture } from '#views/designs/picture.tsx';
import { Shelf, type ShelfProps } from '#views/offcuts/tile.tsx';
import { scaleFor } from '#views/stash/paper.tsx';
import { padFacts, sayAsIs, sayPrintOf } from '#views/stash/words.ts';

interface Props extends PadWithDesigns {
  /** The offcuts of all its designs. */
  readonly shelf: ShelfProps;
  readonly standing: Standing | undefined;
  readonly entry: Entry;
  readonly units: Units;
  readonly currency: string;
}

export const PadPage: FC<Props> = ({ pad, designs, sheets, shelf, standing, entry, units, currency }) => {
  const asIs = sayAsIs(pad, units);
  return (
    <>
      <div class="spread">
        <InPlace kind="pad-name" id={pad.id} text={pad.name} />
        <a class="button no-print" href={`/pads/${pad.id}/designs/new`}>
          Add a design
        </a>
      </div>
      <AwayNote standing={standing} />
      <p class="answer">
        <strong>{howMany(sheets, 'sheet')}</strong> left
        {runsLow({ pad, sheets }) ? <span class="low">, runs low</span> : null}
      </p>
      <p class="lead">{padFacts(pad, units)}</p>
      {asIs === undefined ? null : <p>{asIs}</p>}
      {designs.length === 0 ? (
        <p>
          It has no designs yet. <a href={`/pads/${pad.id}/designs/new`}>Say which it has</a>, and how many
          sheets of each.
        </p>
      ) : (
        <ul class="designs">
          {designs.map((design) => (
            <DesignCard design={design} units={units} />
          ))}
        </ul>
      )}
      {designs.length === 0 ? null : (
        <section class="no-print">
          <details open={entry.problems.length > 0}>
            <summary>Bought more of it</summary>
            <Purchase pad={pad} designs={designs} entry={entry} token={shelf.token} />
          </details>
        </section>
      )}
      {shelf.alike.length === 0 && !shelf.went ? null : (
        <section aria-labelledby="offcuts">
          <h2 id="offcuts">Offcuts of it</h2>
          <Shelf {...shelf} />
        </section>
      )}
      <About pad={pad} currency={currency} />
      <PutAway standing={standing} />
    </>
  );
};

const About: FC<{ pad: Pad; currency: string }> = ({ pad, currency }) => (
  <details>
    <summary>About this pad</summary>
    <dl class="facts">
      <dt>Low mark</dt>
      <dd>{pad.lowMark === 0 ? 'no reminder' : howMany(pad.lowMark, 'sheet')}</dd>
      {pad.price ? (
        <>
          <dt>Price</dt>
          <dd>
            {printMoney(pad.price.hundredths, currency)} for {howMany(pad.price.sheets, 'sheet')}
          </dd>
        </>
      ) : null}
      <dt>Came from</dt>
      <dd>{pad.source || 'not noted'}</dd>
      {pad.note === '' ? null : (
        <>
          <dt>Note</dt>
          <dd class="note">{pad.note}</dd>
        </>
      )}
    </dl>
    <p>
      <a href={`/pads/${pad.id}/edit`}>Put it right</a>
    </p>
  </details>
);

const Purchase: FC<{ pad: Pad; designs: readonly Design[]; entry: Entry; token: string }> = (props) => (
  <form method="post" action={`/pads/${props.pad.id}/purchases`}>
    <Once token={`${props.token}-bought`} />
    <FormProblems entry={props.entry} fields={props.designs.map((design) => boughtField(design.id))} />
    <div class="fields">
      {props.designs.map((design) => (
        <Field name={boughtField(design.id)} label={design.name} kind="count" entry={props.entry} />
      ))}
    </div>
    <button type="submit" class="plain">
      Add these sheets
    </button>
  </form>
);

const DesignCard: FC<{ design: Design; units: Units }> = ({ design, units }) => (
  <li class={design.sheets === 0 ? 'none' : undefined}>
    <a href={`/designs/${design.id}`}>
      <SheetPicture design={design} scale={scaleFor([design.pad.sheet], 132, inches(6))} />
      <b>{design.name}</b>
    </a>
    <p>
      {howMany(design.sheets, 'sheet')}
      {designRunsLow(design) ? <span class="low">, low</span> : null}
    </p>
    <p class="quiet">
      {design.print.direction === 'any way' ? '' : sayPrintOf(design, units)}
      {design.doubleSided ? ' printed on both sides' : ''}
    </p>
  </li>
);
