/**
 * Every kind of part from what was asked for it: the one place that joins the forms' words to the parts' own makers.
 * Knows no form's text and no page.
 */
import type { Recipe } from '#core/envelope/recipe.ts';
import { accept, type Checked, refuse } from '#shared/checked.ts';
import { add, type Length, length, roundToStep, subtract, times } from '#shared/length.ts';
import type { PartKind, SetPartAsked } from '#shared/schemas/parts.ts';
import type { Size } from '#shared/size.ts';
import { cardBase } from './base.ts';
import { boxStrips } from './box.ts';
import { linerOf } from './envelope.ts';
import { notchedPair } from './notches.ts';
import { foldedInsert, frontPanels, insidePanel } from './panels.ts';
import { gridOf, type SetPart } from './part.ts';
import { tag } from './tag.ts';
import { type Wrap, wrap } from './wraps.ts';

/** `envelope` is the card's, where one was found. */
export type MakePart = {
  readonly [Kind in PartKind]: (
    asked: SetPartAsked<Kind>,
    envelope: Recipe | undefined,
  ) => Checked<readonly SetPart[]>;
};

/** Problems stand beside the fields of the forms. */
export const MAKE_PART: MakePart = {
  base: ({ foldAt, gap, ...asked }) => listed(cardBase({ ...asked, card: asked, fold: foldAt, gap })),
  front: (asked) => frontLayers(asked),
  inside: (asked) => listed(insidePanel({ ...asked, card: asked })),
  insert: (asked) =>
    asked.foldAt === 'left'
      ? listed(foldedInsert({ ...asked, card: asked }))
      : refuse('foldAt', 'A folded insert goes into a card that is folded at the left.'),
  liner: (asked, envelope) =>
    envelope ? listed(linerOf(envelope, asked)) : refuse('', 'No envelope was found for this card.'),
  wrap: (asked, envelope) => listed(wrapOf(asked, envelope)),
  notches: (asked) => notchedOf(asked),
  tag: ({ tagWidth, tagHeight, ...asked }) =>
    renamed(listed(tag({ ...asked, size: { width: tagWidth, height: tagHeight } })), {
      width: 'tagWidth',
      height: 'tagHeight',
    }),
  box: ({ boxWidth, boxHeight, depth, ...asked }) =>
    renamed(boxStrips({ ...asked, box: { width: boxWidth, height: boxHeight, depth } }), {
      width: 'boxWidth',
      height: 'boxHeight',
    }),
};

const listed = (made: Checked<SetPart>): Checked<readonly SetPart[]> =>
  made.ok ? accept([made.value]) : made;

const renamed = <T>(made: Checked<T>, names: Readonly<Record<string, string>>): Checked<T> =>
  made.ok
    ? made
    : { ok: false, problems: made.problems.map((one) => ({ ...one, field: names[one.field] ?? one.field })) };

/** Layers left empty are no layers. */
function frontLayers(asked: SetPartAsked<'front'>): Checked<readonly SetPart[]> {
  const fields = (['margins.0', 'margins.1', 'margins.2'] as const).filter(
    (field) => asked[field] !== undefined,
  );
  const margins = fields.map((field) => asked[field]!);
  const names = fields.map((field, index) => [`margins.${index}`, field]);
  return renamed(frontPanels({ ...asked, card: asked, margins }), Object.fromEntries(names));
}

/**
 * Round the closed envelope the strip has no fold to mind, and the envelope's paper adds to the bulk; what goes round is
 * rounded up to the maker's grid, its sides to an even number of lines since the strip's ends meet in their middle.
 */
function wrapOf(
  { round, foldAt, leafBulk, ...asked }: SetPartAsked<'wrap'>,
  envelope: Recipe | undefined,
): Checked<Wrap> {
  if (round === 'the card') {
    return wrap({ ...asked, card: asked, fold: foldAt, ...(leafBulk !== undefined && { leafBulk }) });
  }
  if (!envelope) return refuse('round', 'No envelope was found for this card.');
  const grid = gridOf(envelope.notcher);
  const even = (side: Length): Length => roundToStep(side, times(grid, 2), 'up');
  const { width, height } = envelope.pocket;
  const bulk = roundToStep(add(asked.bulk, ENVELOPE_BULK), grid, 'up');
  const card = { width: even(width), height: even(height), bulk };
  return wrap({ ...asked, card, fold: 'none' });
}

/** About four leaves of ordinary paper, 0.16 mm each: a choice of ours. */
const ENVELOPE_BULK = length(4 * 6400);

/** A panel a little smaller than the card, its notches in the middle, until she says otherwise. */
function notchedOf(asked: SetPartAsked<'notches'>): Checked<readonly SetPart[]> {
  const base: Size = { width: asked.width, height: asked.height };
  const panel = panelOn(base, asked);
  const middle = asked.edges === 'top and bottom' ? panel.width : panel.height;
  const at = asked.at ?? length(Math.floor(middle / 2));
  const made = notchedPair({ ...asked, base, panel, at });
  if (made.ok) return accept([made.value.panel, made.value.base]);
  return renamed(made, {
    'base.width': 'panel.width',
    'base.height': 'panel.height',
  });
}

const panelOn = (base: Size, asked: Pick<SetPartAsked<'notches'>, 'panel.width' | 'panel.height'>): Size => ({
  width: asked['panel.width'] ?? less(base.width),
  height: asked['panel.height'] ?? less(base.height),
});

/** An eighth of an inch of the base shows all round. */
const less = (side: Length): Length => subtract(side, times(length(127_000), 2));
