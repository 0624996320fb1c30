/** The steps at the trimmer, all cuts of one setting together, each with a box to tick. Knows no order but the given. */
import type { FC } from 'hono/jsx';
import { type Block, cutSheet, type Step } from '#core/cutting/steps.ts';
import { cutStepDrawing } from '#core/drawing/cut-step.ts';
import { sizeOf } from '#core/project/measured.ts';
import { refOfPiece } from '#core/project/order.ts';
import { length, printLength, printSize } from '#shared/length.ts';
import { listed } from '#views/parts/words.ts';
import { Picture } from '../diagrams/picture.tsx';
import { SwatchChip } from '../diagrams/swatch.tsx';
import { alike } from './pieces.tsx';
import type { PlanView } from './view.ts';
import { labelsOf, type PartLabel, tally } from './words.ts';

/** Cuts that are made alike on pieces that are alike, with their number on the sheet. */
interface Group {
  readonly number: number;
  /** The number of its piece's drawing. */
  readonly drawing: number;
  readonly step: Step;
  readonly count: number;
}

interface Setting {
  readonly distance: number;
  readonly groups: readonly Group[];
}

export function settingsIn({ plan }: Pick<PlanView, 'plan'>): Setting[] {
  const drawing = new Map(
    alike(plan).flatMap(({ indices }, group) => indices.map((index) => [index, group + 1] as const)),
  );
  let number = 0;
  return cutSheet(plan.pieces, plan.plan).map(({ distance, steps }) => {
    const groups = new Map<string, Omit<Group, 'number'>>();
    for (const step of steps) {
      const at = drawing.get(step.used)!;
      const key = JSON.stringify([at, step.block, step.fence, step.off.length]);
      const known = groups.get(key) ?? { step, drawing: at, count: 0 };
      groups.set(key, { ...known, count: known.count + 1 });
    }
    return { distance, groups: [...groups.values()].map((group) => ({ ...group, number: number++ })) };
  });
}

export const Steps: FC<PlanView> = (view) => {
  const settings = settingsIn(view);
  return (
    <ol class="settings">
      {settings.map((setting) => (
        <li>
          <h2>
            Set {printLength(length(setting.distance), view.units)}: <small>{sayCuts(setting)}</small>
          </h2>
          <ul>
            {setting.groups.map((group) => (
              <StepRow {...view} group={group} />
            ))}
          </ul>
        </li>
      ))}
    </ol>
  );
};

/** One step, which a tap ticks: with scripts only its own line is changed. */
export const StepRow: FC<PlanView & { group: Group }> = ({ group, ...view }) => {
  const { plan } = view;
  const done = plan.ticks.includes(group.number);
  const action = `/plans/${plan.id}/ticks`;
  return (
    <li id={`step-${group.number}`} class={done ? 'step ticked' : 'step'}>
      {plan.cut ? null : (
        <form
          method="post"
          action={action}
          hx-post={action}
          hx-target={`#step-${group.number}`}
          hx-swap="outerHTML"
        >
          <input type="hidden" name="step" value={`${group.number}`} />
          {done ? <input type="hidden" name="_method" value="DELETE" /> : null}
          <button
            type="submit"
            id={`tick-${group.number}`}
            class="tick"
            aria-pressed={done ? 'true' : 'false'}
          >
            <span class="hidden">
              {done ? 'Cut' : 'Not cut yet'}: step {group.number + 1}
            </span>
          </button>
        </form>
      )}
      <span class="box" aria-hidden="true" />
      <StepPicture {...view} group={group} />
      <StepWords {...view} group={group} />
    </li>
  );
};

/** Decoration: the words beside it say the same. */
const StepPicture: FC<PlanView & { group: Group }> = ({ group: { step, number }, plan }) => {
  const piece = plan.pieces.find(({ id }) => id === step.piece)!;
  const used = plan.pieces.filter(({ id }) => plan.plan.used.some((one) => one.piece === id));
  const scale = THUMBNAIL / Math.max(...used.flatMap(({ width, height }) => [width, height]));
  return (
    <span class="step-picture" aria-hidden="true">
      <Picture
        drawing={cutStepDrawing({ ...step, piece }, `${step.fence} edge to the fence`, scale)}
        id={`step-picture-${number}`}
      />
    </span>
  );
};

const THUMBNAIL = 64;

const StepWords: FC<PlanView & { group: Group }> = ({ group: { step, count, number, drawing }, ...view }) => {
  const { plan, designs, offcuts, units } = view;
  const { design, offcut } = refOfPiece(plan.pieces.find(({ id }) => id === step.piece)!);
  const paper = designs.get(design);
  return (
    <div class="step-words">
      <p>
        {paper ? (
          <SwatchChip id={`step-chip-${number}`} swatch={paper.swatch} name={paper.name} size={22} />
        ) : null}{' '}
        <a class="which" href={`#piece-${drawing}`}>
          {drawing}
        </a>{' '}
        {count > 1 ? <b>{count} × </b> : null}
        {offcut === null ? paper?.name : <span class="code">{offcuts.get(offcut)?.code}</span>}{' '}
        <span class="quiet">
          {isWhole(step, view) ? '' : `piece ${printSize(sizeOf(step.block), units)}, `}
        </span>
        <b>{step.fence} edge</b> to the fence
      </p>
      <p>{sayOff(step, view)}</p>
    </div>
  );
};

const isWhole = ({ block, piece }: Step, { plan }: PlanView): boolean => {
  const whole = plan.pieces.find(({ id }) => id === piece)!;
  return whole.width === block.width && whole.height === block.height;
};

/** `Comes off: 3 × front 4⅞ × 6″. Stays: leftover 2 × 6″ for tray 1.` */
function sayOff({ off, rest, piece }: Step, view: PlanView): string {
  const labels = labelsOf(view.plan, view.titles);
  const say = (block: Block): string => sayBlock(block, piece, labels, view);
  const parts = [...tally(off.map(say))].map(([words, count]) => (count > 1 ? `${count} × ${words}` : words));
  return `Comes off: ${listed(parts)}. Stays: ${say(rest)}.`;
}

function sayBlock(
  block: Block,
  piece: string,
  labels: ReadonlyMap<string, PartLabel>,
  view: PlanView,
): string {
  const size = printSize(sizeOf(block), view.units);
  switch (block.becomes.kind) {
    case 'part':
      return `${labels.get(block.becomes.part)?.name ?? block.becomes.part} ${size}`;
    case 'leftover':
      return `leftover ${size}${placeOf(piece, view)}`;
    case 'waste':
      return `waste ${size}`;
    case 'more':
      return `a piece ${size} to cut on`;
  }
}

function placeOf(piece: string, { plan, offcuts }: PlanView): string {
  const { offcut } = refOfPiece(plan.pieces.find(({ id }) => id === piece)!);
  const place = offcut === null ? '' : (offcuts.get(offcut)?.place ?? '');
  return place === '' ? ' for the shelf' : ` for ${place}`;
}

function sayCuts({ groups }: Setting): string {
  const cuts = groups.reduce((sum, { step, count }) => sum + step.off.length * count, 0);
  return cuts === 1 ? 'one cut' : `${cuts} cuts`;
}
