/** The form of one drawn card, to add, change or remove. */
import type { FC } from 'hono/jsx';
import type { CardSize } from '#core/project/journal.ts';
import { typedLength, type Units } from '#shared/length.ts';
import { type Entry, Field } from '../common/field.tsx';
import { Once } from '../common/once.tsx';

interface Props {
  readonly units: Units;
  readonly card: CardSize | undefined;
  readonly entry: Entry;
  readonly token: string;
}

export const CardForm: FC<Props> = ({ units, card, entry, token }) => (
  <>
    <h1>{card ? card.name : 'A card you make often'}</h1>
    <form action={card ? `/tools/cards/${card.id}` : '/tools/cards'} method="post" class="sheet">
      <Once token={token} />
      <Field name="name" label="What you call it" entry={entry} value={card?.name} autofocus={!card} />
      <div class="fields">
        {(['width', 'height', 'bulk'] as const).map((name) => (
          <Field
            name={name}
            label={LABELS[name]}
            kind="length"
            entry={entry}
            value={card && typedLength(card[name], units)}
            hint={name === 'bulk' ? 'thickness, finished' : 'folded'}
          />
        ))}
      </div>
      <button type="submit">Save</button>
    </form>
    {card && (
      <form action={`/tools/cards/${card.id}`} method="post">
        <input type="hidden" name="_method" value="DELETE" />
        <button type="submit" class="plain small">
          Remove this card
        </button>
      </form>
    )}
  </>
);

const LABELS = { width: 'Width', height: 'Height', bulk: 'Bulk' };
