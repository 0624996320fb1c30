/** What is asked about a closed envelope before it is posted. Knows no post and no rules. */
import { z } from 'zod';
import { inches, type Units } from '../length.ts';
import { type Mass, readMass } from '../mass.ts';
import { choiceField, lengthField, readField, tickField } from './fields.ts';

export const ADDRESSES = ['along', 'up'] as const;
/** Which way the address runs: along the longer side, or up it. */
export type AddressRuns = (typeof ADDRESSES)[number];

export const FRONTS = ['light', 'patterned', 'dark'] as const;
export const TROUBLES = ['lumps', 'rigid', 'clasp'] as const;

export const postForm = (units: Units) =>
  z
    .object({
      width: lengthField(units),
      height: lengthField(units),
      thick: lengthField(units, inches(12)),
      mass: massField(massUnit(units)),
      address: choiceField(ADDRESSES, 'along'),
      front: choiceField(FRONTS, 'light'),
      lumps: tickField,
      rigid: tickField,
      clasp: tickField,
      bare: tickField,
    })
    .transform(({ width, height, thick: thickness, mass, address, front, bare, ...ticks }) => ({
      size: { width, height },
      thickness,
      mass,
      address,
      front,
      bare,
      troubles: TROUBLES.filter((one) => ticks[one]),
    }));

/** Inches go with ounces. */
export const massUnit = (units: Units): 'g' | 'oz' => (units.unit === 'in' ? 'oz' : 'g');

export const massField = (unit: 'g' | 'oz'): z.ZodType<Mass> => readField((typed) => readMass(typed, unit));
