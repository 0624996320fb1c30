/**
 * The card as one field has it, `4 3/8 x 6 1/8`, or as links carry it, each side by itself; afterwards both ways at once.
 * Knows no envelope.
 */
import { z } from 'zod';
import type { Problem } from '#shared/checked.ts';
import type { Units } from '#shared/length.ts';
import { lengthField, readField } from '#shared/schemas/fields.ts';
import { readSize } from '#shared/size-typed.ts';
import { cardFields, typedSize } from '#views/envelopes/query.ts';
import { check, entryOf, type Typed } from '../http/form.ts';

export interface CardAsked {
  /** What was typed, with the card's sides where they could be read. */
  readonly typed: Typed;
  /** What stands in the card's field. */
  readonly card: string;
  readonly problems: readonly Problem[];
  /** What to say beside the card's field where nothing is wrong with it. */
  readonly note?: string;
}

export function cardAsked({ card, ...typed }: Typed, units: Units): CardAsked {
  if (card === undefined) return fromSides(typed, units);
  const { width: _, height: __, ...rest } = typed;
  if (card.trim() === '') return { typed: rest, card, problems: [] };
  const read = check(cardForm(units), { card });
  if (!read.ok) return { typed: rest, card, problems: read.problems };
  const { rounded, ...size } = read.value.card;
  return {
    typed: { ...rest, ...cardFields(size, units) },
    card,
    problems: [],
    ...(rounded && { note: `read as ${typedSize(size, units)}` }),
  };
}

const cardForm = (units: Units) => z.object({ card: readField((text) => readSize(text, units)) });

const sidesForm = (units: Units) => z.object({ width: lengthField(units), height: lengthField(units) });

/** Whatever is wrong with a side is told when the envelope is asked for. */
function fromSides(typed: Typed, units: Units): CardAsked {
  const { width = '', height = '' } = entryOf(typed, []).typed;
  if (width === '' && height === '') return { typed, card: '', problems: [] };
  const read = check(sidesForm(units), typed);
  return { typed, card: read.ok ? typedSize(read.value, units) : `${width} x ${height}`, problems: [] };
}

/** A problem with one side stands beside the field that has both. */
export const besideCard = ({ field, message }: Problem): Problem =>
  field === 'width' || field === 'height'
    ? { field: 'card', message: `${field === 'width' ? 'First' : 'Second'} side: ${message}` }
    : { field, message };
