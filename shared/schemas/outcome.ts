/** What is asked of an envelope that was folded: how the card sat, what was measured, what was done otherwise. */
import { z } from 'zod';
import { FINISHES, type Finish } from '../fold.ts';
import type { Length, Units } from '../length.ts';
import { FITS } from '../outcome.ts';
import {
  choiceField,
  idField,
  lengthField,
  noteField,
  optionalLengthField,
  tickField,
  wordsField,
} from './fields.ts';
import { type FinishTyped, finishField, finishFields } from './finish.ts';
import { lessonStepField } from './lesson.ts';

export const FINISH_SHAPES = ['as planned', ...FINISHES] as const;

export const FLAPS_ASKED = ['C', 'D'] as const;

/** What she answers when the pocket fits better turned round. */
const SIDES = ['turned', 'kept'] as const;

/**
 * Every field may be left empty, but a pocket has both its sides and a finish all its measures. `sides` is the answer to a
 * question that was asked about the pocket typed as `asked`; with `finish`, nothing more is to come of the project.
 */
export const outcomeForm = (units: Units) =>
  z
    .object({
      envelope: idField,
      rest: tickField,
      felt: choiceField(['', ...FITS], ''),
      pocketWidth: optionalLengthField(units),
      pocketHeight: optionalLengthField(units),
      sides: choiceField(['', ...SIDES], ''),
      asked: noteField(100),
      square: optionalLengthField(units),
      start: optionalLengthField(units),
      twin: tickField,
      ...finishFields(units, FINISH_SHAPES),
      wrong: noteField(600),
      savedBy: noteField(600),
      step: lessonStepField,
      finish: tickField,
    })
    .transform(({ cShape, cDepth, cMore, dShape, dDepth, dMore, ...asked }, context) => ({
      ...asked,
      pocket: pocketOf(asked, context),
      finishes: {
        ...finishOf('c', { shape: cShape, depth: cDepth, more: cMore }, context),
        ...finishOf('d', { shape: dShape, depth: dDepth, more: dMore }, context),
      },
    }));

/** Whether the card goes into what was just folded, nothing when nobody tried; with `rest`, so are the other blanks. */
export const madeForm = z.object({
  envelope: idField,
  goes: choiceField(['', 'yes', 'tight', 'no'], ''),
  rest: tickField,
});

/** What is not folded after all; with `rest`, neither are those that came out alike. */
export const unmadeForm = madeForm.omit({ goes: true });

/** Whether those written down alike are meant too. */
export const withdrawalForm = unmadeForm.pick({ rest: true });

export const spoiledForm = z.object({
  envelope: idField,
  wrong: wordsField('a word on what went wrong', 600),
  savedBy: noteField(600),
  step: lessonStepField,
});

export const startForm = (units: Units) => z.object({ start: lengthField(units) });

type Context = z.RefinementCtx;

function pocketOf(
  {
    pocketWidth: width,
    pocketHeight: height,
  }: { pocketWidth?: Length | undefined; pocketHeight?: Length | undefined },
  context: Context,
): { width: Length; height: Length } | null {
  if (width !== undefined && height !== undefined) return { width, height };
  if (width === undefined && height === undefined) return null;
  return missing(
    context,
    width === undefined ? 'pocketWidth' : 'pocketHeight',
    'Measure the pocket both ways: one side alone says too little.',
  );
}

function finishOf(
  letter: 'c' | 'd',
  { shape, depth, more }: FinishTyped<(typeof FINISH_SHAPES)[number]>,
  context: Context,
): { C?: Finish; D?: Finish } {
  const finish = read();
  return finish ? { [letter.toUpperCase()]: finish } : {};

  function read(): Finish | undefined {
    switch (shape) {
      case 'pointed':
        return { shape };
      case 'straight':
        return {
          shape,
          depth: depth ?? missing(context, finishField(letter, 'Depth'), 'How far from its score is it cut?'),
        };
      case 'tapered':
        return {
          shape,
          depth: depth ?? missing(context, finishField(letter, 'Depth'), 'How far from its score is it cut?'),
          taper: more ?? missing(context, finishField(letter, 'More'), 'How far in do the sides taper?'),
        };
      case 'rounded':
        return {
          shape,
          radius: more ?? missing(context, finishField(letter, 'More'), 'What is the radius of the tip?'),
        };
    }
    return undefined;
  }
}

function missing(context: Context, field: string, message: string): never {
  context.addIssue({ code: 'custom', message, path: [field] });
  return z.NEVER;
}
