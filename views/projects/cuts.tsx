/** What paper a project came from, taking by taking, each with what was left and its undo. */
import type { FC } from 'hono/jsx';
import type { CutRecord, RecordedPiece } from '#core/project/journal.ts';
import { type Design, ENVELOPE_PART } from '#core/stash/stash.ts';
import { printExactSize } from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import { When } from '../common/when.tsx';
import { SwatchChip } from '../diagrams/swatch.tsx';
import { CostLink } from './cost.tsx';
import type { ProjectView } from './view.ts';

export const Cuts: FC<ProjectView> = (view) =>
  view.full.cuts.length === 0 ? null : (
    <section>
      <h2>Paper</h2>
      <ul class="list">
        {view.full.cuts.map((cut) =>
          cut.undoneAt === null ? <Cut {...view} cut={cut} /> : <Undone cut={cut} />,
        )}
      </ul>
      <CostLink project={view.full.project.id} />
    </section>
  );

/** While nothing else has happened since, what was taken and its undo stand on top of the page. */
export const JustTaken: FC<ProjectView> = ({ full: { project, cuts }, designs }) => {
  const last = cuts.findLast((cut) => cut.undoneAt === null);
  if (last?.at !== project.changedAt) return null;
  const names = new Set(last.pieces.map(({ piece }) => designs.get(piece.design)?.name ?? 'the shelf'));
  return (
    <div class="done no-print" role="status">
      Taken from {[...names].join(', ')}. What is left over lies on your shelf.
      <Undo cut={last} />
    </div>
  );
};

const Cut: FC<ProjectView & { cut: CutRecord }> = ({ cut, ...view }) => (
  <li id={`cut-${cut.id}`}>
    {tally(cut.pieces).map(([piece, count], index) => (
      <Piece {...view} piece={piece} count={count} id={`cut-${cut.id}-${index}`} />
    ))}
    <div class="row">
      <small>
        Taken on <When at={cut.at} />
      </small>
      {view.full.envelopes.some((one) => one.cut === cut.id && one.state !== 'blank') ? null : (
        <Undo cut={cut} />
      )}
    </div>
  </li>
);

const Undo: FC<{ cut: CutRecord }> = ({ cut }) => (
  <form method="post" action={`/cuts/${cut.id}`}>
    <input type="hidden" name="_method" value="DELETE" />
    <button type="submit" class="plain small">
      Undo this taking
    </button>
  </form>
);

const Undone: FC<{ cut: CutRecord }> = ({ cut }) => (
  <li class="quiet no-print" id={`cut-${cut.id}`}>
    Taken on <When at={cut.at} />, undone on <When at={cut.undoneAt!} />: all of it is back on the shelf.
  </li>
);

const Piece: FC<ProjectView & { piece: RecordedPiece; count: number; id: string }> = (props) => {
  const { piece, count, designs, offcuts, units, id } = props;
  const design = designs.get(piece.piece.design);
  const offcut = piece.piece.offcut === null ? undefined : offcuts.get(piece.piece.offcut);
  const left = piece.leftovers.map((one) => ({ ...one, code: offcuts.get(one.offcut)?.code }));
  return (
    <div class="paper-used">
      {design ? <SwatchChip swatch={design.swatch} id={id} name={design.name} /> : null}
      <p>
        {count > 1 ? `${count} ` : ''}
        {offcut ? <span class="code">{offcut.code}</span> : count > 1 ? 'sheets' : 'One sheet'} of{' '}
        <DesignLink design={design} />, {printExactSize(piece, units)}
        <br />
        <small>
          {comesOff(piece)} from {count > 1 ? 'each' : 'it'}
          {left.length > 0 ? '; left over: ' : ', nothing left over'}
          {left.map((one, index) => (
            <>
              {index > 0 ? ', ' : ''}
              <a href={`/offcuts/${one.offcut}`} class="code">
                {one.code}
              </a>{' '}
              {printExactSize(one, units)}
            </>
          ))}
        </small>
      </p>
    </div>
  );
};

const DesignLink: FC<{ design: Design | undefined }> = ({ design }) =>
  design ? <a href={`/designs/${design.id}`}>{design.name}</a> : <>a design that is gone</>;

/** `3 blanks, 2 × Front panel` */
function comesOff({ parts }: RecordedPiece): string {
  const counts = new Map<string, number>();
  for (const { part } of parts) counts.set(part, (counts.get(part) ?? 0) + 1);
  return [...counts]
    .map(([part, count]) => (part === ENVELOPE_PART ? howMany(count, 'blank') : `${count} × ${part}`))
    .join(', ');
}

/** Pieces cut alike, with how many there are. */
function tally(pieces: readonly RecordedPiece[]): [RecordedPiece, number][] {
  const counts = new Map<string, [RecordedPiece, number]>();
  for (const piece of pieces) {
    const key = JSON.stringify([piece.piece, piece.parts.map(({ part }) => part), piece.leftovers]);
    counts.set(key, [piece, (counts.get(key)?.[1] ?? 0) + 1]);
  }
  return [...counts.values()];
}
