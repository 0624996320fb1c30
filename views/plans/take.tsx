/** What to fetch before the first cut: each piece with where it lies, and which of them is a part as it is. */
import type { FC } from 'hono/jsx';
import { isCut } from '#core/cutting/cuts.ts';
import { sizeOf } from '#core/project/measured.ts';
import { refOfPiece } from '#core/project/order.ts';
import { printSize } from '#shared/length.ts';
import { howMany } from '#views/parts/words.ts';
import { SwatchChip } from '../diagrams/swatch.tsx';
import { type Alike, alike } from './pieces.tsx';
import type { PlanView } from './view.ts';
import { labelsOf } from './words.ts';

/** Pieces that are cut alike, with the number of their drawing. */
interface Drawn extends Alike {
  readonly drawing: number;
}

export const Take: FC<PlanView> = (view) => {
  const pieces = new Map<string, Drawn[]>();
  alike(view.plan).forEach((one, index) => {
    const { piece } = one.used;
    pieces.set(piece, [...(pieces.get(piece) ?? []), { ...one, drawing: index + 1 }]);
  });
  return (
    <ul class="take">
      {[...pieces].map(([id, drawn]) => (
        <Taken {...view} id={id} drawn={drawn} />
      ))}
    </ul>
  );
};

const Taken: FC<PlanView & { id: string; drawn: readonly Drawn[] }> = ({ id, drawn, ...view }) => {
  const { plan, designs, offcuts, units } = view;
  const piece = plan.pieces.find((one) => one.id === id)!;
  const ref = refOfPiece(piece);
  const design = designs.get(ref.design);
  const offcut = ref.offcut === null ? undefined : offcuts.get(ref.offcut);
  const count = drawn.reduce((sum, one) => sum + one.indices.length, 0);
  return (
    <li>
      {design ? (
        <SwatchChip id={`take-${drawn[0]!.drawing}`} swatch={design.swatch} name={design.name} size={22} />
      ) : null}
      <span>
        {drawn.map(({ drawing }) => (
          <>
            <a class="which" href={`#piece-${drawing}`}>
              {drawing}
            </a>{' '}
          </>
        ))}
        {offcut && count > 1 ? <b>{count} × </b> : null}
        {offcut ? (
          <span class="code">{offcut.code}</span>
        ) : (
          <b>
            {howMany(count, 'new sheet')} of {design?.name ?? 'a design that is gone'}
          </b>
        )}{' '}
        {printSize(sizeOf(piece), units)}
        {offcut?.place ? `, from ${offcut.place}` : ''}
        {drawn.map((one) => sayWhole(one, drawn.length > 1, view))}
      </span>
    </li>
  );
};

/** `; needs no cut, it has the size of “Front”`, of a piece that is a part as it lies. */
function sayWhole({ used: { cuts }, drawing }: Drawn, several: boolean, { plan, titles }: PlanView): string {
  if (isCut(cuts) || !('part' in cuts)) return '';
  const { name } = labelsOf(plan, titles).get(cuts.part)!;
  return `; ${several ? `${drawing} ` : ''}needs no cut, it has the size of “${name}”`;
}
