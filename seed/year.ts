/** The demo's year, evening by evening: what was made for whom, what went wrong, what was learned. Data only. */
import type { Card } from '#core/envelope/recipe.ts';
import { card, cardInMillimetres } from './telling.ts';

export interface Evening {
  readonly title: string;
  readonly daysAgo: number;
  readonly card: Card;
  /** Designs to take, in this order; what the first does not give, the next does. */
  readonly papers: readonly string[];
  readonly copies: number;
  /** Which way the first paper's print lies, by the look's name. */
  readonly look?: string;
  readonly series?: string;
  readonly tags?: readonly string[];
  readonly notes?: string;
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
  /** It comes up at its step whatever the paper. */
  readonly always?: boolean;
  /** The last evening is still on the table: this many are folded so far. */
  readonly folded?: number;
}

export const SERIES = [
  { name: 'Lamp Room evenings', note: 'invitations to the reading nights, one paper a season' },
  { name: 'Reading bus', note: 'a bookplate for every child, in an envelope of its own' },
];

const DESK_NOTE = card(5.875, 3);
const CHOIR_CARD = card(5.125, 4);
const BOOKPLATE = card(3.125, 4.625);
const INVITATION = card(4.875, 6.875, 1 / 16);
const PRINTED_MENU = cardInMillimetres(140, 95);

export const CARDS: readonly { readonly name: string; readonly card: Card }[] = [
  { name: 'Desk note', card: DESK_NOTE },
  { name: 'Choir card', card: CHOIR_CARD },
  { name: 'Bookplate', card: BOOKPLATE },
  { name: 'Invitation', card: INVITATION },
  { name: 'Printed menu', card: PRINTED_MENU },
  { name: 'Jam tag', card: card(2.75, 1.875) },
];

export const YEAR: readonly Evening[] = [
  {
    title: 'Notes for the rope walk',
    daysAgo: 352,
    card: DESK_NOTE,
    papers: ['Ditch water', 'Fog'],
    copies: 2,
    wrong: 'The pocket came out a hair narrower than worked out.',
    savedBy: 'Nothing to save, the card goes in. Read the pocket with the steel ruler and wrote it down.',
    measured: 1,
    lesson: 'The usual inset is not my notcher’s. Measure the first pocket before cutting the next square.',
  },
  {
    title: 'More notes for the rope walk',
    daysAgo: 338,
    card: DESK_NOTE,
    papers: ['Fog', 'Sloe'],
    copies: 3,
    measured: 2,
    lesson: 'Two pockets read with the steel ruler agree to a thirty-second. Flatten them with a book first.',
  },
  {
    title: 'Bookplates, the bus’s first round',
    daysAgo: 301,
    card: BOOKPLATE,
    papers: ['Signal flags', 'Haycock'],
    copies: 3,
    series: 'Reading bus',
    measured: 1,
    lesson:
      'Pencil the code on an offcut before it goes into its folder: two Haycocks look alike by lamplight.',
  },
  {
    title: 'First frost',
    daysAgo: 274,
    card: card(4.625, 3.625),
    papers: ['Frost'],
    copies: 2,
    notes: 'Vellum, so that the card’s own colour shines through.',
    tags: ['vellum', 'winter'],
    wrong: 'Wet glue made the vellum ripple along the whole seam.',
    savedBy: 'Pressed it under the atlas overnight; dry tape for the second one.',
    measured: 1,
    lesson: 'Vellum takes dry tape only, and a narrow strip of it, since it shows through.',
  },
  {
    title: 'Invitations: spring reading',
    daysAgo: 243,
    card: INVITATION,
    papers: ['Bramble'],
    copies: 3,
    series: 'Lamp Room evenings',
    notes: 'A pressed leaf under tissue on the front, so the bulk is twice the usual.',
    wrong: 'The stems run with the grain, and the two scores against it cracked a little.',
    savedBy: 'Scored those twice, lightly, and creased them with the bone instead of a nail.',
    measured: 1,
    lesson: 'Bend the sheet both ways before scoring: where it fights back, score twice.',
  },
  {
    title: 'Odile passes her pilot’s exam',
    daysAgo: 216,
    card: card(4.75, 4.75, 3 / 64),
    papers: ['Ladder', 'Kraft, smooth'],
    copies: 1,
    spoiled: {
      wrong: 'Cut on the wrong side of the pencil line, a sixteenth short.',
      savedBy: 'The short square became the backs of two tags.',
    },
    lesson: 'Tick the side that stays before laying the blade on.',
  },
  {
    title: 'New address for the net loft',
    daysAgo: 182,
    card: CHOIR_CARD,
    papers: ['Clover', 'Fog'],
    copies: 3,
    spoiled: {
      wrong: 'Second notch on the wrong edge: turned the sheet the other way after the kettle.',
      savedBy: 'The blank gave a liner and two jam tags.',
    },
    measured: 1,
    lesson: 'Finish all four notches before getting up.',
  },
  {
    title: 'Invitations: midsummer reading',
    daysAgo: 151,
    card: INVITATION,
    papers: ['Ditch water', 'Sloe'],
    copies: 3,
    series: 'Lamp Room evenings',
    measured: 1,
    lesson: 'Leaning to the top left the waves run like a real wake.',
  },
  {
    title: 'Bookplates, the bus’s autumn round',
    daysAgo: 118,
    card: BOOKPLATE,
    papers: ['Haycock', 'Account book'],
    copies: 3,
    series: 'Reading bus',
    measured: 1,
    shiftAfterTrial: 1 / 8,
    wrong: 'The trial took a flat plate easily, but by morning the plates had bowed and rubbed at the flap.',
    savedBy: 'Start one mark longer for the rest: taller, and snug across.',
    lesson: 'Cards that bow want their room along the way they bow.',
  },
  {
    title: 'Menus for the slipway supper',
    tags: ['printed border'],
    daysAgo: 76,
    card: PRINTED_MENU,
    papers: ['Harbour hem', 'Hedgerow hem'],
    look: 'print-top-right',
    copies: 2,
    notes: 'The menus come printed, in millimetres. The hem should show in one front corner.',
    measured: 1,
    lesson: 'Border towards me on the tool brings it to the front’s corner; the rest hides on the back.',
  },
  {
    title: 'Invitations: lantern night',
    daysAgo: 40,
    card: INVITATION,
    papers: ['Lamp room'],
    copies: 2,
    series: 'Lamp Room evenings',
    measured: 1,
    wrong: 'Glue crept past the flap and held on to the card inside.',
    savedBy: 'Slid a strip of baking paper in before it set.',
    lesson: 'A strip of baking paper stays in the pocket until the seam is dry.',
    always: true,
  },
  {
    title: 'Thanks after the last rehearsal',
    daysAgo: 12,
    card: CHOIR_CARD,
    papers: ['Post road', 'Clover'],
    look: 'print-top-right',
    copies: 2,
    measured: 1,
    lesson: 'Script reads best leaning to the top right.',
  },
  {
    title: 'Winter thank-yous',
    daysAgo: 1,
    card: DESK_NOTE,
    papers: ['Wake', 'Bramble', 'Deck boards'],
    copies: 4,
    notes: 'Two done, two to go. The first is the trial.',
    folded: 2,
  },
];

/** On the table beside the last: vellum again, and at the gluing step what the first frost taught comes up. */
export const AGAIN_ON_VELLUM: Evening = {
  title: 'Second frost',
  daysAgo: 2,
  card: card(4.625, 3.625),
  papers: ['Frost'],
  copies: 2,
  notes: 'Vellum once more. Dry tape from the start: the page said so at the glue.',
  tags: ['vellum', 'winter'],
  folded: 1,
};

/** Not begun: only an idea and, for one of them, its card. */
export const IDEAS: readonly { readonly title: string; readonly card?: Card; readonly notes: string }[] = [
  {
    title: 'A window over the liner?',
    notes: 'Rain over a patterned liner; does dry tape hold it without showing?',
  },
  {
    title: 'Tiny tags for the jam',
    card: card(2.75, 1.875),
    notes: 'Use up the Russet squares in the biscuit tin.',
  },
];
