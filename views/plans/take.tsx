/** What to fetch before the first cut: each piece with where it lies, and which of them is a part as it is. */
import type { FC } from 'hono/jsx';
import { sizeOf } from '#core/stash/measured.ts';
import { printExactSize } from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import { SwatchChip } from '../diagrams/swatch.tsx';
import type { PlanView } from './view.ts';
import { labelsOf } from './words.ts';

export const Take: FC<PlanView> = (view) => (
  <ul class="take">
    {[...new Set(view.plan.plan.used.map(({ piece }) => piece))].map((id) => (
      <Taken {...view} id={id} />
    ))}
  </ul>
);

const Taken: FC<PlanView & { id: string }> = ({ id, ...view }) => {
  const { plan, designs, offcuts, units } = view;
  const piece = plan.pieces.find((one) => one.id === id)!;
  const { ref } = piece;
  const design = designs.get(ref.design);
  const offcut = ref.offcut === null ? undefined : offcuts.get(ref.offcut);
  const patterns = plan.plan.patterns.flatMap(({ pieces }, index) => (pieces.includes(id) ? [index] : []));
  const count = plan.plan.used.filter((one) => one.piece === id).length;
  return (
    <li>
      {design ? (
        <SwatchChip
          id={`take-${patterns[0]! + 1}-${id}`}
          swatch={design.swatch}
          name={design.name}
          size={22}
        />
      ) : null}
      <span>
        {patterns.map((pattern) => (
          <>
            <a class="which" href={`#piece-${pattern + 1}`}>
              {pattern + 1}
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
        {printExactSize(sizeOf(piece), units)}
        {offcut?.place ? `, from ${offcut.place}` : ''}
        {patterns.map((pattern) => sayWhole(pattern, patterns.length > 1, view))}
      </span>
    </li>
  );
};

/** `; needs no cut, it has the size of “Front”`, of a piece that is a part as it lies. */
function sayWhole(pattern: number, several: boolean, { plan, titles }: PlanView): string {
  const { steps, rectangles } = plan.plan.patterns[pattern]!;
  if (steps.length > 0) return '';
  const { name } = labelsOf(plan, titles).get(rectangles[0]!.part)!;
  return `; ${several ? `${pattern + 1} ` : ''}needs no cut, it has the size of “${name}”`;
}
