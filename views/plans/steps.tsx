/**
 * The steps at the trimmer, all cuts of one setting together, each step with a box to tick: what lies at the fence, what
 * is kept, what falls off. Knows no order but the given.
 */
import type { FC } from 'hono/jsx';
import type { Block, Laid, Step } from '#core/cutting/cuts.ts';
import { settingsOfSteps } from '#core/cutting/steps.ts';
import { cutStepDrawing } from '#core/drawing/cut-step.ts';
import { sizeOf } from '#core/stash/measured.ts';
import { printExactSize } from '#shared/length.ts';
import { listed } from '#views/common/words.ts';
import { Picture } from '../diagrams/picture.tsx';
import { sayPieces } from './pieces.tsx';
import type { PlanView } from './view.ts';
import { labelsOf, type PartLabel, sayTrue, tally } from './words.ts';

export const Steps: FC<PlanView> = (view) => (
  <ol class="settings">
    {settingsOfSteps(view.plan.plan.steps).map((steps) => (
      <li>
        <h2>
          Set {sayTrue(steps[0]!.set, view.units)}: <small>{sayCuts(steps)}</small>
        </h2>
        <ul>
          {steps.map((step) => (
            <StepRow {...view} step={step} />
          ))}
        </ul>
      </li>
    ))}
  </ol>
);

/** One step, which a tap ticks: with scripts only its own line is changed. */
export const StepRow: FC<PlanView & { step: Step }> = ({ step, ...view }) => {
  const { plan } = view;
  const done = plan.ticks.includes(step.number);
  const action = `/plans/${plan.id}/ticks`;
  return (
    <li id={`step-${step.number}`} class={done ? 'step ticked' : 'step'}>
      {plan.cut ? null : (
        <form
          method="post"
          action={action}
          hx-post={action}
          hx-target={`#step-${step.number}`}
          hx-swap="outerHTML"
        >
          <input type="hidden" name="step" value={`${step.number}`} />
          {done ? <input type="hidden" name="_method" value="DELETE" /> : null}
          <button
            type="submit"
            id={`tick-${step.number}`}
            class="tick"
            aria-pressed={done ? 'true' : 'false'}
          >
            <span class="hidden">
              {done ? 'Cut' : 'Not cut yet'}: step {ordinal(step, view)}
            </span>
          </button>
        </form>
      )}
      <span class="box" aria-hidden="true" />
      <ul class="laid">
        {alike(step, view).map((group, index) => (
          <li>
            <LaidPicture {...view} group={group} id={`step-picture-${step.number}-${index}`} />
            <LaidWords {...view} group={group} />
          </li>
        ))}
      </ul>
    </li>
  );
};

/** Steps are counted from one; those of older plans were numbered from nought. */
const ordinal = ({ number }: Step, { plan }: PlanView): number =>
  plan.plan.steps.findIndex((one) => one.number === number) + 1;

/** Blocks of a pattern that are cut alike wherever they lay in it. */
interface Group {
  readonly laid: readonly Laid[];
  readonly words: string;
}

function alike({ laid }: Step, view: PlanView): Group[] {
  const groups = new Map<string, Laid[]>();
  for (const one of laid) {
    const { width, height } = one.block;
    const key = JSON.stringify([one.pattern, width, height, one.fence, sayOff(one, view)]);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map((laid) => ({ laid, words: sayOff(laid[0]!, view) }));
}

/** Decoration: the words beside it say the same. */
const LaidPicture: FC<PlanView & { group: Group; id: string }> = ({ group: { laid }, id, plan }) => {
  const sizes = plan.pieces.filter((piece) => plan.plan.used.some((one) => one.piece === piece.id));
  const scale = THUMBNAIL / Math.max(...sizes.flatMap(({ width, height }) => [width, height]));
  const { pattern, fence } = laid[0]!;
  const piece = pieceOf(pattern, plan);
  const blocks = { blocks: laid.map(({ block }) => block), kept: laid.flatMap(({ kept }) => kept) };
  return (
    <span class="step-picture" aria-hidden="true">
      <Picture
        drawing={cutStepDrawing({ ...blocks, piece, fence }, `${fence} edge to the fence`, scale)}
        id={id}
      />
    </span>
  );
};

const THUMBNAIL = 64;

const LaidWords: FC<PlanView & { group: Group }> = ({ group: { laid, words }, ...view }) => {
  const { plan, units } = view;
  const { pattern, block, fence } = laid[0]!;
  const piece = pieceOf(pattern, plan);
  const whole = piece.width === block.width && piece.height === block.height;
  const count = laid.length * plan.plan.patterns[pattern]!.pieces.length;
  return (
    <p class="step-words">
      <a class="which" href={`#piece-${pattern + 1}`}>
        {pattern + 1}
      </a>{' '}
      {whole ? (
        sayPieces(pattern, view)
      ) : (
        <>
          {count > 1 ? <b>{count} × </b> : null}
          block {printExactSize(sizeOf(block), units)}
        </>
      )}
      , <b>{fence} edge</b> to the fence. {words}
    </p>
  );
};

const pieceOf = (pattern: number, plan: PlanView['plan']) =>
  plan.pieces.find(({ id }) => id === plan.plan.patterns[pattern]!.pieces[0])!;

/** `Keep 3 × Front 4⅞ × 6″. Falls off: leftover 2 × 6″ for tray 1.` */
function sayOff({ kept, rest, pattern }: Laid, view: PlanView): string {
  const labels = labelsOf(view.plan, view.titles);
  const say = (block: Block): string => sayBlock(block, pattern, labels, view);
  const parts = [...tally(kept.map(say))].map(([words, count]) =>
    count > 1 ? `${count} × ${words}` : words,
  );
  return `Keep ${listed(parts)}. ${REST[rest.becomes.kind]} ${say(rest)}.`;
}

const REST: Record<Block['becomes']['kind'], string> = {
  more: 'Cut on later:',
  part: 'What is left is',
  leftover: 'Falls off:',
  waste: 'Falls off:',
};

function sayBlock(
  block: Block,
  pattern: number,
  labels: ReadonlyMap<string, PartLabel>,
  view: PlanView,
): string {
  const size = printExactSize(sizeOf(block), view.units);
  switch (block.becomes.kind) {
    case 'part':
      return `${labels.get(block.becomes.part)?.name ?? block.becomes.part} ${size}`;
    case 'leftover':
      return `leftover ${size}${placeOf(pattern, view)}`;
    case 'waste':
      return `waste ${size}`;
    case 'more':
      return `block ${size}`;
  }
}

/** Where a leftover goes back to: of several offcuts each to its own place. */
function placeOf(pattern: number, { plan, offcuts }: PlanView): string {
  const places = new Set(
    plan.plan.patterns[pattern]!.pieces.map((id) => {
      const { offcut } = plan.pieces.find((piece) => piece.id === id)!.ref;
      return offcut === null ? '' : (offcuts.get(offcut)?.place ?? '');
    }),
  );
  const [place] = places;
  return places.size > 1 || !place ? ' for the shelf' : ` for ${place}`;
}

function sayCuts(steps: readonly Step[]): string {
  const cuts = steps.reduce((sum, { times }) => sum + times, 0);
  return cuts === 1 ? 'one cut' : `${cuts} cuts`;
}
