/** What a piece of paper would hold: the largest card, and which of the maker's own. Works nothing out. */
import type { Child, FC } from 'hono/jsx';
import { cardDrawing, cardScale } from '#core/drawing/card.ts';
import type { Card, Recipe } from '#core/envelope/recipe.ts';
import type { CardSize } from '#core/project/journal.ts';
import { printExact, printSize, type Units } from '#shared/length.ts';
import type { WantedFit } from '#shared/outcome.ts';
import type { Size } from '#shared/size.ts';
import { type Entry, Field } from '../common/field.tsx';
import { Picture } from '../diagrams/picture.tsx';
import { FitChoice } from './page.tsx';
import { asking, cardFields, measuresOf } from './query.ts';

interface PageProps {
  readonly units: Units;
  readonly entry: Entry;
  readonly fit: WantedFit;
  readonly answer: Child;
}

export const HoldingPage: FC<PageProps> = ({ entry, fit, answer }) => (
  <>
    <h1>What would this piece hold?</h1>
    <form action="/holding" method="get" class="sheet fields">
      <Field name="width" label="Piece width" kind="length" entry={entry} autofocus={!entry.typed.width} />
      <Field name="height" label="Piece height" kind="length" entry={entry} />
      <FitChoice chosen={fit} />
      <div class="field">
        <span class="label">&nbsp;</span>
        <button type="submit">See</button>
      </div>
    </form>
    {answer}
  </>
);

interface HeldProps {
  readonly units: Units;
  readonly piece: Size;
  readonly largest: Recipe | undefined;
  readonly cards: readonly { readonly card: CardSize; readonly recipe: Recipe }[];
}

export const Held: FC<HeldProps> = ({ units, piece, largest, cards }) => (
  <section>
    {largest ? (
      <>
        <p class="answer">
          A card up to <strong>{printSize(largest.card, units, 'down')}</strong>.
        </p>
        <p class="lead">
          From {printSize(piece, units)} on your tool:{' '}
          <a href={envelopeFor(largest.card, largest, units)}>
            square {printExact(largest.blank.width, units)}, start {printExact(largest.starts[0], units)}
          </a>
          .
        </p>
        <h2>Of your cards</h2>
        <OwnCards cards={cards} units={units} />
      </>
    ) : (
      <p class="answer">No card: the piece is too small for your tool.</p>
    )}
  </section>
);

const OwnCards: FC<Pick<HeldProps, 'cards' | 'units'>> = ({ cards, units }) => {
  const scale = cardScale(
    cards.map(({ card }) => card),
    120,
  );
  return cards.length === 0 ? (
    <p>None of the cards you drew goes in like that.</p>
  ) : (
    <ul class="cards">
      {cards.map(({ card, recipe }) => (
        <li>
          <a href={envelopeFor(card, recipe, units)}>
            <Picture drawing={cardDrawing(card, units, scale)} id={`card-${card.id}`} />
            <span>{card.name}</span>
          </a>
        </li>
      ))}
    </ul>
  );
};

const envelopeFor = (card: Card, recipe: Recipe, units: Units): string =>
  asking(cardFields(card, units), measuresOf(recipe, units));
