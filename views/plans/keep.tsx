/** What is to stay on the shelf: designs of which no new sheet is opened, single offcuts. Everything may be used else. */
import type { FC } from 'hono/jsx';
import { pieceName } from '#core/batch/to-order.ts';
import { type Piece, refOf } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import type { Entry } from '../common/field.tsx';
import { SwatchChip } from '../diagrams/swatch.tsx';

interface Props {
  readonly pieces: readonly Piece[];
  readonly entry: Entry;
  readonly units: Units;
}

export const KeepChoice: FC<Props> = ({ pieces, entry, units }) => {
  const kept = pieces.filter((piece) => entry.typed[`keep.${pieceName(refOf(piece))}`] === 'on').length;
  const wrong = entry.problems.some(({ field }) => field === 'keep');
  return (
    <details open={kept > 0 || wrong}>
      <summary>
        {kept === 0 ? 'All of the shelf may be used' : `${kept} of ${pieces.length} are kept`}; keep some of
        it?
      </summary>
      <div class="columns">
        <Ticks heading="Open no new sheet of" pieces={pieces.filter(({ offcut }) => !offcut)} entry={entry}>
          {({ design }) => `${design.name} (${design.sheets} left)`}
        </Ticks>
        <Ticks heading="Keep these offcuts" pieces={pieces.filter(({ offcut }) => offcut)} entry={entry}>
          {(piece) => `${piece.offcut!.code} ${printExactSize(piece, units)} ${piece.design.name}`}
        </Ticks>
      </div>
    </details>
  );
};

interface TicksProps {
  readonly heading: string;
  readonly pieces: readonly Piece[];
  readonly entry: Entry;
  readonly children: (piece: Piece) => string;
}

const Ticks = ({ heading, pieces, entry, children }: TicksProps) => (
  <fieldset class="keep">
    <legend>{heading}</legend>
    {pieces.map((piece) => {
      const name = `keep.${pieceName(refOf(piece))}`;
      return (
        <label>
          <input type="checkbox" name={name} checked={entry.typed[name] === 'on'} />
          <SwatchChip
            id={name.replace('.', '-')}
            swatch={piece.design.swatch}
            name={piece.design.name}
            size={22}
          />{' '}
          {children(piece)}
        </label>
      );
    })}
  </fieldset>
);
