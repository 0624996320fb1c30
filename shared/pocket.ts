/** How a pocket is printed wherever it stands: rounded down on the reader's ruler, since no less may be in the paper. */
import { type Length, printLength, printSize, type Units } from './length.ts';
import type { Size } from './size.ts';

export const printPocket = (pocket: Size, units: Units): string => printSize(pocket, units, 'down');

export const printPocketSide = (side: Length, units: Units): string => printLength(side, units, 'down');
