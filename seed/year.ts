/** The demo's year, evening by evening: what was made for whom, what went wrong, what was learned. Data only. */
import type { Card } from '#core/envelope/recipe.ts';
import type { WantedFit } from '#shared/outcome.ts';
import { card } from './telling.ts';

export interface Evening {
  readonly title: string;
  readonly daysAgo: number;
  readonly card: Card;
  readonly fit?: WantedFit;
  /** Designs to take, in this order; what the first does not give, the next does. */
  readonly papers: readonly string[];
  readonly copies: number;
  /** Which way the first paper's print lies, by the look's name. */
  readonly look?: string;
  readonly series?: string;
  readonly notes?: string;
  /** Measures from a chart instead of those worked out. */
  readonly chart?: { readonly square: number; readonly start: number };
  /** The trial said: shift the start by this many inches for the rest. */
  readonly shiftAfterTrial?: number;
  /** This many of the blanks are spoiled and replaced from the last paper. */
  readonly spoiled?: { readonly wrong: string; readonly savedBy: string };
  /** What stands beside the first envelope that came out. */
  readonly wrong?: string;
  readonly savedBy?: string;
  /** How many pockets were measured. */
  readonly measured?: number;
  readonly lesson?: string;
  /** The last evening is still on the table: this many are folded so far. */
  readonly folded?: number;
}

export const SERIES = [
  { name: 'Lamp Room evenings', note: 'invitations to the reading nights, one paper a season' },
  { name: 'Allotment swap', note: 'seed packets and their thank-yous' },
];

export const CARDS: readonly { readonly name: string; readonly card: Card }[] = [
  { name: 'Long note', card: card(6.25, 3.25) },
  { name: 'Half letter', card: card(5.5, 4.25) },
  { name: 'Seed card', card: card(2.5, 3.5) },
  { name: 'Invitation', card: card(5, 7, 1 / 16) },
  { name: 'Square', card: card(5, 5, 3 / 64) },
  { name: 'Gift tag', card: card(3, 2) },
];

export const YEAR: readonly Evening[] = [
  {
    title: 'Thank-yous for the boat shed',
    daysAgo: 352,
    card: card(5.5, 4.25),
    papers: ['Ditch water', 'Fog'],
    copies: 2,
    chart: { square: 8.125, start: 3.75 },
    wrong: 'The card caught at both ends: the chart’s start was for another tool.',
    savedBy: 'Shaved a sliver off the card’s fold side.',
    measured: 1,
    lesson:
      'Try a chart’s measures on paper here before cutting any. On my notcher 3⅝ is right for half letter.',
  },
  {
    title: 'Half letter again, with the right start',
    daysAgo: 338,
    card: card(5.5, 4.25),
    papers: ['Fog', 'Sloe'],
    copies: 3,
    measured: 2,
    lesson: 'One pocket measured both ways, and the notcher’s inset stopped being a guess.',
  },
  {
    title: 'Seed packets, first sowing',
    daysAgo: 301,
    card: card(2.5, 3.5),
    papers: ['Signal flags', 'Haycock'],
    copies: 3,
    series: 'Allotment swap',
    measured: 1,
    lesson: 'Four from one large sheet, but the 6-inch offcuts did it without opening any.',
  },
  {
    title: 'Tide-table notes for the harbour office',
    daysAgo: 274,
    card: card(6.25, 3.25),
    papers: ['Lamp room', 'Wake'],
    copies: 4,
    wrong: 'Both long flaps ran past the fold by half an inch.',
    savedBy: 'Trimmed bottom and top alike, told from the score, so it looks meant.',
    measured: 2,
    lesson: 'On a long card trim both long flaps to the same depth before folding, not after.',
  },
  {
    title: 'Invitations: spring reading',
    daysAgo: 243,
    card: card(5, 7, 1 / 16),
    papers: ['Bramble'],
    copies: 3,
    series: 'Lamp Room evenings',
    notes: 'Two layers on the front, so the bulk is twice the usual.',
    measured: 1,
    lesson: 'Measure the finished card’s thickness with the belly band on.',
  },
  {
    title: 'Ferdinand is nine',
    daysAgo: 216,
    card: card(5, 5, 3 / 64),
    papers: ['Signal flags', 'Kraft, smooth'],
    copies: 1,
    wrong: 'Checks run at 45°, which made the lettering look crooked.',
    savedBy: 'A plain label on the front gave the eye a level line.',
    lesson: 'Checks and stripes turn diamond on this fold. Use them when that is the joke.',
  },
  {
    title: 'Moving cards for the upstairs neighbours',
    daysAgo: 182,
    card: card(5.5, 4.25),
    papers: ['Clover', 'Fog'],
    copies: 3,
    spoiled: {
      wrong: 'Second notch on the wrong edge: turned the sheet the other way after the kettle.',
      savedBy: 'The blank gave a liner and two gift tags.',
    },
    measured: 1,
    lesson: 'Finish all four notches before getting up.',
  },
  {
    title: 'Invitations: midsummer reading',
    daysAgo: 151,
    card: card(5, 7, 1 / 16),
    papers: ['Ditch water', 'Sloe'],
    copies: 3,
    series: 'Lamp Room evenings',
    measured: 1,
    lesson: 'Leaning to the top left the waves run like a real wake.',
  },
  {
    title: 'Seed packets, late beans',
    daysAgo: 118,
    card: card(2.5, 3.5),
    papers: ['Haycock', 'Quilt'],
    copies: 3,
    series: 'Allotment swap',
    measured: 1,
    shiftAfterTrial: -1 / 8,
    wrong: 'Trial was loose one way: beans rattled out of the corner.',
    savedBy: 'Start one mark shorter for the rest.',
    lesson: 'Beans want snug, paper wants easy.',
  },
  {
    title: 'Harvest supper notes',
    daysAgo: 76,
    card: card(6.25, 3.25),
    papers: ['Harbour hem', 'Hedgerow hem'],
    look: 'print-top-right',
    copies: 2,
    notes: 'The hem should show in one front corner.',
    measured: 1,
    lesson: 'Border towards me on the tool brings it to the front’s corner; the rest hides on the back.',
  },
  {
    title: 'Invitations: lantern night',
    daysAgo: 40,
    card: card(5, 7, 1 / 16),
    papers: ['Lamp room'],
    copies: 2,
    series: 'Lamp Room evenings',
    measured: 1,
    wrong: 'Dark front: the address could not be read.',
    savedBy: 'A strip of Chalk from the white box, glued on before the flaps.',
    lesson: 'Dark papers want a light label. Cut it from the same evening’s waste.',
  },
  {
    title: 'Notes for the choir’s last rehearsal',
    daysAgo: 12,
    card: card(5.5, 4.25),
    papers: ['Post road', 'Clover'],
    look: 'print-top-right',
    copies: 2,
    measured: 1,
    lesson: 'Script reads best leaning to the top right.',
  },
  {
    title: 'Winter thank-yous',
    daysAgo: 1,
    card: card(6.25, 3.25),
    papers: ['Wake', 'Bramble', 'Deck boards'],
    copies: 4,
    notes: 'Two done, two to go. The first is the trial.',
    folded: 2,
  },
];

/** Not begun: only an idea and, for one of them, its card. */
export const IDEAS: readonly { readonly title: string; readonly card?: Card; readonly notes: string }[] = [
  { title: 'A vellum window?', notes: 'Frost over a patterned liner; does it glue without showing?' },
  {
    title: 'Tiny tags for the jam',
    card: card(3, 2),
    notes: 'Use up the Russet squares in the biscuit tin.',
  },
];
