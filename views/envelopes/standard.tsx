/** Standard cards to start from, in inches and millimetres, each with the envelope it is sold with. Works nothing out. */
import type { FC } from 'hono/jsx';
import { CARDS, ENVELOPES, type StandardSize } from '#core/envelope/sizes.ts';
import { printSize, type Units } from '#shared/length.ts';
import { asking, cardFields } from './query.ts';

const SYSTEMS = ['North American', 'ISO'] as const;
const INCHES: Units = { unit: 'in', step: 16 };
const MILLIMETRES: Units = { unit: 'mm' };

export const StandardCards: FC<{ units: Units }> = ({ units }) => (
  <details class="standard">
    <summary>Standard cards</summary>
    <div class="columns">
      {SYSTEMS.map((system) => (
        <div class="scroll">
          <table>
            <caption>{system}</caption>
            <thead>
              <tr>
                <th scope="col">Card</th>
                <th scope="col">Inches</th>
                <th scope="col">Millimetres</th>
                <th scope="col">Sold with</th>
              </tr>
            </thead>
            <tbody>
              {CARDS.filter((card) => card.system === system).map((card) => (
                <CardRow card={card} units={units} />
              ))}
            </tbody>
          </table>
        </div>
      ))}
    </div>
  </details>
);

const CardRow: FC<{ card: StandardSize; units: Units }> = ({ card, units }) => (
  <tr>
    <th scope="row">
      <a href={asking(cardFields(card, units))}>{card.name}</a>
    </th>
    <td>{printSize(card, INCHES)}</td>
    <td>{printSize(card, MILLIMETRES)}</td>
    <td>
      {ENVELOPES.filter((one) => one.cards.includes(card.name))
        .map((one) => `${one.name} (${printSize(one, one.system === 'ISO' ? MILLIMETRES : INCHES)})`)
        .join(', ')}
    </td>
  </tr>
);
