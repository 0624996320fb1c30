/** What comes before the first cut: a sheet's side to check once, a strip to cut off. Works nothing out. */
import type { FC } from 'hono/jsx';
import { type SideToCheck, type StripFirst, sidesToCheck, stripsFirst } from '#core/batch/sheets-first.ts';
import { printExact, type Units } from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import type { PlanView } from './view.ts';

/** Each with the way to put the pad right, where the sheet is shorter. */
export const Checks: FC<Pick<PlanView, 'plan' | 'designs' | 'units'>> = ({ plan, designs, units }) => {
  const sides = plan.cut ? [] : sidesToCheck(plan, designs);
  return sides.length === 0 ? null : (
    <ul class="checks">
      {sides.map((one) => (
        <li>
          <b>Check one sheet of {one.pad.name}</b>: {saySide(one, units)}.{' '}
          <a class="no-print" href={`/pads/${one.pad.id}/edit`}>
            It measures less
          </a>
        </li>
      ))}
    </ul>
  );
};

/** `209.5 mm across (the pad says 210 mm)`, `12″ across, the parts need all of it` */
function saySide({ pad, side, measure, spare }: SideToCheck, units: Units): string {
  const sold = pad.sheet[side];
  return [
    `${printExact(measure, units)} ${side === 'width' ? 'across' : 'from top to bottom'}`,
    ...(measure === sold ? [] : [` (the pad says ${printExact(sold, units)})`]),
    ...(spare === 0 ? [', the parts need all of it'] : []),
    ...(spare > 0 && measure === sold ? [', hardly any of it is to spare'] : []),
  ].join('');
}

/** What is kept lies against the fence. */
export const Strips: FC<Pick<PlanView, 'plan' | 'designs' | 'units'>> = ({ plan, designs, units }) => {
  const strips = stripsFirst(plan, designs);
  return strips.length === 0 ? null : (
    <div>
      <h2>First, cut off what can’t be used</h2>
      <ul>
        {strips.map((one) => (
          <li>
            <b>Set {printExact(one.set, units)}</b>: {howMany(one.sheets, 'sheet')} of {one.pad.name},{' '}
            <b>{one.fence} edge</b> to the fence. The strip along the {one.strip.edge} edge falls off,{' '}
            {printExact(one.strip.depth, units)} deep.{sayTooLong(one, plan.order.longestCut, units)}
          </li>
        ))}
      </ul>
    </div>
  );
};

const sayTooLong = ({ length }: StripFirst, longest: number | undefined, units: Units): string =>
  longest === undefined || length <= longest
    ? ''
    : ` The cut is ${printExact(length, units)} long, longer than your trimmer’s: mark it on both sides and cut along a metal ruler.`;
