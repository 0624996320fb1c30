/** What else on the shelf would do, least regretted first, and what comes nearest where nothing does. */
import type { FC } from 'hono/jsx';
import { pieceScale } from '#core/drawing/piece.ts';
import type { Choice } from '#core/stash/shelf-search.ts';
import { borderOf, type Piece } from '#core/stash/stash.ts';
import { printExact, printLength, printSize, subtract, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import type { Answered } from './answer.tsx';
import { sayEnvelope } from './fold-words.ts';
import { LeftOut } from './left-out.tsx';
import { asking, measuresOf, UNCHOSEN } from './query.ts';
import { PieceChoice } from './take.tsx';

const SHOWN = 2;

export const Shelf: FC<Answered> = (answered) => {
  const { choices, chosen } = answered;
  const others = choices.slice(1);
  const first = others.slice(0, SHOWN);
  const rest = others.slice(SHOWN);
  return (
    <section id="shelf">
      <h2>{titleOf(answered)}</h2>
      {chosen && (
        <p>
          <a href={`${asking(answered.query, { design: '', look: '' })}#shelf`}>Look at every paper</a>
        </p>
      )}
      {choices.length === 0 && <NothingFits {...answered} />}
      {choices.length === 1 && <p class="quiet">Nothing else on the shelf would do.</p>}
      {first.length > 0 && <Pieces {...answered} shown={first} />}
      {rest.length > 0 && (
        <details>
          <summary>
            {rest.length === 1 ? 'One more piece would do' : `${rest.length} more pieces would do`}
          </summary>
          <Pieces {...answered} shown={rest} />
        </details>
      )}
      <LeftOut leftOut={answered.leftOut} />
    </section>
  );
};

const titleOf = ({ choices, chosen, design }: Answered): string => {
  const which = choices.length === 0 ? 'What the shelf has' : 'Other paper that would do';
  return chosen && design ? `${which}: ${design.name}` : which;
};

const Pieces: FC<Answered & { shown: readonly Choice[] }> = ({ shown, ...answered }) => {
  const scale = pieceScale(
    shown.map((choice) => choice.piece),
    160,
    160,
  );
  return (
    <ul class="pieces">
      {shown.map((choice) => (
        <PieceChoice choice={choice} scale={scale} {...answered} />
      ))}
    </ul>
  );
};

const NothingFits: FC<Pick<Answered, 'nearest' | 'smaller' | 'query' | 'units'>> = ({
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
