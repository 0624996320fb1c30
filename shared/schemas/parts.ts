/** The forms of the parts of a set: one card for most of them, and each part's own measures. Knows no geometry. */
import { z } from 'zod';
import { inches, type Length, millimetres, type Units } from '../length.ts';
import {
  choiceField,
  countField,
  lengthField,
  lengthOrZeroField,
  optionalLengthField,
  tickField,
  whenMissing,
} from './fields.ts';

export const PART_KINDS = [
  'base',
  'front',
  'inside',
  'insert',
  'liner',
  'wrap',
  'notches',
  'tag',
  'box',
] as const;

export type PartKind = (typeof PART_KINDS)[number];

export const FOLDED_AT = ['left', 'right', 'top', 'sides', 'top and bottom'] as const;
export const WRAPS = ['belly band', 'closing strip', 'ribbon'] as const;
export const ROUND = ['the card', 'the closed envelope'] as const;
export const PATHS = ['whole card', 'front leaf', 'inside back'] as const;
export const RUNS = ['across', 'up'] as const;
export const ENDS = ['straight', 'angled'] as const;
export const NOTCHED_EDGES = ['top and bottom', 'left and right'] as const;

/** What stands in a field until she types her own: choices of ours, round in either system. */
export function usualMeasures({ unit }: Units) {
  const of = (inch: number, mm: number): Length => (unit === 'in' ? inches(inch) : millimetres(mm));
  return {
    bulk: of(1 / 32, 0.8),
    gap: of(1 / 32, 0.8),
    margin: of(1 / 8, 3),
    insideMargin: of(1 / 4, 6),
    glue: of(3 / 8, 10),
    side: of(1 / 8, 3),
    breadth: of(1, 25),
    overlap: of(1 / 2, 12),
    ribbon: of(1 / 4, 6),
    depth: of(1 / 16, 1.5),
    tag: { width: of(2, 50), height: of(3.5, 90) },
    corner: of(3 / 8, 10),
    hole: of(1 / 8, 3),
    box: { width: of(4.5, 115), height: of(2, 50), depth: of(3.5, 90) },
    lid: of(5 / 8, 16),
    free: of(1 / 4, 6),
    boxMargin: of(1 / 16, 1.5),
  };
}

const common = {
  copies: whenMissing(1, countField(1, 500)),
  upright: tickField,
};

const orZero = (units: Units, usual: Length) => whenMissing(usual, lengthOrZeroField(units));
const above = (units: Units, usual: Length) => whenMissing(usual, lengthField(units));

/** The finished card, as every part that belongs to one is told of it. */
const card = (units: Units) => ({
  ...common,
  width: lengthField(units),
  height: lengthField(units),
  bulk: whenMissing(usualMeasures(units).bulk, lengthOrZeroField(units, inches(3))),
  foldAt: choiceField(FOLDED_AT, 'left'),
});

/** Every field of a part may be missing: a link from a card carries only the card. */
export function partForms(units: Units) {
  const usual = usualMeasures(units);
  const ofCard = card(units);
  return {
    base: z.object({ ...ofCard, gap: orZero(units, usual.gap) }),
    front: z.object({
      ...ofCard,
      'margins.0': orZero(units, usual.margin),
      'margins.1': optionalLengthField(units),
      'margins.2': optionalLengthField(units),
    }),
    inside: z.object({ ...ofCard, margin: orZero(units, usual.insideMargin) }),
    insert: z.object({ ...ofCard, margin: orZero(units, usual.insideMargin) }),
    liner: z.object({ ...ofCard, glue: orZero(units, usual.glue), side: orZero(units, usual.side) }),
    wrap: z.object({
      ...ofCard,
      kind: choiceField(WRAPS, 'belly band'),
      round: choiceField(ROUND, 'the card'),
      path: choiceField(PATHS, 'whole card'),
      run: choiceField(RUNS, 'across'),
      ends: choiceField(ENDS, 'straight'),
      breadth: above(units, usual.breadth),
      overlap: orZero(units, usual.overlap),
      leafBulk: optionalLengthField(units),
    }),
    notches: z.object({
      ...ofCard,
      'panel.width': optionalLengthField(units),
      'panel.height': optionalLengthField(units),
      edges: choiceField(NOTCHED_EDGES, 'top and bottom'),
      at: optionalLengthField(units),
      ribbon: above(units, usual.ribbon),
      depth: above(units, usual.depth),
    }),
    tag: z.object({
      ...common,
      tagWidth: above(units, usual.tag.width),
      tagHeight: above(units, usual.tag.height),
      corner: orZero(units, usual.corner),
      hole: orZero(units, usual.hole),
    }),
    box: z.object({
      ...common,
      boxWidth: above(units, usual.box.width),
      boxHeight: above(units, usual.box.height),
      depth: above(units, usual.box.depth),
      lid: above(units, usual.lid),
      free: orZero(units, usual.free),
      margin: orZero(units, usual.boxMargin),
    }),
  };
}

export type SetPartAsked<Kind extends PartKind> = z.infer<ReturnType<typeof partForms>[Kind]>;

const SHAPES = partForms({ unit: 'in', step: 16 });

/** Whether it belongs to a card, which its form asks for; so does the page of a whole set. */
export const hasCard = (kind: PartKind | undefined): boolean =>
  kind === undefined || 'width' in SHAPES[kind].shape;
