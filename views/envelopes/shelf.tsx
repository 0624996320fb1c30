/** What else on the shelf would do, least regretted first, and what comes nearest where nothing does. */
import type { FC } from 'hono/jsx';
import { pieceScale } from '#core/drawing/piece.ts';
import type { Choice } from '#core/stash/shelf-search.ts';
import { borderOf, type Piece } from '#core/stash/stash.ts';
import { printExact, printLength, printSize, subtract, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import type { Answered, ShelfShown } from './answer.tsx';
import { sayEnvelope } from './fold-words.ts';
import { LeftOut } from './left-out.tsx';
import { ToPlace } from './places.tsx';
import { asking, measuresOf, type Query, UNCHOSEN } from './query.ts';
import { PieceChoice } from './take.tsx';

/** So many at a time, after the one that the headline names. */
export const AT_ONCE = 3;

export const Shelf: FC<Answered> = (answered) => {
  const { choices, chosen, query, shelf } = answered;
  const others = choices.slice(1);
  return (
    <section id="shelf">
      <h2>{titleOf(answered)}</h2>
      {chosen && (
        <p>
          <ToPlace query={{ ...query, design: '', look: '', from: '' }}>Look at every paper</ToPlace>
        </p>
      )}
      {choices.length === 1 && <p class="quiet">Nothing else on the shelf would do.</p>}
      {others.length > 0 && <Pieces {...answered} drawn={others} />}
      {shelf && <Turn query={query} shelf={shelf} shown={others.length} />}
      {shelf && <LeftOut leftOut={shelf.leftOut} />}
    </section>
  );
};

/** What comes after those shown, and what before. */
const Turn: FC<{ query: Query; shelf: ShelfShown; shown: number }> = ({
  query,
  shelf: { from, count },
  shown,
}) => {
  const after = count - from - shown;
  return from === 1 && after <= 0 ? null : (
    <p class="turn no-print">
      {from > 1 && (
        <ToPlace query={{ ...query, from: from - AT_ONCE > 1 ? `${from - AT_ONCE}` : '' }}>
          Those before
        </ToPlace>
      )}
      {after > 0 && (
        <ToPlace query={{ ...query, from: `${from + shown}` }}>
          {after === 1 ? 'One more piece would do' : `${after} more pieces would do`}
        </ToPlace>
      )}
    </p>
  );
};

const titleOf = ({ choices, chosen, design }: Answered): string => {
  const which = choices.length === 0 ? 'What the shelf has' : 'Other paper that would do';
  return chosen && design ? `${which}: ${design.name}` : which;
};

const Pieces: FC<Answered & { drawn: readonly Choice[] }> = ({ drawn, ...answered }) => {
  const scale = pieceScale(
    drawn.map((choice) => choice.piece),
    160,
    160,
  );
  return (
    <ul class="pieces">
      {drawn.map((choice) => (
        <PieceChoice choice={choice} scale={scale} {...answered} />
      ))}
    </ul>
  );
};

export const NothingFits: FC<Pick<Answered, 'nearest' | 'smaller' | 'query' | 'units'>> = ({
  nearest,
  smaller,
  query,
  units,
}) => (
  <>
    {nearest ? (
      <p>
        Nothing on the shelf will do. {nearest.piece.design.name} ({printSize(nearest.piece, units)}
        {besideBorder(nearest.piece, units)}) comes nearest: {lacks(nearest.short, units)} missing.
      </p>
    ) : (
      <p>
        There is no paper on the shelf yet. <a href="/pads/new">Put a pad there</a>, or an{' '}
        <a href="/offcuts/new">offcut</a>.
      </p>
    )}
    {smaller.length > 0 && (
      <ul class="list">
        {smaller.map(({ recipe, choice }) => (
          <li>
            <a href={asking(query, { ...UNCHOSEN, ...measuresOf(recipe, units) })}>
              {sayEnvelope(recipe, units)}
            </a>{' '}
            would do: the card sits {recipe.fit}, from {choice.piece.design.name}.
          </li>
        ))}
      </ul>
    )}
  </>
);

/** A border is for what is pinned to it: what it leaves is all that counts here. */
const besideBorder = (piece: Piece, units: Units): string =>
  borderOf(piece) > 0
    ? `, only ${printExact(subtract(piece.height, borderOf(piece)), units)} of it above its border`
    : '';

const lacks = (short: Size, units: Units): string =>
  [
    short.width > 0 && `${printLength(short.width, units, 'up')} across`,
    short.height > 0 && `${printLength(short.height, units, 'up')} up and down`,
  ]
    .filter(Boolean)
    .join(' and ');
