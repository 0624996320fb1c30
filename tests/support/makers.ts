/** Simulated makers: a tool's noise, a taste that may change, words and figures that slip. Seeded; nothing here learns. */
import { DEFAULT_LIMITS } from '#core/envelope/fit.ts';
import type { FitLimits } from '#core/envelope/recipe.ts';
import { type FeltFit, fitAt } from '#core/project/fit-limits.ts';
import { inches, roundLength } from '#shared/length.ts';
import { FITS, type Fit } from '#shared/outcome.ts';
import type { Size } from '#shared/size.ts';

export interface Maker {
  readonly name: string;
  /** Where her fits really begin, at her n-th envelope. */
  readonly taste: (nth: number) => FitLimits;
  /** How far hand work and feeling are off from one envelope to the next: a standard deviation, in inches. */
  readonly noise: number;
  /** The share of words typed two grades off, and of clearances ten times off. */
  readonly slips?: number;
  readonly tenfold?: number;
}

export const limitsAt = (snug: number, easy: number, loose: number): FitLimits => ({
  snug: roundLength(inches(1) * snug, 'nearest'),
  easy: roundLength(inches(1) * easy, 'nearest'),
  loose: roundLength(inches(1) * loose, 'nearest'),
});

const ROOMY = limitsAt(0.125, 0.1875, 0.45);

export const MAKERS: readonly Maker[] = [
  { name: 'feels by the defaults', taste: () => DEFAULT_LIMITS, noise: 0.015 },
  {
    name: 'by the defaults, and slips',
    taste: () => DEFAULT_LIMITS,
    noise: 0.015,
    slips: 0.1,
    tenfold: 0.05,
  },
  { name: 'likes room', taste: () => ROOMY, noise: 0.015 },
  { name: 'likes it close', taste: () => limitsAt(0.03, 0.05, 0.25), noise: 0.015 },
  { name: 'likes room, with a loud hand', taste: () => ROOMY, noise: 0.04 },
  { name: 'likes room, and slips', taste: () => ROOMY, noise: 0.015, slips: 0.1, tenfold: 0.05 },
  {
    name: 'changes her mind at the 40th',
    taste: (nth) => (nth < 40 ? ROOMY : limitsAt(0.04, 0.07, 0.25)),
    noise: 0.015,
  },
  {
    name: 'comes back to the defaults at the 40th',
    taste: (nth) => (nth < 40 ? ROOMY : DEFAULT_LIMITS),
    noise: 0.015,
  },
];

/** Park and Miller's generator, from 0 to 1. */
export function chance(seed: number): () => number {
  let state = (seed * 7919 + 13) % 2_147_483_647;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Box and Muller's transform. */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());

/** An envelope as it comes: mostly aimed at ¼ less bulk, sometimes snug, sometimes roomy. */
function anyClearance(random: () => number): Size {
  const kind = random();
  const aim = kind < 0.25 ? 0.076 : kind < 0.85 ? 0.21 : 0.45;
  const side = (spread: number) => roundLength(inches(1) * (aim + spread * normal(random)), 'nearest');
  return { width: side(0.03), height: side(0.06) };
}

/** How the card really sits for her. */
export function feels(maker: Maker, nth: number, { width, height }: Size, random: () => number): Fit {
  const off = () => inches(1) * maker.noise * normal(random);
  const [one, other] = [width + off(), height + off()];
  const sides = { width: roundLength(one, 'nearest'), height: roundLength(other, 'nearest') };
  return fitAt(sides, maker.taste(nth));
}

/** What she writes down of it. */
export function writes(maker: Maker, clearance: Size, felt: Fit, random: () => number): FeltFit {
  const grade = FITS.indexOf(felt);
  const slips = random() < (maker.slips ?? 0);
  const tenfold = random() < (maker.tenfold ?? 0) ? (random() < 0.5 ? 10 : 0.1) : 1;
  return {
    felt: slips ? FITS[grade >= 2 ? grade - 2 : grade + 2]! : felt,
    clearance: {
      width: roundLength(clearance.width * tenfold, 'nearest'),
      height: roundLength(clearance.height * tenfold, 'nearest'),
    },
  };
}

/** Her first outcomes, in order. */
export function journalOf(maker: Maker, count: number, seed: number): FeltFit[] {
  const random = chance(seed);
  return Array.from({ length: count }, (_, nth) => {
    const clearance = anyClearance(random);
    return writes(maker, clearance, feels(maker, nth, clearance, random), random);
  });
}

/** Of 100 more envelopes, how many these limits grade as she feels them. */
export function gradedRight(limits: FitLimits, maker: Maker, nth: number, seed: number): number {
  const random = chance(seed + 999);
  const tries = 400;
  const right = Array.from({ length: tries }, () => anyClearance(random)).filter(
    (clearance) => feels(maker, nth, clearance, random) === fitAt(clearance, limits),
  );
  return (100 * right.length) / tries;
}
