/**
 * Joins a finished card and its envelope into what the post weighs and measures. Knows no size classes: those are the
 * post's.
 */
import type { Layered } from '#core/paper/layers.ts';
import { massOfShape } from '#core/paper/mass.ts';
import { type Paper, type Range, stacked, thicknessOf } from '#core/paper/thickness.ts';
import type { Front, Posted } from '#core/post/classify.ts';
import type { Trouble } from '#core/post/rules.ts';
import { add } from '#shared/length.ts';
import { addMass } from '#shared/mass.ts';
import type { AddressRuns } from '#shared/schemas/post.ts';
import type { Size } from '#shared/size.ts';

export interface ToPost {
  readonly card: Layered;
  readonly envelope: {
    /** Outside, closed. */
    readonly size: Size;
    /** Of its blank as cut and trimmed, in square units of length. */
    readonly area: number;
    readonly paper: Paper;
    /** Leaves of paper over one another at the thickest place. */
    readonly leaves: number;
  };
  readonly address: AddressRuns;
  readonly front: Front;
  readonly rigid?: boolean;
  readonly clasp?: boolean;
}

/** The closed envelope at its thickest: what isn't measured counts with the most that it may be. */
export function toPost({ card, envelope, address, front, rigid, clasp }: ToPost): Posted {
  return {
    size: envelope.size,
    thickness: closedBulk(card, envelope).most,
    mass: addMass(card.mass, massOfShape(envelope.area, envelope.paper.weight)),
    address,
    front,
    troubles: [card.lumps && 'lumps', rigid && 'rigid', clasp && 'clasp'].filter(
      (one): one is Trouble => typeof one === 'string',
    ),
  };
}

/** One set's thickness: the card and the envelope's leaves about it. */
function closedBulk(card: Layered, { paper, leaves }: ToPost['envelope']): Range {
  const around = stacked(thicknessOf(paper), leaves);
  return { least: add(card.bulk.least, around.least), most: add(card.bulk.most, around.most) };
}
