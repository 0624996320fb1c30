/** What runs low, worst first: in a few lines, and as a page that says how long it will last. */
import type { FC } from 'hono/jsx';
import type { LowList, LowPaper } from '#core/stash/low.ts';
import type { Units } from '#shared/length.ts';
import { howMany, listed } from '#views/common/words.ts';
import { PaceLine, type PaperUse, UsedFor } from './pace.tsx';
import { Swatches } from './pads.tsx';
import { fullName, padFacts } from './words.ts';

/** `2 pads and 1 design run low` */
export const howManyLow = ({ pads, designs }: Pick<LowList, 'pads' | 'designs'>): string =>
  `${listed([
    ...(pads > 0 ? [howMany(pads, 'pad')] : []),
    ...(designs > 0 ? [howMany(designs, 'design')] : []),
  ])} ${pads + designs === 1 ? 'runs' : 'run'} low`;

export const lowName = ({ pad, design }: LowPaper): string => (design ? fullName(design) : pad.name);

const address = ({ pad, design }: LowPaper): string => (design ? `/designs/${design.id}` : `/pads/${pad.id}`);

/** The worst few, beside other things. */
export const RunsLow: FC<LowList> = ({ low, pads, designs }) => (
  <section>
    <h2>Runs low</h2>
    {low.length === 0 ? (
      <p class="quiet">Nothing on the shelf is at its low mark.</p>
    ) : (
      <ul class="list">
        {low.map((one) => (
          <li class="spread">
            <a href={address(one)}>{lowName(one)}</a>
            <span>{one.sheets === 0 ? 'none left' : `${howMany(one.sheets, 'sheet')} left`}</span>
          </li>
        ))}
      </ul>
    )}
    {pads + designs > low.length ? (
      <p>
        <a href="/stash/low">All that runs low</a>
      </p>
    ) : null}
  </section>
);

interface Props extends LowList {
  /** One for each of `low`. */
  readonly uses: readonly PaperUse[];
  readonly next: number | undefined;
  readonly units: Units;
}

export const Low: FC<Props> = (props) => (
  <>
    <h1>Running low</h1>
    {props.low.length === 0 ? (
      <p class="answer">Nothing runs low.</p>
    ) : (
      <>
        <p class="answer">
          <strong>{howManyLow(props)}</strong>
          {props.low.length === 1 ? '.' : ', what needs it most first.'}
        </p>
        <ol class="list">
          {props.low.map((one, index) => (
            <LowOne one={one} use={props.uses[index]!} units={props.units} />
          ))}
        </ol>
      </>
    )}
    {props.next === undefined ? null : (
      <p class="no-print">
        <a class="button plain" href={`/stash/low?more=${props.next}`}>
          Show more
        </a>
      </p>
    )}
    <p class="quiet">
      A pad is named here once its sheets together are at its low mark or under; a design of another pad at
      its own mark, or else at its even share of the pad’s. The marks stand on their own pages; 0 asks for no
      reminder.
    </p>
    <p>
      <a href="/stash/shopping">As a shopping list</a> · <a href="/stash">To the stash</a>
    </p>
  </>
);

const LowOne: FC<{ one: LowPaper; use: PaperUse; units: Units }> = ({ one, use, units }) => (
  <li class="pad">
    <div>
      <h2>
        <a href={address(one)}>{one.design ? one.design.name : one.pad.name}</a>
      </h2>
      <p class="quiet">
        {one.design ? `${one.pad.name} · ` : ''}
        {padFacts(one.pad, units)}
      </p>
      {one.pad.source === '' ? null : <p>From: {one.pad.source}</p>}
      <PaceLine sheets={one.sheets} use={use} />
      <UsedFor projects={use.projects} />
    </div>
    <Swatches designs={one.designs} />
    <div class="left">
      <p>
        <b>{one.sheets}</b> {one.sheets === 1 ? 'sheet' : 'sheets'} left
        <br />
        <span class="quiet">low at {one.mark}</span>
      </p>
      {one.design ? <NotAgain design={one.design.id} name={one.design.name} /> : null}
    </div>
  </li>
);

const NotAgain: FC<{ design: number; name: string }> = ({ design, name }) => (
  <form method="post" action={`/designs/${design}/low-mark`} class="no-print">
    <input type="hidden" name="_method" value="PUT" />
    <input type="hidden" name="lowMark" value="0" />
    <input type="hidden" name="back" value="/stash/low" />
    <button type="submit" class="plain small">
      Don’t remind me<span class="hidden"> of {name}</span>
    </button>
  </form>
);
