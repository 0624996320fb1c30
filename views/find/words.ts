/** What is found in words, and the address of its page. Knows no markup. */
import type { Find, FoundKind } from '#core/finding/rank.ts';
import type { Asked, AskedMeasure } from '#core/finding/read-query.ts';
import type { FindKind } from '#core/finding/vocabulary.ts';
import { millimetres, printExact, printExactSize, type Units } from '#shared/length.ts';
import { howMany, listed } from '../common/words.ts';
import type { FindView } from './view.ts';

export const KIND_NAMES: Record<FindKind, readonly [one: string, many: string]> = {
  project: ['project', 'projects'],
  offcut: ['offcut', 'offcuts'],
  design: ['design', 'designs'],
  pad: ['pad', 'pads'],
  lesson: ['lesson', 'lessons'],
  outcome: ['outcome', 'outcomes'],
  part: ['part', 'parts'],
  series: ['series', 'series'],
  place: ['place', 'places'],
  card: ['card', 'cards'],
  'ready-made': ['ready-made envelope', 'ready-made envelopes'],
};

/** The page on which it stands. */
export function addressOf({ kind, belongs, number, title }: Find): string {
  switch (kind) {
    case 'outcome':
      return `/projects/${belongs}/outcomes/${number}`;
    case 'project':
    case 'lesson':
      return `/projects/${belongs}`;
    case 'part':
      return `/plans/${belongs}`;
    case 'series':
      return `/series/${belongs}`;
    case 'place':
      return `/stash?${new URLSearchParams({ place: title })}#offcuts`;
    case 'card':
      return `/tools/cards/${belongs}`;
    default:
      return `/${kind}${kind === 'ready-made' ? '' : 's'}/${belongs}`;
  }
}

/** Whether anything but words and measures is asked for. */
export const isNarrowed = ({ q, more, ...choices }: FindView['query']): boolean =>
  Object.values(choices).some((value) => value !== undefined && value !== '');

/** This question with some of it changed; what is empty is left out. */
export function askAgain(query: FindView['query'], changes: Partial<FindView['query']> = {}): string {
  const asked = Object.entries({ ...query, more: undefined, ...changes }).flatMap(([name, value]) =>
    value === undefined || value === '' ? [] : [[name, `${value}`] as [string, string]],
  );
  return `/find?${new URLSearchParams(asked)}`;
}

/** `2 projects, 1 lesson and more than 24 offcuts.` */
export const sayFound = (groups: readonly FoundKind[]): string =>
  `Found: ${listed(
    groups.map(
      ({ kind, finds, more }) => `${more ? 'more than ' : ''}${howMany(finds.length, ...KIND_NAMES[kind])}`,
    ),
  )}.`;

/** How a measure was read, and how near is near; undefined where none was asked for. */
export function sayMeasures({ readings }: Asked, units: Units): string | undefined {
  const measures = readings.flatMap((one) => one.measures);
  if (measures.length === 0) return undefined;
  const within = printExact(measures[0]!.within, stepUnits(measures[0]!));
  return `Lengths within ${within} of ${listed(measures.map((one) => sayMeasure(one, units)))}, nearest first.`;
}

export const sayMeasure = (
  { length, other }: Pick<AskedMeasure, 'length' | 'other'>,
  units: Units,
): string =>
  other === null ? printExact(length, units) : printExactSize({ width: length, height: other }, units);

/** The lengths of something found that answer what was asked, as `start 5⅜″`. */
export function nearOnes({ asked, measures, units }: FindView, id: number): string[] {
  const near = asked.readings.flatMap((reading) =>
    reading.measures.flatMap((one) => (measures.get(id) ?? []).filter((measure) => isNear(one, measure))),
  );
  return [...new Set(near.map((one) => `${one.field} ${sayMeasure(one, units)}`))].slice(0, 3);
}

const isNear = (asked: AskedMeasure, { length, other }: { length: number; other: number | null }): boolean =>
  Math.abs(length - asked.length) <= asked.within &&
  (asked.other === null || (other !== null && Math.abs(other - asked.other) <= asked.within));

/** The index joins a project's papers by bare commas, and an offcut's place and pad by a space. */
export function sayAbout({ kind, about }: Find, place = ''): string {
  if (kind === 'project') return about.replace(/,(?=\S)/g, ', ');
  return place !== '' && about.startsWith(`${place} `) ? `${place}, ${about.slice(place.length + 1)}` : about;
}

/** A step is said in the unit that it is a step of. */
const stepUnits = ({ within }: AskedMeasure): Units =>
  within === millimetres(1) ? { unit: 'mm' } : { unit: 'in', step: 32 };
