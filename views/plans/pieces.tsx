/** Every piece that a plan cuts, drawn to one scale with its parts in place; pieces cut alike share a drawing. */
import type { FC } from 'hono/jsx';
import type { UsedPiece } from '#core/cutting/cuts.ts';
import { type DrawnPiece, pieceDrawing, pieceScale } from '#core/drawing/piece.ts';
import { rectangleOf, sizeOf } from '#core/project/measured.ts';
import { refOfPiece } from '#core/project/order.ts';
import type { FoundPlan } from '#core/project/planned.ts';
import { Picture } from '../diagrams/picture.tsx';
import type { PlanView } from './view.ts';
import { labelsOf } from './words.ts';

/** Pieces of one kind that are cut alike, by their places in the plan. */
export interface Alike {
  readonly used: UsedPiece;
  readonly indices: readonly number[];
}

export function alike({ plan }: FoundPlan): Alike[] {
  const groups = new Map<string, { used: UsedPiece; indices: number[] }>();
  for (const [index, used] of plan.used.entries()) {
    const key = JSON.stringify([used.piece, used.cuts]);
    if (!groups.has(key)) groups.set(key, { used, indices: [] });
    groups.get(key)!.indices.push(index);
  }
  return [...groups.values()];
}

export const Pieces: FC<PlanView & { width: number; height: number }> = ({ width, height, ...view }) => {
  const groups = alike(view.plan);
  const drawn = groups.map(({ used }, index) => drawnPiece(used, index + 1, view));
  const scale = pieceScale(drawn, width, height);
  return (
    <ul class="plan-pieces">
      {drawn.map((piece, index) => (
        <li id={`piece-${index + 1}`}>
          <Picture drawing={pieceDrawing(piece, view.units, scale)} id={`plan-piece-${index}`} />
          <p>{sayPiece(groups[index]!, view)}</p>
        </li>
      ))}
    </ul>
  );
};

/** `Fern, 2 new sheets cut alike`, `Fern, from tray 1` */
function sayPiece({ used, indices }: Alike, { plan, designs, offcuts }: PlanView): string {
  const { design, offcut } = refOfPiece(plan.pieces.find(({ id }) => id === used.piece)!);
  const name = designs.get(design)?.name ?? 'a design that is gone';
  const many = indices.length;
  if (offcut === null) return `${name}, ${many === 1 ? 'a new sheet' : `${many} new sheets cut alike`}`;
  const place = offcuts.get(offcut)?.place ?? '';
  return `${name}${place === '' ? '' : `, from ${place}`}${many > 1 ? `: ${many} cut alike` : ''}`;
}

/** Numbered as the steps name it. */
function drawnPiece(
  used: UsedPiece,
  number: number,
  { plan, designs, offcuts, titles }: PlanView,
): DrawnPiece {
  const piece = plan.pieces.find(({ id }) => id === used.piece)!;
  const { design: id, offcut } = refOfPiece(piece);
  const design = designs.get(id);
  const labels = labelsOf(plan, titles);
  const bordered = piece.edges?.includes('bottom') && design?.print.direction === 'one edge';
  return {
    ...sizeOf(piece),
    code: `${number} · ${offcut === null ? (design?.name ?? 'Sheet') : (offcuts.get(offcut)?.code ?? 'Offcut')}`,
    parts: used.rectangles.map((one) => ({ ...rectangleOf(one), ...labels.get(one.part)! })),
    leftovers: used.leftovers.map(rectangleOf),
    upright: piece.upright === true,
    ...(bordered && design.print.direction === 'one edge' && { border: design.print.border }),
    ...(design && { swatch: design.swatch }),
  };
}
