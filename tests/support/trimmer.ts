/**
 * A trimmer and a person who does what the steps say, on paper that is off its nominal size: a block goes to the fence,
 * what lies between fence and knife is exactly as long as was set, and the rest takes up the difference.
 */
import type { CutPlan, Rectangle } from '#core/cutting/cuts.ts';
import type { Piece } from '#core/cutting/order.ts';

export interface Made {
  readonly nominal: Rectangle;
  /** Where it really lay on its sheet, and its real size. */
  readonly real: Rectangle;
  /** Sides at which it took up all that the sheet left, from edge to edge or after other parts: no knife has touched one end. */
  readonly full: { readonly width: boolean; readonly height: boolean };
}

export interface Walked {
  readonly parts: readonly (Made & { readonly part: string })[];
  readonly leftovers: readonly Made[];
  readonly faults: readonly string[];
}

interface Block extends Made {
  readonly becomes: string;
  readonly part?: string;
}

const keyOf = ({ x, y, width, height }: Rectangle): string => [x, y, width, height].join();

/** One sheet of each pattern, as often as it is cut; `off` is added to both sides of every piece. */
export function walkPlan(pieces: readonly Piece[], plan: CutPlan, off: number): Walked {
  const faults: string[] = [];
  const made: Block[] = [];
  plan.patterns.forEach((pattern, index) => {
    const { width, height } = pieces.find(({ id }) => id === pattern.pieces[0])!;
    const whole: Block = {
      nominal: { x: 0, y: 0, width, height },
      real: { x: 0, y: 0, width: width + off, height: height + off },
      full: { width: true, height: true },
      becomes: 'more',
    };
    const table = new Map([[keyOf(whole.nominal), whole]]);
    for (const step of plan.steps) {
      for (const laid of step.laid.filter((one) => one.pattern === index)) {
        let block = table.get(keyOf(laid.block));
        if (!block) {
          faults.push(`step ${step.number}: no block ${keyOf(laid.block)}`);
          continue;
        }
        table.delete(keyOf(laid.block));
        const side = step.along === 'x' ? 'width' : 'height';
        const at = step.along === 'x' ? 'x' : 'y';
        const farFence = laid.fence === 'right' || laid.fence === 'bottom';
        laid.kept.forEach((kept, turn) => {
          const { real } = block!;
          if (real[side] < step.set) faults.push(`step ${step.number}: too short for the fence`);
          const start = farFence ? real[at] + real[side] - step.set : real[at];
          table.set(keyOf(kept), {
            nominal: kept,
            real: { ...real, [at]: start, [side]: step.set },
            full: { ...block!.full, [side]: false },
            becomes: kept.becomes.kind,
            ...(kept.becomes.kind === 'part' && { part: kept.becomes.part }),
          });
          const rest = turn === laid.kept.length - 1 ? laid.rest : undefined;
          block = {
            ...block!,
            nominal: rest ?? block!.nominal,
            real: { ...real, [at]: farFence ? real[at] : real[at] + step.set, [side]: real[side] - step.set },
            becomes: rest?.becomes.kind ?? 'more',
            ...(rest?.becomes.kind === 'part' && { part: rest.becomes.part }),
          };
        });
        table.set(keyOf(laid.rest), lastToFence(block, side, step.set));
      }
    }
    if (pattern.steps.length === 0)
      table.set(keyOf(whole.nominal), { ...whole, becomes: 'part', part: pattern.rectangles[0]!.part });
    for (const [key, one] of table) if (one.becomes === 'more') faults.push(`${key} is not cut on`);
    for (let copy = 0; copy < pattern.pieces.length; copy += 1) made.push(...table.values());
  });
  return {
    parts: made.flatMap((one) => (one.part === undefined ? [] : [{ ...one, part: one.part }])),
    leftovers: made.filter(({ becomes }) => becomes === 'leftover' || becomes === 'waste'),
    faults,
  };
}

/** The last of a size is laid to the fence too, and the knife takes what is over. */
function lastToFence(block: Block, side: 'width' | 'height', set: number): Block {
  const wanted = block.becomes === 'part' || block.becomes === 'more';
  if (!wanted || block.nominal[side] !== set || block.real[side] <= set) return block;
  return { ...block, real: { ...block.real, [side]: set }, full: { ...block.full, [side]: false } };
}
