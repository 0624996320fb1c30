/** One design: the sheets left of it, its offcuts on the shelf, what can happen to it by hand, its ledger behind a tap. */

import type { FC } from 'hono/jsx';
import { designRunsLow } from '#core/stash/low.ts';
import type { Design, Movement } from '#core/stash/stash.ts';
import { inches, printExactSize, type Units } from '#shared/length.ts';
import type { Standing } from '#shared/put-away.ts';
import { usableSheet } from '#shared/sheet.ts';
import { AwayNote, PutAway } from '#views/common/away.tsx';
import { type Entry, Field } from '#views/common/field.tsx';
import { InPlace } from '#views/common/in-place.tsx';
import { Once } from '#views/common/once.tsx';
import { howMany } from '#views/common/words.ts';
import { Shelf, type ShelfProps } from '#views/offcuts/tile.tsx';
import { Ledger } from '#views/stash/ledger.tsx';
import { type DesignUse, PaceLine, UseDetails } from '#views/stash/pace.tsx';
import { scaleFor } from '#views/stash/paper.tsx';
import { askHolding, sayAsIs, sayPrintOf } from '#views/stash/words.ts';
import { LowMark } from './form.tsx';
import { SheetPicture } from './picture.tsx';

export interface DesignProps {
  readonly design: Design;
  readonly standing: Standing | undefined;
  /** Where its pad is put away, so is it. */
  readonly padStanding: Standing | undefined;
  readonly shelf: ShelfProps;
  readonly use: DesignUse;
  readonly movements: readonly Movement[];
  readonly projects: ReadonlyMap<number, string>;
  readonly entry: Entry;
  readonly units: Units;
  readonly token: string;
}

export const DesignPage: FC<DesignProps> = (props) => {
  const { design, standing, padStanding, shelf, movements, projects, use } = props;
  const here = `/designs/${design.id}`;
  return (
    <>
      <p>
        <a href={`/pads/${design.pad.id}`}>{design.pad.name}</a>
      </p>
      <InPlace kind="design-name" id={design.id} text={design.name} />
      <AwayNote standing={standing?.at ? standing : padStanding} />
      <div class="beside">
        <div>
          <SheetPicture design={design} scale={scaleFor([design.pad.sheet], 260, inches(6))} />
        </div>
        <div>
          <Facts {...props} />
          <Moves {...props} />
        </div>
      </div>
      <section aria-labelledby="offcuts">
        <div class="spread">
          <h2 id="offcuts">{shelf.alike.length === 0 ? 'No offcuts of it' : 'Its offcuts'}</h2>
          <a class="button plain no-print" href={`/offcuts/new?design=${design.id}`}>
            Add offcuts
          </a>
        </div>
        <div class="of-one">
          <Shelf {...shelf} />
        </div>
      </section>
      <UseDetails {...use} />
      <details class="no-print">
        <summary>What became of its sheets</summary>
        <Ledger movements={movements} left={design.sheets} projects={projects} back={here} />
      </details>
      <p class="no-print after">
        <a href={`${here}/edit`}>Put its name, print or look right</a>
      </p>
      <PutAway standing={standing} />
    </>
  );
};

const Facts: FC<DesignProps> = ({ design, use, units }) => {
  const asIs = sayAsIs(design.pad, units);
  return (
    <>
      <p class="answer">
        <strong>{howMany(design.sheets, 'sheet')}</strong> left, {printExactSize(design.pad.sheet, units)}
        {designRunsLow(design) ? <span class="low">, runs low</span> : null}
      </p>
      <p class="lead">
        The {sayPrintOf(design, units)}; printed on {design.doubleSided ? 'both sides' : 'one side'}.
      </p>
      <PaceLine sheets={design.sheets} use={use} />
      {asIs === undefined ? null : <p>{asIs}</p>}
      {design.sheets === 0 ? null : (
        <p class="no-print">
          <a href={`/filling?design=${design.id}`}>What can I get out of one sheet?</a>
          <br />
          <a href={askHolding(usableSheet(design.pad), units)}>What card would a sheet of it hold?</a>
        </p>
      )}
    </>
  );
};

const Moves: FC<DesignProps> = ({ design, entry, token }) => {
  const here = `/designs/${design.id}`;
  const wrong = new Set(entry.problems.map((problem) => problem.field));
  return (
    <div class="no-print">
      <details open={wrong.has('bought')}>
        <summary>Bought more</summary>
        <form method="post" action={`${here}/purchases`} class="fields">
          <Once token={`${token}-bought`} />
          <Field name="bought" label="Sheets bought" kind="count" entry={entry} />
          <p class="field press">
            <button type="submit" class="plain">
              Add them
            </button>
          </p>
        </form>
      </details>
      <details open={wrong.has('counted')}>
        <summary>Count again</summary>
        <form method="post" action={`${here}/counts`} class="fields">
          <Once token={`${token}-counted`} />
          <Field
            name="counted"
            label="Sheets there are"
            kind="count"
            entry={entry}
            value={`${design.sheets}`}
          />
          <p class="field press">
            <button type="submit" class="plain">
              That is what I count
            </button>
          </p>
        </form>
      </details>
      <LowMarkForm design={design} entry={entry} />
      {design.sheets === 0 && !wrong.has('lost') ? null : (
        <details open={wrong.has('lost')}>
          <summary>Some are gone</summary>
          <form method="post" action={`${here}/losses`} class="fields">
            <Once token={`${token}-lost`} />
            <Field
              name="lost"
              label="Sheets gone"
              kind="count"
              entry={entry}
              value="1"
              hint="given away, spoiled, used elsewhere"
            />
            <p class="field press">
              <button type="submit" class="plain">
                Take them off
              </button>
            </p>
          </form>
        </details>
      )}
    </div>
  );
};

const LowMarkForm: FC<Pick<DesignProps, 'design' | 'entry'>> = ({ design, entry }) => (
  <details open={entry.problems.some(({ field }) => field === 'lowMark')}>
    <summary>Low mark</summary>
    <form method="post" action={`/designs/${design.id}/low-mark`} class="fields">
      <input type="hidden" name="_method" value="PUT" />
      <LowMark design={design} entry={entry} />
      <p class="field press">
        <button type="submit" class="plain">
          Remind me then
        </button>
      </p>
    </form>
  </details>
);
