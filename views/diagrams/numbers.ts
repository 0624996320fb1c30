/** Numbers, points and transforms as SVG writes them, rounded so that stored pictures stay steady. */
import type { Point } from '#core/geometry/point.ts';
import type { Transform } from '#core/geometry/transform.ts';

export const number = (value: number): string => fixed(value, 2);

export const points = (all: readonly Point[]): string =>
  all.map((point) => `${number(point.x)},${number(point.y)}`).join(' ');

export const matrix = ({ a, b, c, d, e, f }: Transform): string =>
  `matrix(${[a, b, c, d].map((value) => fixed(value, 5)).join(' ')} ${number(e)} ${number(f)})`;

const fixed = (value: number, decimals: number): string => `${Number(value.toFixed(decimals)) + 0}`;
