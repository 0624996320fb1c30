/** Every pattern of a plan drawn once, to one scale: how many pieces are cut so, and on the cut sheet at what settings. */
import type { FC } from 'hono/jsx';
import { settingsOfSteps } from '#core/cutting/steps.ts';
import { type DrawnPiece, pieceDrawing, pieceScale } from '#core/drawing/piece.ts';
import { rectangleOf, sizeOf } from '#core/stash/measured.ts';
import { howMany, listed } from '#views/common/words.ts';
import { Picture } from '../diagrams/picture.tsx';
import type { PlanView } from './view.ts';
import { labelsOf, sayTrue, tally } from './words.ts';

interface Props extends PlanView {
  readonly width: number;
  readonly height: number;
  readonly settings?: boolean;
}

export const Pieces: FC<Props> = ({ width, height, settings, ...view }) => {
  const drawn = view.plan.plan.patterns.map((_, pattern) => drawnPiece(pattern, view));
  const scale = pieceScale(drawn, width, height);
  return (
    <ul class="plan-pieces">
      {drawn.map((piece, pattern) => (
        <li id={`piece-${pattern + 1}`}>
          <Picture drawing={pieceDrawing(piece, view.units, scale)} id={`plan-piece-${pattern}`} />
          <p>
            {sayAlike(pattern, view)}
            {sayPieces(pattern, view)}
          </p>
          {settings ? <Settings {...view} pattern={pattern} /> : null}
        </li>
      ))}
    </ul>
  );
};

function sayAlike(pattern: number, { plan }: PlanView) {
  const count = plan.plan.patterns[pattern]!.pieces.length;
  return count === 1 ? null : (
    <>
      <strong>cut alike ×{count}</strong>:{' '}
    </>
  );
}

/** Its measures in the order in which they are set, each a way to its step. */
const Settings: FC<PlanView & { pattern: number }> = ({ pattern, plan, units }) => {
  const { steps } = plan.plan;
  const here = steps.filter(({ patterns }) => patterns.includes(pattern));
  if (here.length === 0) return <p>needs no cut</p>;
  return (
    <p class="pattern-settings">
      set{' '}
      {settingsOfSteps(here).map(([first], index) => (
        <>
          {index > 0 ? ' · ' : null}
          <a href={`/plans/${plan.id}/sheet?step=${steps.indexOf(first!) + 1}`}>
            {sayTrue(first!.set, units)}
          </a>
        </>
      ))}
    </p>
  );
};

/** `8 new sheets of Fern`, `K7 from tray 1`, `3 new sheets of Fern, 5 of Hare`. */
export function sayPieces(pattern: number, view: PlanView): string {
  const { plan, designs, offcuts } = view;
  const refs = plan.plan.patterns[pattern]!.pieces.map(
    (id) => plan.pieces.find((piece) => piece.id === id)!.ref,
  );
  const sheets = tally(
    refs.flatMap(({ design, offcut }) =>
      offcut === null ? [designs.get(design)?.name ?? 'a design that is gone'] : [],
    ),
  );
  const cut = tally(
    refs.flatMap(({ offcut }) => {
      const known = offcut === null ? undefined : offcuts.get(offcut);
      return known ? [`${known.code}${known.place === '' ? '' : ` from ${known.place}`}`] : [];
    }),
  );
  const opened = [...sheets].map(([name, count], index) =>
    index === 0 ? `${howMany(count, 'new sheet')} of ${name}` : `${count} of ${name}`,
  );
  return listed([...opened, ...[...cut].map(([name, count]) => (count > 1 ? `${count} × ${name}` : name))]);
}

/** Numbered as the steps name it. What its pieces do not share is not drawn, and which way up it lies always. */
function drawnPiece(pattern: number, { plan, designs, offcuts, titles }: PlanView): DrawnPiece {
  const { pieces: ids, used, rectangles } = plan.plan.patterns[pattern]!;
  const pieces = ids.map((id) => plan.pieces.find((piece) => piece.id === id)!);
  const refs = pieces.map(({ ref }) => ref);
  const several = new Set(refs.map(({ design }) => design)).size > 1;
  const design = designs.get(refs[0]!.design);
  const labels = labelsOf(plan, titles);
  const offcut = refs[0]!.offcut === null ? undefined : offcuts.get(refs[0]!.offcut);
  const name = offcut ? offcut.code : (design?.name ?? 'Sheet');
  const border = design?.print.direction === 'one edge' ? design.print.border : undefined;
  const bordered = !several && border !== undefined && pieces.every(({ edges }) => edges?.includes('bottom'));
  return {
    ...sizeOf(pieces[0]!),
    code: `${pattern + 1} · ${new Set(ids).size > 1 ? `${ids.length} pieces` : name}`,
    parts: rectangles.map((one) => ({ ...rectangleOf(one), ...labels.get(one.part)! })),
    leftovers: plan.plan.used[used[0]!]!.leftovers.map(rectangleOf),
    upright: pieces.some(({ upright }) => upright === true),
    ...(bordered && { border }),
    ...(design && !several && { swatch: design.swatch }),
  };
}
