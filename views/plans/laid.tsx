/**
 * What a step lays to the fence: blocks that are cut alike together, in words and drawn, small to find again or large to
 * cut by. Knows no order.
 */
import type { FC } from 'hono/jsx';
import type { Block, Laid, Step } from '#core/cutting/cuts.ts';
import { cutSettingDrawing, cutStepDrawing, settingScale } from '#core/drawing/cut-step.ts';
import { sizeOf } from '#core/stash/measured.ts';
import { printExactSize } from '#shared/length.ts';
import { listed } from '#views/common/words.ts';
import { Picture } from '../diagrams/picture.tsx';
import { sayPieces } from './pieces.tsx';
import type { PlanView } from './view.ts';
import { labelsOf, type PartLabel, sayTrue, tally } from './words.ts';

/** Blocks of a pattern that are cut alike wherever they lay in it. */
export interface Group {
  readonly laid: readonly Laid[];
  readonly words: string;
}

export function alike({ laid }: Step, view: PlanView): Group[] {
  const groups = new Map<string, Laid[]>();
  for (const one of laid) {
    const { width, height } = one.block;
    const key = JSON.stringify([one.pattern, width, height, one.fence, sayOff(one, view)]);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map((laid) => ({ laid, words: sayOff(laid[0]!, view) }));
}

/** Decoration: the words beside it say the same. */
export const Thumbnail: FC<PlanView & { group: Group; id: string }> = ({ group, id, plan }) => {
  const sizes = plan.pieces.filter((piece) => plan.plan.used.some((one) => one.piece === piece.id));
  const scale = THUMBNAIL / Math.max(...sizes.flatMap(({ width, height }) => [width, height]));
  return (
    <span class="step-picture" aria-hidden="true">
      <Picture drawing={cutStepDrawing(drawnStep(group, plan), sayFence(group), scale)} id={id} />
    </span>
  );
};

/** To cut by: all of a step to one scale, each with the number of its pattern. */
export const LaidPictures: FC<PlanView & { step: Step; groups: readonly Group[] }> = ({
  step,
  groups,
  plan,
  units,
}) => {
  const drawn = groups.map((group) => drawnStep(group, plan));
  const [width, height] = groups.length === 1 ? ALONE : TOGETHER;
  const scale = settingScale(
    drawn.map(({ piece }) => piece),
    width,
    height,
  );
  return (
    <ul class="now-pictures">
      {groups.map((group, index) => (
        <li>
          {groups.length > 1 ? <span class="which">{group.laid[0]!.pattern + 1}</span> : null}
          <Picture
            drawing={cutSettingDrawing(drawn[index]!, sayTrue(step.set, units), sayFence(group), scale)}
            id={`now-picture-${index}`}
          />
        </li>
      ))}
    </ul>
  );
};

/** As wide and as high as a phone leaves room for. */
const ALONE = [340, 300] as const;
const TOGETHER = [172, 220] as const;

const drawnStep = ({ laid }: Group, plan: PlanView['plan']) => ({
  blocks: laid.map(({ block }) => block),
  kept: laid.flatMap(({ kept }) => kept),
  piece: pieceOf(laid[0]!.pattern, plan),
  fence: laid[0]!.fence,
});

const sayFence = ({ laid }: Group): string => `${laid[0]!.fence} edge to the fence`;

const THUMBNAIL = 64;

export const LaidWords: FC<PlanView & { group: Group }> = ({ group: { laid, words }, ...view }) => {
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
