/**
 * Which size class a closed envelope falls into at each post, why, and what would change it. Knows the rules only as
 * data and no prices; the post office has the last word.
 */
import { type Length, length } from '#shared/length.ts';
import { type Mass, mass } from '#shared/mass.ts';
import type { AddressRuns, FRONTS } from '#shared/schemas/post.ts';
import type { Size } from '#shared/size.ts';
import { type Miss, misses } from './misses.ts';
import { AS_OF, POST_IDS, POSTS, type Post, type PostId, type SizeClass, type Trouble } from './rules.ts';
import { sayLength, sayMass } from './say.ts';

/** An envelope closed and ready to go, or a card that travels bare. */
export interface Posted {
  /** Its outside, either way round. */
  readonly size: Size;
  /** At its thickest, with everything in it. */
  readonly thickness: Length;
  /** With everything in it, stamps left out. */
  readonly mass: Mass;
  /** Whether the address is written along the longer side or up it. */
  readonly address: AddressRuns;
  readonly front: Front;
  readonly troubles: readonly Trouble[];
  readonly bare?: boolean;
}

export type Front = (typeof FRONTS)[number];

export interface Verdict {
  readonly post: PostId;
  readonly postName: string;
  readonly sizeClass: string;
  /** It goes as a letter of some class; otherwise it's too small, or a parcel. */
  readonly isLetter: boolean;
  readonly why: readonly string[];
  /** What would bring it into a smaller class, the smallest class first. */
  readonly changes: readonly string[];
  /** How far it may still grow: `over 5 mm thick: Large Letter`. */
  readonly until: readonly string[];
  readonly notes: readonly string[];
  readonly source: string;
  readonly asOf: string;
  readonly check: string;
}

/** The same envelope at every post. */
export const classifyAll = (posted: Posted): Verdict[] => POST_IDS.map((id) => classify(posted, id));

/**
 * The first class of the post whose every limit it keeps; limits themselves are still inside. Throws on an envelope
 * without size, thickness or mass.
 */
export function classify(posted: Posted, id: PostId): Verdict {
  checkPosted(posted);
  const post = POSTS[id];
  const classes = classesFor(posted, post);
  const place = placeOf(posted, post);
  const found = classes[place];
  return {
    post: id,
    postName: post.name,
    sizeClass: found?.name ?? otherwise(posted, post),
    isLetter: found !== undefined,
    why: found && place === 0 ? [within(found, post)] : reasons(posted, post, place),
    changes: classes.slice(0, place).flatMap((wanted) => changeTo(posted, post, wanted)),
    until: found ? limitsLeft(posted, post, found) : [],
    notes:
      posted.front === 'light'
        ? []
        : [`A ${posted.front} front hides the address from sorting machines. ${LABEL}`],
    source: (found ?? classes.at(-1)!).source,
    asOf: AS_OF,
    check: 'Check with the post office before you post.',
  };
}

const LABEL = 'Write it on a light label (USPS Publication 25, 11-2).';

function checkPosted({ size, thickness, mass }: Posted): void {
  const bad = [size.width, size.height, thickness, mass].find((value) => !(value > 0));
  if (bad !== undefined) throw new Error(`invalid envelope to post: ${bad}`);
}

const classesFor = (posted: Posted, post: Post): SizeClass[] =>
  post.classes.filter((one) => !one.bare || posted.bare === true);

/** How far down the post's classes it comes; their count when none takes it. */
function placeOf(posted: Posted, post: Post): number {
  const classes = classesFor(posted, post);
  const place = classes.findIndex((one) => misses(posted, one, post).length === 0);
  return place < 0 ? classes.length : place;
}

const classOf = (posted: Posted, post: Post): string =>
  classesFor(posted, post)[placeOf(posted, post)]?.name ?? otherwise(posted, post);

/** Too small when it is too small for every class, and else too large. */
const otherwise = (posted: Posted, post: Post): string =>
  classesFor(posted, post).every((one) => misses(posted, one, post).some((miss) => miss.tooSmall))
    ? post.tooSmall
    : post.tooLarge;

/** What kept it out of the class before the one it got, or of the loosest one when it is too small for all. */
function reasons(posted: Posted, post: Post, place: number): string[] {
  const classes = classesFor(posted, post);
  const small = place === classes.length && otherwise(posted, post) === post.tooSmall;
  const missed = small
    ? misses(posted, classes.findLast((one) => !one.passes)!, post).filter((miss) => miss.tooSmall)
    : misses(posted, classes[place - 1]!, post);
  return missed.map((miss) => miss.why);
}

function within({ most }: SizeClass, post: Post): string {
  const say = (one: Length): string => sayLength(one, post.unit);
  const limits = [
    `${say(most.length)} by ${say(most.height)}`,
    most.thick && `${say(most.thick)} thick`,
    most.mass && sayMass(most.mass, post.unit),
  ];
  return `Within all its limits: ${limits.filter(Boolean).join(', ')}.`;
}

/** One sentence on how to get into the wanted class, or none when nothing the maker can do gets it there. */
function changeTo(posted: Posted, post: Post, wanted: SizeClass): string[] {
  const other: AddressRuns = posted.address === 'along' ? 'up' : 'along';
  if (misses({ ...posted, address: other }, wanted, post).length === 0) {
    return [
      `${wanted.name}: turn the address to run ${other === 'along' ? 'along the longer' : 'along the shorter'} side.`,
    ];
  }
  const fixes = misses(posted, wanted, post).map((miss: Miss) => miss.fix);
  return fixes.every((fix) => fix !== undefined)
    ? [`${wanted.name}: ${[...new Set(fixes)].join('; ')}.`]
    : [];
}

function limitsLeft(posted: Posted, post: Post, { most }: SizeClass): string[] {
  const thicker = most.thick && { ...posted, thickness: length(most.thick + 1) };
  const heavier = most.mass && { ...posted, mass: mass(most.mass + 1) };
  return [
    ...(thicker ? [`over ${sayLength(most.thick!, post.unit)} thick: ${classOf(thicker, post)}`] : []),
    ...(heavier ? [`over ${sayMass(most.mass!, post.unit)}: ${classOf(heavier, post)}`] : []),
  ];
}
