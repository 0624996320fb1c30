/** The forms about offcuts: a new one, one put right, how many are left, what the shelf is searched for. Knows no shelf. */
import { z } from 'zod';
import type { Units } from '../length.ts';
import {
  choiceField,
  countField,
  idField,
  ifAny,
  lengthField,
  noteField,
  optionalLengthField,
  tickField,
} from './fields.ts';

export const offcutForm = (units: Units) =>
  z.object({ design: idField, count: countField(1, MOST_ALIKE), ...describedBy(units) });

/** Puts an offcut right; how many there are is counted again instead. */
export const offcutEditForm = (units: Units) => z.object(describedBy(units));

/** How many there are now. */
export const recountForm = () => z.object({ counted: countField(0, MOST_ALIKE) });

/** How many of them went; all of them when nothing is said. */
export const goneForm = () => z.object({ count: ifAny(countField(1, MOST_ALIKE)) });

/** What the shelf is searched for; everything may be left out. `more` is how many pages to show. */
export const shelfForm = <Kind extends string>(units: Units, kinds: readonly Kind[]) =>
  z.object({
    width: optionalLengthField(units),
    height: optionalLengthField(units),
    design: ifAny(idField),
    kind: ifAny(choiceField(kinds)),
    place: ifAny(noteField(60)),
    code: ifAny(noteField(20)),
    more: ifAny(countField(1, MOST_PAGES)),
  });

/** More strips alike than anybody counts. */
const MOST_ALIKE = 1_000;
const MOST_PAGES = 50;

const describedBy = (units: Units) => ({
  width: lengthField(units),
  height: lengthField(units),
  border: tickField,
  place: noteField(60),
  note: noteField(500),
});
