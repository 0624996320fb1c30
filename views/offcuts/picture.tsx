/** An offcut drawn in proportion, in its design's print. Knows no page. */
import type { FC } from 'hono/jsx';
import type { Offcut } from '#core/stash/stash.ts';
import { inches, printExactSize, type Units } from '#shared/length.ts';
import { Paper, scaleFor } from '#views/stash/paper.tsx';
import { fullName } from '#views/stash/words.ts';

/** One scale for all of them, at which the longest is as long as a tile is wide. */
export const shelfScale = (offcuts: readonly Offcut[]): number => scaleFor(offcuts, 150, inches(6));

export const OffcutPicture: FC<{ offcut: Offcut; units: Units; scale: number }> = ({
  offcut,
  units,
  scale,
}) => (
  <Paper
    id={`paper-${offcut.id}`}
    name={`${offcut.code}: ${printExactSize(offcut, units)} of ${fullName(offcut.design)}`}
    swatch={offcut.design.swatch}
    size={offcut}
    border={offcut.border ? borderOf(offcut) : undefined}
    scale={scale}
  />
);

const borderOf = ({ design }: Offcut) =>
  design.print.direction === 'one edge' ? design.print.border : undefined;
