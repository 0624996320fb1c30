/** What comes out of one piece: the sentence, the piece drawn with it, what is left, and how sure that is. */
import type { FC } from 'hono/jsx';
import type { Filled, Offer, Wanted } from '#core/batch/filling.ts';
import { type DrawnPiece, pieceDrawing, pieceScale } from '#core/drawing/piece.ts';
import { rectangleOf, sizeOf } from '#core/stash/measured.ts';
import type { Piece } from '#core/stash/stash.ts';
import type { Unsuited } from '#core/stash/suits.ts';
import { type Length, printExact, printExactSize, type Units } from '#shared/length.ts';
import type { FillingTyped } from '#shared/schemas/filling.ts';
import { shorter } from '#shared/size.ts';
import { capital, listed } from '#views/common/words.ts';
import { Picture } from '../diagrams/picture.tsx';
import { tally } from '../plans/words.ts';
import { startFrom } from './start.ts';
import { sayProof, sayThing, sayYields } from './words.ts';

interface Props {
  readonly piece: Piece;
  readonly filled: Filled;
  readonly goal: FillingTyped['goal'];
  /** What does not come out of the piece, and why. */
  readonly leftOut: readonly { readonly wanted: Wanted; readonly why: Unsuited }[];
  readonly longestCut: Length;
  readonly units: Units;
}

export const FillAnswer: FC<Props> = (props) => {
  const { piece, filled, goal, leftOut, units } = props;
  if (filled.yields.length === 0) return <Nothing {...props} />;
  const drawn = drawnPiece(piece, filled);
  const drawing = pieceDrawing(drawn, units, pieceScale([drawn], 560, 480));
  return (
    <section>
      <p class="answer">{sayYields(filled)}</p>
      <div class="bench">
        <div>
          <Picture drawing={drawing} id="filled" />
        </div>
        <div class="result">
          <ul>
            {filled.yields.map(({ wanted, count }, index) => (
              <li>
                <b>{count}</b> × {sayWithSize(wanted, units)} <small>({SIGNS[index]})</small>
                <FromHere {...{ wanted, count, piece, units }} />
              </li>
            ))}
          </ul>
          <p>{sayLeft(filled, units)}</p>
          {piece.border ? <p>Nothing carries the border: it stays in one length.</p> : null}
          <p class="quiet">{sayProof(filled, goal)}</p>
          <LeftOut leftOut={leftOut} />
        </div>
      </div>
    </section>
  );
};

const Nothing: FC<Props> = ({ piece, leftOut, longestCut, units }) => (
  <section>
    <p class="answer">Nothing of that comes out of it.</p>
    {longestCut < shorter(piece) ? (
      <p>Your trimmer cuts {printExact(longestCut, units)} at most, and every cut across it is longer.</p>
    ) : null}
    <LeftOut leftOut={leftOut} />
  </section>
);

/** For those who read why something is missing. */
const LeftOut: FC<Pick<Props, 'leftOut'>> = ({ leftOut }) => {
  const beside = leftOut.filter(({ why }) => why.why === 'too small' && why.beside);
  const others = leftOut.filter((one) => !beside.includes(one));
  const names = (some: Props['leftOut']): string => listed(some.map(({ wanted }) => sayThing(wanted)));
  return (
    <>
      {others.length === 0 ? null : <p class="quiet">Too large for it: {names(others)}.</p>}
      {beside.length === 0 ? null : <p class="quiet">Too large beside its border: {names(beside)}.</p>}
    </>
  );
};

/** On to making it, where it is an envelope's blank. */
const FromHere: FC<{ wanted: Wanted; count: number; piece: Piece; units: Units }> = (props) => {
  const { wanted, count, piece, units } = props;
  const start = isOffer(wanted) ? startFrom(wanted, count, piece, units) : undefined;
  return start === undefined ? null : (
    <>
      {' '}
      <a href={start}>Start from it</a>
    </>
  );
};

const SIGNS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

/** What has no name is called by its size already. */
function sayWithSize(wanted: Wanted, units: Units): string {
  const [thing, size] = [sayThing(wanted), printExactSize(wanted, units)];
  return thing.endsWith(size) ? thing : `${thing}, ${size}`;
}

const isOffer = (wanted: Wanted): wanted is Offer => 'card' in wanted;

function sayLeft({ fill }: Filled, units: Units): string {
  const sizes = tally(fill.leftovers.map((one) => printExactSize(sizeOf(one), units)));
  if (sizes.size === 0) return 'Nothing is left worth keeping.';
  const named = [...sizes].map(([size, count]) => (count === 1 ? size : `${count} of ${size}`));
  return `${capital(listed(named))} ${fill.leftovers.length === 1 ? 'is' : 'are'} left for the shelf.`;
}

function drawnPiece(piece: Piece, { fill, yields }: Filled): DrawnPiece {
  const { design, offcut } = piece;
  const labels = new Map(
    yields.map(({ wanted }, index) => [wanted.id, { name: sayThing(wanted), sign: SIGNS[index] ?? '' }]),
  );
  return {
    width: piece.width,
    height: piece.height,
    code: offcut?.code ?? design.name,
    parts: fill.rectangles.map((one) => ({ ...rectangleOf(one), ...labels.get(one.part)! })),
    leftovers: fill.leftovers.map(rectangleOf),
    upright: design.print.direction !== 'any way',
    ...(piece.border && design.print.direction === 'one edge' && { border: design.print.border }),
    swatch: design.swatch,
  };
}

/** When more is asked of the planners than they can do at once. */
export const TooBusy: FC = () => (
  <p class="answer" role="alert">
    Too much is being worked out just now. Ask again in a moment.
  </p>
);
