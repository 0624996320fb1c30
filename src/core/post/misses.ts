/** Everything that keeps an envelope out of one size class, in words. Knows one class at a time and ranks none. */

import { add, type Length, length } from '#shared/length.ts';
import type { Mass } from '#shared/mass.ts';
import type { AddressRuns } from '#shared/schemas/post.ts';
import { longer, type Size, shorter } from '#shared/size.ts';
import type { Fraction, Most, Post, SizeClass, Trouble } from './rules.ts';
import { sayLength, sayMass } from './say.ts';

export interface Miss {
  readonly why: string;
  /** What the maker could do about it. */
  readonly fix?: string;
  readonly tooSmall?: true;
}

/** As much of an envelope as the rules ask about. */
export interface Measured {
  readonly size: Size;
  readonly thickness: Length;
  readonly mass: Mass;
  readonly address: AddressRuns;
  readonly troubles: readonly Trouble[];
}

/** All misses of one class; none when the envelope keeps every limit, ends included. */
export const misses = (one: Measured, rules: SizeClass, post: Post): Miss[] => [
  ...tooSmall(one, rules, post),
  ...tooLarge(one, rules.most, post),
  ...tooPlain(one, rules, post),
  ...outOfRatio(one, rules, post),
  ...tooThinForItsSize(one, rules, post),
  ...(rules.refuses ?? [])
    .filter((trouble) => one.troubles.includes(trouble))
    .map((trouble) => TROUBLES[trouble]),
];

const TROUBLES: Readonly<Record<Trouble, Miss>> = {
  lumps: { why: 'Something in it makes it uneven.', fix: 'make it even, without lumps' },
  rigid: { why: 'It doesn’t bend.', fix: 'leave out what is rigid' },
  clasp: { why: 'A clasp, string or button closes it.', fix: 'close it with glue alone' },
};

interface Side {
  readonly size: Length;
  readonly where: string;
}

const bySides = ({ size }: Measured): [Side, Side] => [
  { size: longer(size), where: 'on the longer side' },
  { size: shorter(size), where: 'on the shorter side' },
];

const byAddress = (one: Measured): [Side, Side] => [
  { size: one.address === 'along' ? longer(one.size) : shorter(one.size), where: 'along the address' },
  { size: one.address === 'along' ? shorter(one.size) : longer(one.size), where: 'across the address' },
];

const sidesFor = (one: Measured, post: Post): [Side, Side] =>
  post.measuredBy === 'address' ? byAddress(one) : bySides(one);

function tooSmall(one: Measured, { least }: SizeClass, post: Post): Miss[] {
  if (!least) return [];
  const [long, high] = sidesFor(one, post);
  return [
    ...under(long, least.length, post),
    ...under(high, least.height, post),
    ...(least.thick ? under({ size: one.thickness, where: 'thick' }, least.thick, post) : []),
  ];
}

function under({ size, where }: Side, limit: Length, post: Post): Miss[] {
  if (size >= limit - (post.tolerance ?? 0)) return [];
  const [is, least] = [size, limit].map((one) => sayLength(one, post.unit));
  return [{ why: `${is} ${where} is under ${least}.`, fix: `at least ${least} ${where}`, tooSmall: true }];
}

function tooLarge(one: Measured, most: Most, post: Post): Miss[] {
  const [long, short] = bySides(one);
  const sum: Side = {
    size: add(long.size, short.size, one.thickness),
    where: 'in length, width and thickness together',
  };
  return [
    ...over(long, most.length, post),
    ...over(short, most.height, post),
    ...(most.thick ? over({ size: one.thickness, where: 'thick' }, most.thick, post) : []),
    ...(most.sum ? over(sum, most.sum, post) : []),
    ...(most.mass ? tooHeavy(one.mass, most.mass, post) : []),
  ];
}

function over({ size, where }: Side, limit: Length, post: Post): Miss[] {
  if (size <= limit + (post.tolerance ?? 0)) return [];
  const [is, most] = [size, limit].map((one) => sayLength(one, post.unit));
  return [{ why: `${is} ${where} is over ${most}.`, fix: `at most ${most} ${where}` }];
}

function tooHeavy(is: Mass, limit: Mass, post: Post): Miss[] {
  if (is <= limit) return [];
  const [heavy, most] = [is, limit].map((one) => sayMass(one, post.unit));
  return [{ why: `${heavy} is over ${most}.`, fix: `at most ${most}` }];
}

/** A class that begins where a smaller one ends. */
const tooPlain = (one: Measured, { passes }: SizeClass, post: Post): Miss[] =>
  passes && tooLarge(one, passes, post).length === 0
    ? [{ why: 'It passes no limit of a smaller class.', tooSmall: true }]
    : [];

function outOfRatio(one: Measured, { ratio }: SizeClass, post: Post): Miss[] {
  if (!ratio) return [];
  const [long, high] = sidesFor(one, post);
  const is = (long.size / high.size).toFixed(3);
  const [least, most] = [ratio.least, ratio.most].map((one) => one && `${one[0] / one[1]}`);
  const range = most
    ? `${least} to ${most} times as long ${long.where} as across`
    : `${least} times as long as wide`;
  const wanted = { fix: most ? range : `at least ${range}` };
  if (long.size === high.size) return [{ why: `It’s square; it has to be ${range}.`, ...wanted }];
  if (below(long.size, high.size, ratio.least)) {
    return [{ why: `It’s ${is} times as long ${long.where} as across, under ${least}.`, ...wanted }];
  }
  if (!ratio.most || !below(length(ratio.most[0] * high.size), length(ratio.most[1] * long.size), [1, 1]))
    return [];
  return [{ why: `It’s ${is} times as long ${long.where} as across, over ${most}.`, ...wanted }];
}

/** Whether long/high lies under the fraction, in whole numbers. */
const below = (long: Length, high: Length, [top, bottom]: Fraction): boolean => long * bottom < high * top;

function tooThinForItsSize(one: Measured, { stiffer }: SizeClass, post: Post): Miss[] {
  if (!stiffer || one.thickness >= stiffer.thick) return [];
  const [long, high] = sidesFor(one, post);
  if (long.size <= stiffer.longer && high.size <= stiffer.higher) return [];
  const [is, least] = [one.thickness, stiffer.thick].map((thick) => sayLength(thick, post.unit));
  return [{ why: `${is} thick is under ${least}, which its size asks for.`, fix: `at least ${least} thick` }];
}
