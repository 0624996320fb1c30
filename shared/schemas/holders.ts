/** What is asked of something that sets go into: its inside, or the sets that it is to hold. Knows no arithmetic. */
import { z } from 'zod';
import { inches, millimetres, type Units } from '../length.ts';
import { countField, lengthField, lengthOrZeroField, whenMissing } from './fields.ts';

/** What stands in a field until she types her own: choices of ours, round in either system. */
export const usualRoom = ({ unit }: Units) =>
  unit === 'in'
    ? { play: inches(1 / 8), clearance: inches(1 / 4), setBulk: inches(1 / 16) }
    : { play: millimetres(3), clearance: millimetres(6), setBulk: millimetres(1.5) };

export function holderForm(units: Units) {
  const { play, clearance, setBulk } = usualRoom(units);
  return z.object({
    width: lengthField(units),
    height: lengthField(units),
    depth: lengthField(units),
    play: whenMissing(play, lengthOrZeroField(units)),
    clearance: whenMissing(clearance, lengthOrZeroField(units)),
    setBulk: whenMissing(setBulk, lengthField(units)),
  });
}

export function setsForm(units: Units) {
  const { play, setBulk } = usualRoom(units);
  return z.object({
    width: lengthField(units),
    height: lengthField(units),
    setBulk: whenMissing(setBulk, lengthField(units)),
    sets: whenMissing(1, countField(1, 1000)),
    play: whenMissing(play, lengthOrZeroField(units)),
  });
}
