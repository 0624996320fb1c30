/** The shopping list: what runs low and what planned projects lack, to print, and as plain text to copy. */
import type { FC } from 'hono/jsx';
import type { LowPaper } from '#core/stash/low.ts';
import type { MissingPart } from '#core/stash/shopping.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { printDay } from '#views/common/when.tsx';
import { howMany } from '#views/common/words.ts';
import { type PaperUse, sayPace } from './pace.tsx';
import { padFacts } from './words.ts';

interface Props {
  readonly low: readonly LowPaper[];
  /** One for each of `low`. */
  readonly uses: readonly PaperUse[];
  readonly missing: readonly MissingPart[];
  /** More runs low than is on the list. */
  readonly more: boolean;
  readonly at: string;
  readonly units: Units;
}

/** One thing to buy: what it is called, then lines about it. */
interface Item {
  readonly name: string;
  readonly about: readonly string[];
}

export const ShoppingList: FC<Props> = (props) => {
  const items = itemsOf(props);
  const { more, at } = props;
  return (
    <>
      <h1>To buy, {printDay(at)}</h1>
      <p class="no-print">
        Print it or copy it. <a href="/stash/low">What runs low</a> · <a href="/stash">To the stash</a>
      </p>
      {items.length === 0 ? (
        <p class="answer">Nothing runs low, and no plan lacks paper.</p>
      ) : (
        <>
          <ul class="list shopping">
            {items.map(({ name, about }) => (
              <li>
                <b>☐ {name}</b>
                {about.map((line) => (
                  <>
                    <br />
                    {line}
                  </>
                ))}
              </li>
            ))}
          </ul>
          {more ? <p>Only the {props.low.length} that need it most are on this list.</p> : null}
          <AsText items={items} />
        </>
      )}
      <p class="quiet no-print">
        A project that was never planned is not asked about: plan its batch, and what the shelf lacks stands
        here.
      </p>
    </>
  );
};

const AsText: FC<{ items: readonly Item[] }> = ({ items }) => (
  <details class="no-print">
    <summary>As plain text</summary>
    <p>
      <button type="button" class="plain" data-copies="shopping-text" hidden>
        Copy the list
      </button>
    </p>
    <pre id="shopping-text" class="plain-text">
      {items.map(({ name, about }) => [name, ...about.map((line) => `  ${line}`)].join('\n')).join('\n\n')}
    </pre>
  </details>
);

function itemsOf({ low, uses, missing, units }: Props): Item[] {
  return [
    ...low.map((one, index) => lowItem(one, uses[index]!, units)),
    ...missing.map((one) => missingItem(one, units)),
  ];
}

const lowItem = ({ pad, design, sheets }: LowPaper, use: PaperUse, units: Units): Item => ({
  name: design ? `${design.name} (${pad.name})` : pad.name,
  about: [
    `${padFacts(pad, units)}; ${sheets === 0 ? 'none left' : `${howMany(sheets, 'sheet')} left`}.`,
    ...(pad.source === '' ? [] : [`From: ${pad.source}`]),
    ...(use.projects.length === 0 ? [] : [`Used for: ${use.projects.map(({ title }) => title).join(', ')}.`]),
    sayPace(sheets, use),
  ],
});

const missingItem = ({ title, part, copies, ...size }: MissingPart, units: Units): Item => ({
  name: `Paper for ${title}`,
  about: [`${copies} × ${part}, ${printExactSize(size, units)} each, found no room on the shelf.`],
});
