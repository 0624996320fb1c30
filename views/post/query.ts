/** Links that ask the post about an envelope, and the fields they fill. Knows no answer. */
import type { Posted } from '#core/post/classify.ts';
import { inches, type Length, millimetres, roundToStep, typedLength, type Units } from '#shared/length.ts';
import { typedMass } from '#shared/mass.ts';
import { massUnit } from '#shared/schemas/post.ts';

type PostQuery = Readonly<Record<string, string>>;

/** Thickness and mass rounded up to what a ruler and a scale show. */
export const postFields = (posted: Posted, units: Units): PostQuery => ({
  width: typedLength(posted.size.width, units),
  height: typedLength(posted.size.height, units),
  thick: typedLength(upTo(posted.thickness, units), units),
  mass: typedMass(posted.mass, massUnit(units)),
  address: posted.address,
  front: posted.front,
  ...Object.fromEntries(posted.troubles.map((trouble) => [trouble, 'on'])),
  ...(posted.bare && { bare: 'on' }),
});

export const askPost = (fields: PostQuery): string => `/post?${new URLSearchParams(fields)}`;

const upTo = (thickness: Length, units: Units): Length =>
  roundToStep(thickness, units.unit === 'in' ? inches(1 / 64) : millimetres(0.1), 'up');
