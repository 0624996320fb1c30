/** One offcut: its code as on its back, drawn large, where it lies, and what can happen to it by hand. */

import type { FC } from 'hono/jsx';
import { type Movement, type Offcut, wentByHand } from '#core/stash/stash.ts';
import { inches, printExactSize, type Units } from '#shared/length.ts';
import type { Standing as PaperStanding } from '#shared/put-away.ts';
import { AwayNote } from '#views/common/away.tsx';
import { type Entry, Field } from '#views/common/field.tsx';
import { InPlace } from '#views/common/in-place.tsx';
import { Once } from '#views/common/once.tsx';
import { capital } from '#views/common/words.ts';
import { Ledger } from '#views/stash/ledger.tsx';
import { scaleFor } from '#views/stash/paper.tsx';
import { askHolding, fullName, sayPrint } from '#views/stash/words.ts';
import { OffcutPicture } from './picture.tsx';
import { LetGo, PutBack } from './tile.tsx';

interface Props {
  readonly offcut: Offcut;
  /** Of its design or pad. */
  readonly standing: PaperStanding | undefined;
  readonly movements: readonly Movement[];
  /** Titles of the projects that the ledger names. */
  readonly projects: ReadonlyMap<number, string>;
  readonly went: boolean;
  readonly entry: Entry;
  readonly units: Units;
  readonly token: string;
}

export const OffcutPage: FC<Props> = (props) => {
  const { offcut, movements, projects, units } = props;
  return (
    <>
      <p>
        <a href={`/designs/${offcut.design.id}`}>{fullName(offcut.design)}</a>
      </p>
      <h1>
        <span class="code">{offcut.code}</span>
      </h1>
      <AwayNote standing={props.standing} />
      <div class="beside">
        <OffcutPicture offcut={offcut} units={units} scale={scaleFor([offcut], 330, inches(6))} />
        <div>
          <p class="answer">
            {printExactSize(offcut, units)}
            {offcut.count > 1 ? `, ${offcut.count} alike` : ''}
          </p>
          <InPlace kind="offcut-place" id={offcut.id} text={offcut.place} />
          <InPlace kind="offcut-count" id={offcut.id} text={`${offcut.count}`} />
          <p>{capital(sayPrint(printOf(offcut), units))}.</p>
          {offcut.note === '' ? null : <p class="note">{offcut.note}</p>}
          <Standing {...props} />
          {offcut.count === 0 ? null : (
            <p class="no-print">
              <a href={`/filling?offcut=${offcut.id}`}>What can I get out of this one?</a>
              <br />
              <a href={askHolding(offcut, units)}>What card would it hold?</a>
            </p>
          )}
          <CountAgain {...props} />
          <details>
            <summary>What became of it</summary>
            <Ledger
              movements={movements}
              left={offcut.count}
              projects={projects}
              back={`/offcuts/${offcut.id}`}
            />
          </details>
        </div>
      </div>
    </>
  );
};

/** Still there, or why not and whether that can be taken back. */
const Standing: FC<Props> = ({ offcut, movements, projects, went, token }) => {
  const form = { offcut, back: `/offcuts/${offcut.id}`, token: `${token}-moved`, whole: true };
  if (offcut.count > 0 && !went) return <LetGo {...form} />;
  const last = movements.find((line) => line.reversedBy === null && line.delta < 0);
  if (went || (last && wentByHand(last))) {
    return (
      <div class="done">
        <PutBack {...form} />
      </div>
    );
  }
  if (last?.kind !== 'cut') {
    return (
      <p class="lead">
        {last?.kind === 'counted' ? 'None was left when it was counted.' : 'Its cut was undone.'}
      </p>
    );
  }
  return (
    <p class="lead">
      It was cut for <a href={`/projects/${last.project}`}>{projects.get(last.project!) ?? 'a project'}</a>.
    </p>
  );
};

const CountAgain: FC<Props> = ({ offcut, entry, token }) => (
  <details class="no-print" open={entry.problems.length > 0}>
    <summary>Count again, or put it right</summary>
    <form method="post" action={`/offcuts/${offcut.id}/counts`} class="fields">
      <Once token={`${token}-count`} />
      <Field name="counted" label="How many there are" kind="count" entry={entry} value={`${offcut.count}`} />
      <p class="field press">
        <button type="submit" class="plain">
          That is what I count
        </button>
      </p>
    </form>
    <p>
      <a href={`/offcuts/${offcut.id}/edit`}>Change its size, place or note</a>
    </p>
  </details>
);

const printOf = ({ design, border }: Offcut) =>
  design.print.direction === 'one edge' && !border ? ({ direction: 'upright' } as const) : design.print;
