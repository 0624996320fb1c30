/** A whole sheet of a design, drawn in proportion. Knows no page. */
import type { FC } from 'hono/jsx';
import type { NewDesign, Pad } from '#core/project/stash.ts';
import { Paper } from '#views/stash/paper.tsx';

interface Props {
  readonly design: Pick<NewDesign, 'name' | 'print' | 'swatch'> & { readonly id?: number; readonly pad: Pad };
  readonly scale: number;
}

export const SheetPicture: FC<Props> = ({ design, scale }) => (
  <Paper
    id={`sheet-${design.id ?? 'new'}`}
    name={`A sheet of ${design.name || 'this design'}`}
    swatch={design.swatch}
    size={design.pad.sheet}
    border={design.print.direction === 'one edge' ? design.print.border : undefined}
    scale={scale}
  />
);
