/** The form of one drawn card, to add, change or delete. */
import type { FC } from 'hono/jsx';
import type { CardSize } from '#core/project/journal.ts';
import { typedLength, type Units } from '#shared/length.ts';
import type { Standing } from '#shared/put-away.ts';
import { AwayNote, PutAway } from '../common/away.tsx';
import { type Entry, Field, FormProblems } from '../common/field.tsx';
import { Once } from '../common/once.tsx';

interface Props {
  readonly units: Units;
  readonly card: CardSize | undefined;
  readonly standing: Standing | undefined;
  readonly entry: Entry;
  readonly token: string;
}

export const CardForm: FC<Props> = ({ units, card, standing, entry, token }) => (
  <>
    <h1>{card ? card.name : 'A card you make often'}</h1>
    <AwayNote standing={standing} />
    <form action={card ? `/tools/cards/${card.id}` : '/tools/cards'} method="post" class="sheet">
      <Once token={token} />
      <FormProblems entry={entry} fields={['name', 'width', 'height', 'bulk']} />
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
    <PutAway standing={standing} />
  </>
);

const LABELS = { width: 'Width', height: 'Height', bulk: 'Bulk' };
