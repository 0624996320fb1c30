/** The design language as it lives: every token, drawing role, field, tile and message in its states. Knows no resource. */
import type { FC } from 'hono/jsx';
import { inches } from '#shared/length.ts';
import { MOTIFS, type Swatch } from '#shared/swatch.ts';
import { Choice, type Entry, Field, FormProblems, TextArea } from '../common/field.tsx';
import { SwatchChip } from '../diagrams/swatch.tsx';
import { Paper, scaleFor } from '../stash/paper.tsx';
import { Roles } from './roles.tsx';

/** The names of the colours, without their dashes. */
export const StylePage: FC<{ colours: readonly string[] }> = ({ colours }) => (
  <>
    <h1>How Creasebook looks</h1>
    <p class="lead">Every token, drawing role, field, tile and message, in the light of this screen.</p>
    <section>
      <h2>Colours</h2>
      <ul class="names">
        {colours.map((name) => (
          <li class="row">
            <Colour name={name} />
            {name}
          </li>
        ))}
      </ul>
    </section>
    <Letters />
    <section>
      <h2>Drawings</h2>
      <Roles />
    </section>
    <Tiles />
    <Fields />
    <Messages />
  </>
);

const Colour: FC<{ name: string }> = ({ name }) => (
  <svg class="d-chip" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
    <rect x="0.5" y="0.5" width="23" height="23" rx="2" fill={`var(--${name})`} stroke="var(--edge)" />
  </svg>
);

const Letters: FC = () => (
  <section>
    <h2>Letters and measures</h2>
    <p class="answer">
      One large answer: <strong>take MH.</strong>
    </p>
    <p class="lead">What leads on from it.</p>
    <p>
      Plain words, <a href="#main">the top of this page</a>, <small>small print</small>,{' '}
      <span class="code">K7</span>, <span class="fit">snug</span>.
    </p>
    <dl class="measures">
      <div>
        <dt>Square</dt>
        <dd>7⅞″</dd>
      </div>
      <div>
        <dt>Start</dt>
        <dd>3 5⁄16″</dd>
      </div>
    </dl>
    <details>
      <summary>What stands one tap behind</summary>
      <p>Proofs, offsets, spreads, ledgers.</p>
    </details>
  </section>
);

const EXAMPLE: Swatch = { motif: 'sprigs', ground: '#e4edd8', inks: ['#3f5f3a'] };
const SHEET = { width: inches(8), height: inches(5) };

const Tiles: FC = () => (
  <section>
    <h2>Paper</h2>
    <p class="row">
      {MOTIFS.map((motif) => (
        <SwatchChip id={`chip-${motif}`} name={motif} swatch={{ ...EXAMPLE, motif }} />
      ))}
    </p>
    <ul class="shelf">
      <li class="tile">
        <div class="stands">
          <Paper
            id="tile"
            name="An offcut"
            swatch={EXAMPLE}
            size={SHEET}
            scale={scaleFor([SHEET], 150, SHEET.width)}
          />
        </div>
        <div class="about">
          <span class="code">K7</span> <span class="size">8 × 5″</span>
        </div>
      </li>
    </ul>
  </section>
);

const REFUSED: Entry = {
  typed: { height: 'a bit' },
  problems: [{ field: 'height', message: 'Give a length such as 5 1/2.' }],
};

const Fields: FC = () => (
  <section>
    <h2>Fields</h2>
    <FormProblems entry={REFUSED} fields={['height']} />
    <div class="fields">
      <Field name="width" label="Width" kind="length" entry={REFUSED} value="5 1/2" hint="folded" />
      <Field name="height" label="Height" kind="length" entry={REFUSED} />
      <Field name="many" label="How many" kind="count" entry={REFUSED} value="8" />
      <Field name="called" label="Name" entry={REFUSED} optional />
      <Choice name="fold" label="Fold" entry={REFUSED} choices={[{ value: 'one', label: 'diagonal' }]} />
    </div>
    <TextArea name="notes" label="Notes" entry={REFUSED} />
    <fieldset class="choices" aria-label="Choices">
      {['snug', 'easy'].map((fit, one) => (
        <label>
          <input type="radio" name="fit" value={fit} checked={one === 0} />
          {fit}
        </label>
      ))}
    </fieldset>
    <p class="row">
      <button type="button">Take it</button>
      <button type="button" class="plain">
        Leave it
      </button>
      <button type="button" class="plain small">
        Undo
      </button>
      <button type="button" class="link">
        Not here
      </button>
    </p>
  </section>
);

const Messages: FC = () => (
  <section>
    <h2>What is said</h2>
    <p class="done">Saved.</p>
    <p class="caution">Mind the blade: fingers behind the guard.</p>
    <ul class="warnings">
      <li>The flap leaves the back open.</li>
    </ul>
    <p class="low">runs low</p>
    <p class="quiet">Looked at three offcuts.</p>
    <p class="lesson">Bend the sheet both ways before scoring.</p>
  </section>
);
