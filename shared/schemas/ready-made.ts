/** The forms of ready-made envelopes: a new kind, one put right, more bought, counted, used. Knows no shelf. */
import { z } from 'zod';
import type { Units } from '../length.ts';
import { countField, idField, ifAny, lengthField, noteField, wordsField } from './fields.ts';

const MOST = 10_000;

const describedBy = (units: Units) => ({
  name: wordsField('it a name', 80),
  width: lengthField(units),
  height: lengthField(units),
  note: noteField(200),
});

export const readyMadeForm = (units: Units) =>
  z.object({ ...describedBy(units), count: countField(0, MOST) });

export const readyMadeEditForm = (units: Units) => z.object(describedBy(units));

export const boughtForm = () => z.object({ bought: countField(1, MOST) });

export const countedForm = () => z.object({ counted: countField(0, MOST) });

/** For a project, or for none that is written down. */
export const usedForm = () =>
  z.object({
    used: countField(1, MOST),
    project: ifAny(idField).transform((id) => id ?? null),
  });
