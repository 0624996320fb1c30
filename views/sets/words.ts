/** The parts of a set by name, and what each is for. Knows no measures. */
import type { PartKind } from '#shared/schemas/parts.ts';

export const PART_NAMES: Readonly<Record<PartKind, string>> = {
  base: 'Card base',
  front: 'Front panel and mats',
  inside: 'Inside panel',
  insert: 'Folded insert',
  liner: 'Envelope liner',
  wrap: 'Band, strip or ribbon',
  notches: 'Notches for a ribbon',
  tag: 'Tag',
  box: 'Strips for a box',
};

export const PART_LEADS: Readonly<Record<PartKind, string>> = {
  base: 'Book, tent or gate: what to cut, where to score, which way the grain.',
  front: 'Each layer is its margin smaller all round than the one below it.',
  inside: 'Somewhere to write.',
  insert: 'A thin sheet folded into the card.',
  liner: 'Lines the back wall and the open flap, clear of the glue.',
  wrap: 'What goes round the card, and whether the card still opens.',
  notches: 'Two notches in line on a panel and on the base under it.',
  tag: 'With its hole and its corners.',
  box: 'Paper for a box’s faces that leaves its hinge free.',
};
