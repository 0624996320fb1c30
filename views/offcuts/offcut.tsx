/** One offcut: its code as on its back, drawn large, where it lies, and what can happen to it by hand. */
import type { FC } from 'hono/jsx';
import type { Movement, Offcut } from '#core/project/stash.ts';
import { inches, printSize, type Units } from '#shared/length.ts';
import { type Entry, Field } from '#views/parts/field.tsx';
import { Once } from '#views/parts/once.tsx';
import { Ledger } from '#views/stash/ledger.tsx';
import { scaleFor } from '#views/stash/paper.tsx';
import { fullName, sayPrint } from '#views/stash/words.ts';
import { OffcutPicture } from './picture.tsx';
import { LetGo, PutBack } from './tile.tsx';

interface Props {
  readonly offcut: Offcut;
  readonly movements: readonly Movement[];
  /** Titles of the projects that the ledger names. */
  readonly projects: ReadonlyMap<number, string>;
  readonly went: boolean;
  readonly entry: Entry;
  readonly units: Units;
  readonly token: string;
}

export const OffcutPage: FC<Props> = ({ offcut, movements, projects, went, entry, units, token }) => {
  const here = `/offcuts/${offcut.id}`;
  const cut = movements.find((line) => line.reversedBy === null && line.reverses === null && line.delta < 0);
  return (
    <>
      <p>
        <a href={`/designs/${offcut.design.id}`}>{fullName(offcut.design)}</a>
      </p>
      <h1>
        <span class="code">{offcut.code}</span>
      </h1>
      <div class="beside">
        <OffcutPicture offcut={offcut} units={units} scale={scaleFor([offcut], 330, inches(6))} />
        <div>
          <p class="answer">
            {printSize(offcut, units)}
            {offcut.count > 1 ? `, ${offcut.count} alike` : ''}
          </p>
          {offcut.place === '' ? null : <p class="lead">{offcut.place}</p>}
          <p>{capital(sayPrint(printOf(offcut), units))}.</p>
          {offcut.note === '' ? null : <p class="note">{offcut.note}</p>}
          {offcut.count === 0 && cut?.kind === 'cut' ? (
            <p class="answer">
              It was cut for{' '}
              <a href={`/projects/${cut.project}`}>{projects.get(cut.project!) ?? 'a project'}</a>.
            </p>
          ) : went || offcut.count === 0 ? (
            <div class="done">
              <PutBack offcut={offcut} back={here} token={`${token}-back`} whole />
            </div>
          ) : (
            <LetGo offcut={offcut} back={here} token={`${token}-gone`} whole />
          )}
          <details open={entry.problems.length > 0}>
            <summary>Count again, or put it right</summary>
            <form method="post" action={`${here}/counts`} class="row">
              <Once token={`${token}-count`} />
              <Field
                name="counted"
                label="How many there are"
                kind="count"
                entry={entry}
                value={`${offcut.count}`}
              />
              <button type="submit" class="plain">
                That is what I count
              </button>
            </form>
            <p>
              <a href={`${here}/edit`}>Change its size, place or note</a>
            </p>
          </details>
          <details>
            <summary>What became of it</summary>
            <Ledger movements={movements} left={offcut.count} projects={projects} back={here} />
          </details>
        </div>
      </div>
    </>
  );
};

const printOf = ({ design, border }: Offcut) =>
  design.print.direction === 'one edge' && !border ? ({ direction: 'upright' } as const) : design.print;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
