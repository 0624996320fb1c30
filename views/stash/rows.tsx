/** Offcuts as a dense list: what is alike in one row, its count, place and name changed where they stand. */
import type { FC } from 'hono/jsx';
import type { Alike } from '#core/stash/alike.ts';
import type { Offcut } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { InPlace } from '#views/common/in-place.tsx';
import { SwatchChip } from '#views/diagrams/swatch.tsx';
import { type ShelfProps, Went } from '#views/offcuts/tile.tsx';
import { sayStanding } from './words.ts';

export const OffcutRows: FC<ShelfProps> = ({ alike, units, ...rest }) => (
  <>
    <Went {...rest} />
    {alike.length === 0 ? null : (
      <div class="scroll">
        <table class="rows">
          <thead>
            <tr>
              <th scope="col">Size</th>
              <th scope="col">Alike</th>
              <th scope="col">Design</th>
              <th scope="col">Code and place</th>
            </tr>
          </thead>
          <tbody>
            {alike.map((one) => (
              <Row {...one} units={units} />
            ))}
          </tbody>
        </table>
      </div>
    )}
  </>
);

/** The others of a kind stand there in words alone. */
const MOST_APART = 6;

const Row: FC<Alike & { units: Units }> = ({ offcuts, count, units }) => {
  const [first, ...others] = offcuts;
  const { design } = first;
  return (
    <tr>
      <td class="size">
        {printExactSize(first, units)}
        {sayStanding(first) === '' ? null : <span class="quiet"> {sayStanding(first)}</span>}
      </td>
      <td>
        {others.length === 0 ? (
          <InPlace kind="offcut-count" id={first.id} text={`${count}`} inLine />
        ) : (
          `× ${count}`
        )}
      </td>
      <td>
        <a class="chip" href={`/designs/${design.id}`}>
          <SwatchChip
            id={`chip-${first.id}`}
            swatch={design.swatch}
            name={`About ${design.name}`}
            size={20}
          />
        </a>{' '}
        <InPlace kind="design-name" id={design.id} text={design.name} inLine />{' '}
        <span class="quiet">{design.pad.name}</span>
      </td>
      <td>
        {offcuts.slice(0, MOST_APART).map((offcut) => (
          <CodeAndPlace offcut={offcut} counted={others.length > 0} />
        ))}
        {offcuts.length > MOST_APART ? (
          <span class="quiet">
            and{' '}
            {offcuts
              .slice(MOST_APART)
              .map(({ code, place }) => [code, place].filter(Boolean).join(' '))
              .join(', ')}
          </span>
        ) : null}
      </td>
    </tr>
  );
};

/** Counted where the row counts several. */
const CodeAndPlace: FC<{ offcut: Offcut; counted: boolean }> = ({
  offcut: { id, code, place, count },
  counted,
}) => (
  <span class="lies" id={`offcut-${id}`}>
    <a class="code" href={`/offcuts/${id}`}>
      {code}
    </a>
    {counted && count > 1 ? ` × ${count}` : null} <InPlace kind="offcut-place" id={id} text={place} inLine />
  </span>
);
