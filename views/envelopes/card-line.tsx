/** The cards on the table: hers as small drawings to tap, and one field for the size of any other. Works nothing out. */
import type { FC } from 'hono/jsx';
import { cardDrawing, cardScale } from '#core/drawing/card.ts';
import type { CardSize } from '#core/project/journal.ts';
import type { Units } from '#shared/length.ts';
import { type Entry, Field } from '../common/field.tsx';
import { Picture } from '../diagrams/picture.tsx';
import { asking, cardFields } from './query.ts';

interface StripProps {
  readonly cards: readonly CardSize[];
  readonly units: Units;
  /** How many units the longest side takes. */
  readonly longest: number;
  /** The card in hand, when one is asked for. */
  readonly typed?: Entry['typed'];
}

/** On one scale, in one row, each leading to its envelope. */
export const CardStrip: FC<StripProps> = ({ cards, units, longest, typed = {} }) => {
  const scale = cardScale(cards, longest);
  return cards.length === 0 ? null : (
    <ul class="cards in-a-row">
      {cards.map((card) => {
        const { bulk, ...sides } = cardFields(card, units);
        const inHand = sides.width === typed.width && sides.height === typed.height;
        return (
          <li>
            <a href={asking({ ...sides, ...(bulk && { bulk }) })} aria-current={inHand ? 'true' : undefined}>
              <Picture drawing={cardDrawing(card, units, scale)} id={`card-${card.id}`} />
              <span>{card.name}</span>
            </a>
          </li>
        );
      })}
    </ul>
  );
};

export const CardField: FC<{ units: Units; entry: Entry; others: boolean; autofocus?: boolean }> = ({
  units,
  entry,
  others,
  autofocus,
}) => (
  <Field
    name="card"
    label={others ? 'Or any other card' : 'Its size, both sides'}
    kind="size"
    entry={entry}
    hint={cardHint(units)}
    autofocus={autofocus}
  />
);

export const cardHint = ({ unit }: Units): string =>
  unit === 'in' ? '4 3/8 x 6 1/8, 148 x 105 mm, A6' : '148 x 105, 4 3/8 x 6 1/8 in, A6';
