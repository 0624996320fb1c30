/** What runs low, worst first, with the tap that says there is more again. */
import type { FC } from 'hono/jsx';
import type { PadWithDesigns } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import { Swatches } from './pads.tsx';
import { padFacts } from './words.ts';

export const howManyLow = (low: readonly PadWithDesigns[]): string =>
  `${howMany(low.length, 'pad')} ${low.length === 1 ? 'runs' : 'run'} low`;

export const Low: FC<{ low: readonly PadWithDesigns[]; units: Units }> = ({ low, units }) => (
  <>
    <h1>Running low</h1>
    {low.length === 0 ? (
      <p class="answer">Nothing runs low.</p>
    ) : (
      <>
        <p class="answer">
          <strong>{howManyLow(low)}</strong>
          {low.length === 1 ? '.' : ', the one that needs it most first.'}
        </p>
        <ol class="list pads">
          {low.map((one) => (
            <LowPad {...one} units={units} />
          ))}
        </ol>
      </>
    )}
    <p class="quiet">
      A pad is named here once its sheets together are at its low mark or under. The mark stands on the pad’s
      own page; 0 asks for no reminder.
    </p>
    <p>
      <a href="/stash">To the stash</a>
    </p>
  </>
);

const LowPad: FC<PadWithDesigns & { units: Units }> = ({ pad, designs, sheets, units }) => (
  <li class="pad">
    <div>
      <h2>
        <a href={`/pads/${pad.id}`}>{pad.name}</a>
      </h2>
      <p class="quiet">{padFacts(pad, units)}</p>
      {pad.source === '' ? null : <p>From: {pad.source}</p>}
    </div>
    <Swatches designs={designs} />
    <p class="left">
      <b>{sheets}</b> {sheets === 1 ? 'sheet' : 'sheets'} left
      <br />
      <span class="quiet">low mark {pad.lowMark}</span>
    </p>
  </li>
);
