/** A whole sheet of a design, drawn in proportion. Knows no page. */
import type { FC } from 'hono/jsx';
import type { Design, NewDesign, Pad } from '#core/stash/stash.ts';
import { wholeSheet } from '#shared/sheet.ts';
import { Paper } from '#views/stash/paper.tsx';

interface Props {
  readonly design: Pick<NewDesign, 'name' | 'print' | 'swatch'> &
    Pick<Design, 'wholePrint'> & { readonly id?: number; readonly pad: Pad };
  readonly scale: number;
}

export const SheetPicture: FC<Props> = ({ design, scale }) => {
  const print = design.wholePrint ?? design.print;
  return (
    <Paper
      id={`sheet-${design.id ?? 'new'}`}
      name={`A sheet of ${design.name || 'this design'}`}
      swatch={design.swatch}
      size={wholeSheet(design.pad)}
      border={print.direction === 'one edge' ? print.border : undefined}
      strip={design.pad.strip}
      scale={scale}
    />
  );
};
