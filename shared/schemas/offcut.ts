/** The forms about offcuts: a new one, one put right, how many are left, what the shelf is searched for. Knows no shelf. */
import { z } from 'zod';
import type { Units } from '../length.ts';
import { SHELF_ORDERS } from '../shelf-order.ts';
import {
  choiceField,
  countField,
  ifAny,
  lengthField,
  noteField,
  optionalLengthField,
  tickField,
  wordsField,
} from './fields.ts';

export const offcutForm = (units: Units) =>
  z.object({
    design: wordsField('the design it is cut from'),
    count: countField(1, MOST_ALIKE),
    ...describedBy(units),
  });

/** Puts an offcut right; how many there are is counted again instead. */
export const offcutEditForm = (units: Units) => z.object(describedBy(units));

/** How many there are now. */
export const recountForm = () => z.object({ counted: countField(0, MOST_ALIKE) });

/** How many of them went; all of them when nothing is said. */
export const goneForm = () => z.object({ count: ifAny(countField(1, MOST_ALIKE)) });

/** What the shelf is searched for, in which order and from which on; everything may be left out. */
export const shelfForm = <Kind extends string>(units: Units, kinds: readonly Kind[]) =>
  z.object({
    width: optionalLengthField(units),
    height: optionalLengthField(units),
    design: ifAny(noteField(200)),
    kind: ifAny(choiceField(kinds)),
    place: ifAny(noteField(60)),
    code: ifAny(noteField(20)),
    sort: ifAny(choiceField(SHELF_ORDERS)),
    view: ifAny(choiceField(['list'])),
    from: ifAny(countField(0, 100_000)),
  });

/** More strips alike than anybody counts. */
const MOST_ALIKE = 1_000;

const describedBy = (units: Units) => ({
  width: lengthField(units),
  height: lengthField(units),
  border: tickField,
  place: noteField(60),
  note: noteField(500),
});
