/** Prints what is worked out finer than any ruler shows. Knows only lengths. */
import { type Length, toInches, toMillimetres, type Units } from '#shared/length.ts';

/** To a thousandth of an inch or a hundredth of a millimetre. */
export const finely = (one: Length, units: Units): string => {
  const text = units.unit === 'in' ? toInches(one).toFixed(3) : toMillimetres(one).toFixed(2);
  return `${text.replace('-', '−')}${units.unit === 'in' ? '″' : ' mm'}`;
};
