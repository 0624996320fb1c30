/** Tools and units on one page: how lengths are shown, the notchers, the drawn cards. Knows no forms of theirs. */
import type { FC } from 'hono/jsx';
import { cardDrawing, cardScale } from '#core/drawing/card.ts';
import type { BulkHabit } from '#core/paper/bulk-measured.ts';
import { POST_IDS, POSTS, type PostId } from '#core/post/rules.ts';
import type { HerFits } from '#core/project/fits.ts';
import type { CardSize } from '#core/project/journal.ts';
import type { LearnedTool } from '#core/project/learning.ts';
import { type Length, typedLength, type Units } from '#shared/length.ts';
import { WANTED_FITS, type WantedFit } from '#shared/outcome.ts';
import { UNIT_CHOICES } from '#shared/schemas/tools.ts';
import { Choice, type Entry, Field } from '../common/field.tsx';
import { Picture } from '../diagrams/picture.tsx';
import { BulkCorrection } from '../paper/measured.tsx';
import { sayFits } from './fits.tsx';
import { saySource, sayValue } from './source.ts';

interface Props {
  readonly units: Units;
  readonly settings: {
    readonly keepAtLeast: Length;
    readonly longestCut: Length;
    readonly wantedFit: WantedFit;
    readonly post: PostId;
    readonly currency: string;
    readonly bulkCorrection: Length;
  };
  readonly fits: HerFits;
  readonly bulk: BulkHabit | undefined;
  readonly notchers: readonly LearnedTool[];
  readonly cards: readonly CardSize[];
  readonly entry: Entry;
}

export const ToolsPage: FC<Props> = (props) => (
  <>
    <h1>Tools and units</h1>
    <div class="columns">
      <div>
        <Notchers {...props} />
        <Fits {...props} />
        <BulkCorrection habit={props.bulk} correction={props.settings.bulkCorrection} units={props.units} />
      </div>
      <Habits {...props} />
    </div>
    <Cards {...props} />
    <More />
  </>
);

const Notchers: FC<Props> = ({ notchers, units }) => (
  <section>
    <h2>Your notcher</h2>
    <ul class="list">
      {notchers.map(({ tool, notcher, inset, zeroOffset }) => (
        <li>
          <p class="spread">
            <a class="big" href={`/tools/notchers/${tool.id}`}>
              {tool.name}
            </a>
            {tool.chosen ? <strong>in use</strong> : <Choose id={tool.id} />}
          </p>
          <p>
            Inset {sayValue(notcher.inset, units)} ({saySource(inset)}), zero offset{' '}
            {sayValue(notcher.zeroOffset, units)} ({saySource(zeroOffset)})
          </p>
        </li>
      ))}
    </ul>
    <a class="button plain small" href="/tools/notchers/new">
      Add a tool
    </a>
  </section>
);

const Fits: FC<Props> = ({ fits, units }) => (
  <section>
    <h2>How a card sits</h2>
    <p>{sayFits(fits, units)}</p>
    <a class="button plain small" href="/tools/fits">
      See why, or set it yourself
    </a>
  </section>
);

const Choose: FC<{ id: number }> = ({ id }) => (
  <form action={`/tools/notchers/${id}/choice`} method="post">
    <button type="submit" class="plain small">
      Use this one
    </button>
  </form>
);

const UNIT_NAMES: Record<(typeof UNIT_CHOICES)[number], string> = {
  '8': 'inches, to the nearest ⅛',
  '16': 'inches, to the nearest ¹⁄₁₆',
  '32': 'inches, to the nearest ¹⁄₃₂',
  mm: 'millimetres',
};

const Habits: FC<Props> = ({ settings, units, entry }) => (
  <section class="sheet">
    <h2>How you measure</h2>
    <form action="/tools/settings" method="post">
      <Choice
        name="units"
        label="Show lengths in"
        entry={entry}
        value={units.unit === 'in' ? `${units.step}` : 'mm'}
        choices={UNIT_CHOICES.map((value) => ({ value, label: UNIT_NAMES[value] }))}
        hint="You may type either anywhere: 4 7/8, 133 mm"
      />
      <div class="fields">
        <Field
          name="keepAtLeast"
          label="Keep offcuts from"
          kind="length"
          entry={entry}
          value={typedLength(settings.keepAtLeast, units)}
          hint="narrower leftovers are waste"
        />
        <Field
          name="longestCut"
          label="Trimmer’s longest cut"
          kind="length"
          entry={entry}
          value={typedLength(settings.longestCut, units)}
        />
      </div>
      <Choice
        name="wantedFit"
        label="A card should usually sit"
        entry={entry}
        value={settings.wantedFit}
        choices={WANTED_FITS.map((fit) => ({ value: fit, label: fit }))}
      />
      <Choice
        name="post"
        label="You post with"
        entry={entry}
        value={settings.post}
        choices={POST_IDS.map((id) => ({ value: id, label: POSTS[id].name }))}
        hint="whose size classes you see first"
      />
      <Field
        name="currency"
        label="The sign of your money"
        kind="count"
        entry={entry}
        value={settings.currency}
        hint="£, $, € or kr; it stands by every price"
      />
      <button type="submit">Save</button>
    </form>
  </section>
);

const Cards: FC<Props> = ({ cards, units }) => {
  const scale = cardScale(cards, 120);
  return (
    <section id="cards">
      <h2>Your cards</h2>
      <ul class="cards">
        {cards.map((card) => (
          <li>
            <a href={`/tools/cards/${card.id}`}>
              <Picture drawing={cardDrawing(card, units, scale)} id={`card-${card.id}`} />
              <span>{card.name}</span>
            </a>
          </li>
        ))}
      </ul>
      <a class="button plain small" href="/tools/cards/new">
        Draw a card you make often
      </a>
    </section>
  );
};

const More: FC = () => (
  <section>
    <h2>More</h2>
    <ul class="list">
      <li>
        <a href="/post">Can it be posted?</a> Any size, asked at every post.
      </li>
      <li>
        <a href="/parts">The parts of a set</a>: base, mats, liner, bands, tags, from one card.
      </li>
      <li>
        <a href="/holders">Something has to go in something</a>: a box, a tin, a pocket.
      </li>
      <li>
        <a href="/paper">Paper</a>: pounds and g/m², thickness, what a card weighs.
      </li>
      <li>
        <a href="/put-away">Put away</a>: what you deleted or put away, to bring back.
      </li>
      <li>
        <a href="/backups">Backups</a>: how old the newest is, and what is in each.
      </li>
      <li>
        <a href="/archive">Take everything away</a>: the whole book as one open archive.
      </li>
    </ul>
  </section>
);
