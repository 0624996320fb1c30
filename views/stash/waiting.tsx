/** Paper that waits to be used: offcuts that have lain longest, with what each could become, and designs never cut. */
import type { FC } from 'hono/jsx';
import type { Becoming, Waiting } from '#core/batch/waiting.ts';
import { type Design, type Offcut, pieceOfOffcut } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import { SwatchChip } from '#views/diagrams/swatch.tsx';
import { Pages, type PagesProps } from '../common/pages.tsx';
import { When } from '../common/when.tsx';
import { startFrom } from '../filling/start.ts';
import { sayThing } from '../filling/words.ts';
import { OffcutPicture, shelfScale } from '../offcuts/picture.tsx';
import { padFacts } from './words.ts';

export interface WaitingOffcut extends Waiting<Offcut> {
  /** The first few. */
  readonly becomes: readonly Becoming[];
}

interface Props {
  readonly lain: readonly WaitingOffcut[];
  readonly unused: readonly Waiting<Design>[];
  readonly pages: { readonly lain: PagesProps; readonly unused: PagesProps };
  readonly hasCards: boolean;
  readonly units: Units;
}

export const WaitingPaper: FC<Props> = ({ lain, unused, pages, hasCards, units }) => (
  <>
    <h1>Waiting to be used</h1>
    <section aria-labelledby="lain">
      <h2 id="lain">Offcuts that have lain longest</h2>
      {lain.length === 0 ? <p class="quiet">No offcuts lie on the shelf.</p> : null}
      {hasCards || lain.length === 0 ? null : (
        <p>
          <a href="/tools/cards/new">Say which cards you draw</a>, and each offcut says here what it could
          become.
        </p>
      )}
      <ol class="list waiting">
        {lain.map((one) => (
          <LainOne {...one} scale={shelfScale(lain.map(({ paper }) => paper))} units={units} />
        ))}
      </ol>
      <Pages {...pages.lain} name="from" label="More offcuts" />
    </section>
    <section aria-labelledby="unused">
      <h2 id="unused">Designs never cut</h2>
      {unused.length === 0 ? <p class="quiet">Something was cut from every design on the shelf.</p> : null}
      <ul class="list waiting chips">
        {unused.map(({ paper, since }) => (
          <UnusedDesign design={paper} since={since} units={units} />
        ))}
      </ul>
      <Pages {...pages.unused} name="designs" label="More designs" />
    </section>
    <p>
      <a href="/stash">To the stash</a>
    </p>
  </>
);

const LainOne: FC<WaitingOffcut & { scale: number; units: Units }> = (props) => {
  const { paper: offcut, since, becomes, scale, units } = props;
  return (
    <li>
      <div class="stands">
        <OffcutPicture offcut={offcut} units={units} scale={scale} />
      </div>
      <div>
        <h3>
          <a class="code" href={`/offcuts/${offcut.id}`}>
            {offcut.code}
          </a>{' '}
          {printExactSize(offcut, units)}
          {offcut.count > 1 ? ` × ${offcut.count}` : ''}
        </h3>
        <p class="quiet">
          {offcut.design.name}
          {offcut.place === '' ? '' : `, ${offcut.place}`}, since <When at={since} />
        </p>
        {becomes.length === 0 ? null : <p>{offcut.count > 1 ? 'Each' : 'It'} could become</p>}
        <ul class="becomes">
          {becomes.map((one) => (
            <Become {...one} offcut={offcut} units={units} />
          ))}
        </ul>
        <p class="quiet no-print">
          <a href={`/filling?offcut=${offcut.id}`}>
            Fill it<span class="hidden"> ({offcut.code})</span> with something
          </a>
        </p>
      </div>
    </li>
  );
};

const Become: FC<Becoming & { offcut: Offcut; units: Units }> = ({ offer, count, offcut, units }) => {
  const words = `${count} ${sayThing(offer, count)}`;
  const start = startFrom(offer, count, pieceOfOffcut(offcut), units);
  return <li>{start === undefined ? `${words}, flat` : <a href={start}>{words}</a>}</li>;
};

const UnusedDesign: FC<{ design: Design; since: string; units: Units }> = ({ design, since, units }) => (
  <li>
    <SwatchChip id={`chip-${design.id}`} swatch={design.swatch} name={design.name} />
    <div>
      <p>
        <a href={`/designs/${design.id}`}>{design.name}</a>, {howMany(design.sheets, 'sheet')} since{' '}
        <When at={since} />
      </p>
      <p class="quiet">
        {design.pad.name} · {padFacts(design.pad, units)}
      </p>
      <p class="quiet no-print">
        <a href={`/filling?design=${design.id}`}>
          What comes out of a sheet<span class="hidden"> of {design.name}</span>?
        </a>
      </p>
    </div>
  </li>
);
