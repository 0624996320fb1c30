/** The maker's cards as small fronts to tap, all on one scale. Knows a card's size, not how it is made. */
import { printExactSize, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { textWidth } from './boxes.ts';
import { area, type Drawing, label, line, rectangle, TEXT } from './drawing.ts';

export interface DrawnCard extends Size {
  readonly name: string;
}

/** Drawing units per length at which the longest side among the cards takes `side` units. */
export const cardScale = (cards: readonly Size[], side: number): number =>
  side / Math.max(1, ...cards.flatMap((card) => [card.width, card.height]));

/** The card's front in proportion, its fold at the left and its size beneath; `scale` comes from `cardScale`. */
export function cardDrawing(card: DrawnCard, units: Units, scale: number): Drawing {
  const [width, height] = [card.width * scale, card.height * scale];
  const size = printExactSize(card, units);
  const room = Math.max(width + 2 * LEAF, textWidth(size, TEXT.caption)) + 2 * MARGIN;
  const left = (room - width) / 2;
  return {
    title: card.name,
    words: `${card.name}: a card of ${size}, drawn in proportion.`,
    width: room,
    height: height + LEAF + 2 * MARGIN + BENEATH,
    shapes: [
      area('card', rectangle(left + LEAF, MARGIN, width, height), 'quiet'),
      area('card', rectangle(left, MARGIN + LEAF, width, height)),
      line('crease', foldLine(left, MARGIN + LEAF, height)),
      label('caption', { x: room / 2, y: height + LEAF + MARGIN + BENEATH / 2 + 2 }, size),
    ],
  };
}

const MARGIN = 3;
/** How far the card's back leaf peeps out behind its front. */
const LEAF = 3;
const BENEATH = 20;

const foldLine = (left: number, top: number, height: number): { x: number; y: number }[] => [
  { x: left + 3, y: top + 1 },
  { x: left + 3, y: top + height - 1 },
];
