/**
 * Strips that cover the faces of a box or tin with a hinged lid and leave its hinge free. Knows the box's outside and
 * no maker's box.
 */
import type { Checked, Problem } from '#shared/checked.ts';
import { add, type Length, subtract, times } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { copiesProblem, ifSound, negativeProblem, type SetPart, sizeProblems, type Wanted } from './part.ts';

export interface BoxWish extends Wanted {
  /** Outside, lying closed with the hinge at the back: width along the hinge, depth from front to back. */
  readonly box: Size & { readonly depth: Length };
  /** The lid's share of the height. */
  readonly lid: Length;
  /** What stays bare beside the hinge, on the lid and on both sides. */
  readonly free: Length;
  /** What stays bare along every other edge of a face. */
  readonly margin: Length;
}

/**
 * A panel for the lid, and for lid and body one strip each round side, front and side, scored at the front corners.
 * The back, where the hinge is, stays bare.
 */
export function boxStrips(wish: BoxWish): Checked<SetPart[]> {
  const problems = [...sizeProblems(wish.box), ...copiesProblem(wish), ...boxProblems(wish)];
  return ifSound(problems, () => [
    lidPanel(wish),
    strip('Lid strip', wish.lid, wish),
    strip('Body strip', subtract(wish.box.height, wish.lid), wish),
  ]);
}

const paper = (
  name: string,
  { copies, upright }: Wanted,
): Pick<SetPart, 'name' | 'copies' | 'material' | 'upright'> => ({
  name,
  copies,
  material: 'paper',
  upright: upright ?? false,
});

const lidPanel = (wish: BoxWish): SetPart => ({
  ...paper('Lid panel', wish),
  width: subtract(wish.box.width, times(wish.margin, 2)),
  height: subtract(subtract(wish.box.depth, wish.free), wish.margin),
  scores: [],
  notes: ['Lay its upper edge towards the hinge, and leave the hinge bare.'],
});

/** Round side, front and side: two sides without what stays free at the hinge, and the front. */
function strip(name: string, height: Length, wish: BoxWish): SetPart {
  const side = subtract(wish.box.depth, wish.free);
  return {
    ...paper(name, wish),
    width: add(side, wish.box.width, side),
    height: subtract(height, times(wish.margin, 2)),
    grain: 'height',
    scores: [
      { from: 'left', at: side },
      { from: 'left', at: add(side, wish.box.width) },
    ],
    notes: [
      'Start beside the hinge, go round the front, and end beside the hinge: open and close the lid before the glue is dry.',
    ],
  };
}

function boxProblems({ box, lid, free, margin }: BoxWish): Problem[] {
  const body = subtract(box.height, lid);
  return [
    ...(box.depth > 0 ? [] : [{ field: 'depth', message: 'This has to be more than zero.' }]),
    ...negativeProblem(free, 'free', 'What stays free'),
    ...negativeProblem(margin, 'margin', 'A margin'),
    ...(lid > 0 && body > 0 ? [] : [{ field: 'lid', message: 'The lid has to be lower than the box.' }]),
    ...(add(free, margin) < box.depth
      ? []
      : [{ field: 'free', message: 'Nothing of the sides would be left to cover.' }]),
    ...([lid, body].every((height) => times(margin, 2) < height) && times(margin, 2) < box.width
      ? []
      : [{ field: 'margin', message: 'With this margin nothing is left of a strip.' }]),
  ];
}
