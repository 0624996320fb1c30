/** One pad: how many sheets are left, its designs with theirs, and what was noted when it came. */
import type { FC } from 'hono/jsx';
import type { Design, PadWithDesigns } from '#core/project/stash.ts';
import { inches, type Units } from '#shared/length.ts';
import { SheetPicture } from '#views/designs/picture.tsx';
import { Shelf, type ShelfProps } from '#views/offcuts/tile.tsx';
import { isLow } from '#views/stash/pads.tsx';
import { scaleFor } from '#views/stash/paper.tsx';
import { howMany, padFacts, sayPrint } from '#views/stash/words.ts';

interface Props extends PadWithDesigns {
  /** The offcuts of all its designs. */
  readonly shelf: Omit<ShelfProps, 'units'>;
  readonly units: Units;
}

export const PadPage: FC<Props> = ({ pad, designs, sheets, shelf, units }) => (
  <>
    <div class="spread">
      <h1>{pad.name}</h1>
      <a class="button no-print" href={`/pads/${pad.id}/designs/new`}>
        Add a design
      </a>
    </div>
    <p class="answer">
      <strong>{howMany(sheets, 'sheet')}</strong> left
      {isLow(pad.lowMark, sheets) ? <span class="low">, runs low</span> : null}
    </p>
    <p class="lead">{padFacts(pad, units)}</p>
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
    {shelf.offcuts.length === 0 ? null : (
      <section aria-labelledby="offcuts">
        <h2 id="offcuts">Offcuts of it</h2>
        <Shelf {...shelf} units={units} />
      </section>
    )}
    <details>
      <summary>About this pad</summary>
      <dl class="facts">
        <dt>Low mark</dt>
        <dd>{pad.lowMark === 0 ? 'no reminder' : howMany(pad.lowMark, 'sheet')}</dd>
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
  </>
);

const DesignCard: FC<{ design: Design; units: Units }> = ({ design, units }) => (
  <li class={design.sheets === 0 ? 'none' : undefined}>
    <a href={`/designs/${design.id}`}>
      <SheetPicture design={design} scale={scaleFor([design.pad.sheet], 132, inches(6))} />
      <b>{design.name}</b>
    </a>
    <p>{howMany(design.sheets, 'sheet')}</p>
    <p class="quiet">
      {design.print.direction === 'any way' ? '' : sayPrint(design.print, units)}
      {design.doubleSided ? ' printed on both sides' : ''}
    </p>
  </li>
);
