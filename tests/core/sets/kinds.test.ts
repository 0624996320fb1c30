/** Each kind of part from a form with nothing typed but the card, against published measures and common practice. */
import { describe, expect, test } from 'vitest';
import type { DrawnPart } from '#core/drawing/part.ts';
import { MAKE_PART } from '#core/sets/kinds.ts';
import { inches, length, subtract, type Units } from '#shared/length.ts';
import { PART_KINDS, type PartKind, partForms, type SetPartAsked } from '#shared/schemas/parts.ts';
import { CARD, RECIPE, size } from '#tests/support/cast.ts';

const INCHES: Units = { unit: 'in', step: 16 };
const KEEPSAKE = { width: '5', height: '7' };

function make<Kind extends PartKind>(kind: Kind, typed: Record<string, string> = KEEPSAKE) {
  const asked = partForms(INCHES)[kind].safeParse(typed);
  const made = MAKE_PART[kind](asked.data as unknown as SetPartAsked<Kind>, RECIPE);
  return made.ok ? made.value : [];
}

describe('with nothing typed but the card', () => {
  test.each(PART_KINDS)('a %s can be made', (kind) => {
    expect(make(kind).length).toBeGreaterThan(0);
  });

  // Published how-to guides: a liner is ¼ in narrower than its envelope; ours lies on 64ths, rounded down.
  test('a liner is ¼ in narrower than the envelope', () => {
    const [liner] = make('liner');
    const less = subtract(RECIPE.pocket.width, liner!.width);
    expect(less).toBeGreaterThanOrEqual(inches(1 / 4));
    expect(less).toBeLessThan(inches(1 / 4 + 1 / 64));
  });

  // Common practice, no source: the base's notch is the panel's plus the margin of ⅛ in.
  test('a notched panel is ⅛ in smaller all round, and its base’s notch lies ⅛ in further in', () => {
    const [panel, base] = make('notches') as readonly DrawnPart[];
    expect(panel).toMatchObject(size(4.75, 6.75));
    expect(base!.notchAt! - panel!.notchAt!).toBe(inches(1 / 8));
  });
});

test('a band round the closed envelope is longer than one round its card', () => {
  const typed = { width: '5 7/8', height: '3' };
  const [card, envelope] = [make('wrap', typed), make('wrap', { ...typed, round: 'the closed envelope' })];
  const grown = 2 * (RECIPE.pocket.width - CARD.width);
  expect(envelope[0]!.width - card[0]!.width).toBeGreaterThan(grown);
  expect(envelope[0]!.width - card[0]!.width).toBeLessThan(length(grown + inches(0.15)));
});

test('a band round the closed envelope lies on 64ths of an inch, with its scores', () => {
  const [band] = make('wrap', { width: '5 7/8', height: '3', round: 'the closed envelope' });
  for (const measure of [band!.width, ...band!.scores.map(({ at }) => at)]) {
    expect(measure % inches(1 / 64)).toBe(0);
  }
});
