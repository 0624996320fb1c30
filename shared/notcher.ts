/** What the two values of a notching tool can be: more than this is a slip of the hand, not a tool. Knows no tool. */
import { inches, type Length } from './length.ts';

/** From the sheet's edge to the pocket's corner. */
export const LARGEST_INSET: Length = inches(3);

/** Of the ruler's zero, in either direction. */
export const LARGEST_CORRECTION: Length = inches(1);
