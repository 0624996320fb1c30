/** The paper that the headline names, drawn with the blank laid over it, and the button that takes it off the shelf. */
import type { FC } from 'hono/jsx';
import { type DrawnPiece, pieceDrawing, pieceScale } from '#core/drawing/piece.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { Choice } from '#core/stash/shelf-search.ts';
import type { Piece } from '#core/stash/stash.ts';
import { printExact, printExactSize, type Units } from '#shared/length.ts';
import { Once } from '../common/once.tsx';
import { Picture } from '../diagrams/picture.tsx';
import type { Answered } from './answer.tsx';
import { asking, measuresOf } from './query.ts';

/** Nothing at all where no envelope can be made. */
export const Named: FC<Answered> = (answered) =>
  answered.obstacle ? null : (
    <section id="paper" aria-label="The paper to take">
      {answered.choices.slice(0, 1).map((choice) => (
        <ul class="pieces">
          <PieceChoice choice={choice} scale={pieceScale([choice.piece], 150, 170)} {...answered} />
        </ul>
      ))}
      <Begin {...answered} />
      <p class="no-print">
        <a href={keeping(answered)}>Keep these measures</a>, with no paper taken
      </p>
    </section>
  );

export const PieceChoice: FC<Answered & { choice: Choice; scale: number }> = ({
  choice,
  scale,
  ...answered
}) => {
  const { piece } = choice;
  const key = `${piece.design.id}-${piece.offcut?.id ?? 'sheet'}`;
  return (
    <li>
      <Picture drawing={pieceDrawing(drawn(choice), answered.units, scale)} id={`piece-${key}`} />
      <div>
        <p>
          <strong>{piece.design.name}</strong>, {piece.offcut ? 'offcut' : 'a new sheet'}{' '}
          {piece.offcut && <span class="code">{piece.offcut.code}</span>}
        </p>
        <p class="quiet">
          {piece.offcut?.place || piece.design.pad.name}
          {sayStrip(piece, answered.units)}
          {piece.count > 1 ? ` · ${piece.count} there` : ''} · {leaves(choice, answered.units)}
          {choice.yields > 1 ? ` · would give ${choice.yields}` : ''}
        </p>
        {isOneBlank(answered.recipe) && <Take choice={choice} {...answered} />}
        {piece.design.id !== answered.design?.id && (
          <a
            class="see"
            href={`${asking(answered.query, { design: `${piece.design.id}`, look: '', from: '', show: 'look' })}#more`}
          >
            How it would look
          </a>
        )}
      </div>
    </li>
  );
};

const Take: FC<Answered & { choice: Choice }> = ({
  choice,
  query,
  recipe,
  units,
  look,
  design,
  copies,
  token,
}) => {
  const { piece } = choice;
  const most = Math.min(copies, choice.yields * piece.count);
  const chosen = look && design?.id === piece.design.id ? look.id : '';
  const fields = { ...query, ...measuresOf(recipe, units), look: chosen, copies: `${copies}` };
  return (
    <form action="/cuts" method="post">
      <Once token={token} />
      {Object.entries(fields)
        .filter(([name]) => name !== 'design')
        .map(([name, value]) => (
          <input type="hidden" name={name} value={value} />
        ))}
      <input type="hidden" name="design" value={piece.design.id} />
      <input type="hidden" name="offcut" value={piece.offcut?.id ?? ''} />
      <button type="submit" class={most < copies ? 'plain' : undefined}>
        {copies === 1 ? 'Take it' : most === 1 ? 'Take one of it' : `Take ${most} of it`}
      </button>
    </form>
  );
};

/** A batch, or an envelope of two pieces, is planned before anything is cut. */
const Begin: FC<Pick<Answered, 'query' | 'recipe' | 'units' | 'copies' | 'token'>> = ({
  query,
  recipe,
  units,
  copies,
  token,
}) =>
  copies === 1 && isOneBlank(recipe) ? null : (
    <form action="/envelopes" method="post">
      <Once token={token} />
      {Object.entries({ ...query, ...measuresOf(recipe, units), copies: `${copies}` }).map(
        ([name, value]) => (
          <input type="hidden" name={name} value={value} />
        ),
      )}
      <button type="submit">Begin a project and plan {copies === 1 ? 'both cuts' : 'the whole batch'}</button>
    </form>
  );

const keeping = ({ query, recipe, units, copies }: Answered): string => {
  const fields = { ...query, ...measuresOf(recipe, units), copies: `${copies}`, show: '', from: '' };
  return `/kept/new?${new URLSearchParams(Object.entries(fields).filter(([, value]) => value !== ''))}`;
};

const isOneBlank = (recipe: Recipe): boolean => foldOf(recipe).blanks(recipe).length === 1;

/** It is cut off a sheet before anything else, and no offcut has it any more. */
const sayStrip = ({ offcut, design: { pad } }: Piece, units: Units): string =>
  offcut || !pad.strip
    ? ''
    : ` · first cut ${printExact(pad.strip.depth, units)} off its ${pad.strip.edge} edge`;

const leaves = ({ cut }: Choice, units: Units): string =>
  cut.leftovers.length === 0
    ? 'leaves nothing worth keeping'
    : `leaves ${cut.leftovers.map((one) => printExactSize(one, units)).join(' and ')}`;

/** The piece as drawn: the blank over it, what stays hatched. */
const drawn = ({ piece, cut }: Choice): DrawnPiece => ({
  width: piece.width,
  height: piece.height,
  code: piece.offcut?.code ?? piece.design.name,
  parts: cut.parts.map((part) => ({ ...part, name: 'envelope', sign: 'E' })),
  leftovers: cut.leftovers,
  upright: piece.design.print.direction !== 'any way',
  ...(piece.design.print.direction === 'one edge' && piece.border && { border: piece.design.print.border }),
  swatch: piece.design.swatch,
});
