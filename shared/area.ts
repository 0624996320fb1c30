/** Prints areas in the reader's units. Knows no shapes. */
import type { Units } from './length.ts';

const SQUARE_CENTIMETRES = 2.54 ** 2;

/** `1.96 sq in`, or `12.6 cm²`. */
export const printArea = (squareInches: number, { unit }: Units): string =>
  unit === 'in'
    ? `${squareInches.toFixed(2)} sq in`
    : `${(squareInches * SQUARE_CENTIMETRES).toFixed(1)} cm²`;
