/** The demo's shelf: invented pads with their designs, and the offcuts that had gathered before the year began. */
import type { NewDesign, NewPad } from '#core/stash/stash.ts';
import { inches } from '#shared/length.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { Print } from '#shared/print.ts';
import type { Motif } from '#shared/swatch.ts';
import { size } from './telling.ts';

export interface ShelvedPad {
  readonly pad: NewPad;
  readonly designs: readonly (NewDesign & { readonly sheets: number })[];
}

export interface FoundOffcut {
  readonly design: string;
  readonly width: number;
  readonly height: number;
  readonly count: number;
  readonly place: string;
  readonly note?: string;
  readonly border?: boolean;
}

/** What a plain paper is drawn on with. */
const PENCIL = '#2b2622';

const ANY: Print = { direction: 'any way' };
const UPRIGHT: Print = { direction: 'upright' };
const hem = (depth: number): Print => ({ direction: 'one edge', border: inches(depth) });

const design = (
  name: string,
  sheets: number,
  [motif, ground, ...inks]: [Motif, string, ...string[]],
  { print = ANY, doubleSided = false }: { print?: Print; doubleSided?: boolean } = {},
) => ({
  name,
  sheets,
  print,
  doubleSided,
  swatch: { motif, ground, inks: inks.length > 0 ? inks : [PENCIL] },
});

const pad = (
  name: string,
  kind: PaperKind,
  [width, height]: [number, number],
  rest: Pick<NewPad, 'grammage' | 'lowMark' | 'source' | 'price'> & { readonly note?: string },
): NewPad => ({
  ...{ name, kind, sheet: size(width, height), measured: {}, strip: null },
  ...{ note: '', ...rest },
});

export const SHELF: readonly ShelvedPad[] = [
  {
    pad: pad('Hedge and Ditch', 'patterned', [12, 12], {
      grammage: 170,
      lowMark: 12,
      source: 'market stall by the ferry steps',
      price: { hundredths: 1450, sheets: 48 },
    }),
    designs: [
      design('Bramble', 5, ['sprigs', '#eef0e2', '#4d6b45', '#7d3f58']),
      design('Wren', 4, ['dots', '#f3e9d6', '#7a5a36'], { print: UPRIGHT }),
      design('Ditch water', 6, ['waves', '#dce8e4', '#3d6a6d'], { doubleSided: true }),
      design('Haycock', 3, ['stripes', '#f6ecc9', '#b98a2e']),
      design('Hedgerow hem', 4, ['border', '#f4f0e4', '#5b7a4f'], { print: hem(1.75) }),
      design('Sloe', 5, ['dots', '#e4e2ee', '#3c3a63']),
    ],
  },
  {
    pad: pad('Night Ferry', 'patterned', [12, 12], {
      grammage: 160,
      lowMark: 10,
      source: 'from Ilse, who changed to knitting',
      price: { hundredths: 1175, sheets: 36 },
    }),
    designs: [
      design('Lamp room', 4, ['stars', '#22304a', '#f0d68a']),
      design('Wake', 5, ['waves', '#2d4257', '#cfdde4', '#8fb0bf'], { print: UPRIGHT }),
      design('Deck boards', 6, ['stripes', '#d9cdb8', '#7c6447'], { print: UPRIGHT, doubleSided: true }),
      design('Signal flags', 3, ['checks', '#f5f1e6', '#b5402f', '#2f4f7a']),
      design('Fog', 7, ['plain', '#c9ced0']),
      design('Harbour hem', 2, ['border', '#e8eef0', '#2d4257', '#b5402f'], { print: hem(2.25) }),
    ],
  },
  {
    pad: pad('Orchard Ledger', 'patterned', [8, 8], {
      grammage: 150,
      lowMark: 8,
      source: 'end-of-line box at the paper mill',
    }),
    designs: [
      design('Pippin', 6, ['dots', '#f6e6df', '#b7412f', '#5d7a3f']),
      design('Ladder', 4, ['stripes', '#efe7d2', '#6f7f4c'], { print: UPRIGHT }),
      design('Blossom', 5, ['sprigs', '#fbf1f1', '#c77f8b', '#6c8a5a']),
      design('Account book', 4, ['script', '#f5eedc', '#53473a'], { print: UPRIGHT }),
      design('Wasp', 3, ['checks', '#f4d98a', '#4a3a1c']),
      design('Russet', 6, ['plain', '#b98352']),
    ],
  },
  {
    pad: pad('Small Hours', 'patterned', [6, 6], {
      grammage: 140,
      lowMark: 10,
      source: 'a swap with the Tuesday table',
    }),
    designs: [
      design('Night moth', 5, ['stars', '#3b3346', '#cbb7d6']),
      design('Candle', 4, ['stripes', '#f7e7c6', '#c4743a'], { print: UPRIGHT }),
      design('Lullaby', 6, ['script', '#eee9f2', '#5d5378'], { print: UPRIGHT }),
      design('Milk tooth', 5, ['dots', '#fdfaf2', '#9db4a8']),
      design('Quilt', 3, ['checks', '#efe2d7', '#9a5b4a', '#56708a']),
    ],
  },
  {
    pad: pad('Field Letters', 'patterned', [8.5, 11], {
      grammage: 120,
      lowMark: 12,
      source: 'stationer’s clearance',
    }),
    designs: [
      design('Furrow', 8, ['stripes', '#efe5d3', '#8b6a49'], { print: UPRIGHT, doubleSided: true }),
      design('Post road', 7, ['script', '#f7f2e6', '#3f3a34'], { print: UPRIGHT }),
      design('Clover', 6, ['sprigs', '#e5efdd', '#3f7048']),
      design('Gate', 5, ['checks', '#f4efe3', '#6b7c82']),
      design('Stile hem', 4, ['border', '#f8f4ea', '#8b6a49', '#3f7048'], { print: hem(1.5) }),
    ],
  },
  {
    pad: pad('Cook’s Kraft', 'kraft', [12, 12], {
      grammage: 220,
      lowMark: 16,
      source: 'hardware shop roll, cut down',
    }),
    designs: [
      design('Kraft, smooth', 9, ['plain', '#b08d62']),
      design('Kraft, ribbed', 6, ['stripes', '#b08d62', '#9a784e'], { print: UPRIGHT }),
    ],
  },
  {
    pad: pad('Plain Good Card', 'cardstock', [8.5, 11], {
      grammage: 216,
      lowMark: 20,
      source: 'the mill’s own counter',
      price: { hundredths: 620, sheets: 50 },
      note: 'scores without cracking',
    }),
    designs: [
      design('Chalk', 24, ['plain', '#faf8f2']),
      design('Oatmeal', 18, ['plain', '#e6d9c1']),
      design('Slate', 6, ['plain', '#56606b']),
      design('Brick', 5, ['plain', '#a4513d']),
    ],
  },
  {
    pad: pad('Tracing Light', 'vellum', [8.5, 11], {
      grammage: 100,
      lowMark: 14,
      source: 'drawing office that moved out',
    }),
    designs: [
      design('Clear', 6, ['plain', '#eef1ee']),
      design('Frost', 4, ['stars', '#f1f4f5', '#b9c7cc']),
      design('Rain', 3, ['stripes', '#eef3f4', '#9fb4bb'], { print: UPRIGHT }),
    ],
  },
  {
    pad: pad('Rag and Petal', 'handmade', [8, 10], {
      grammage: null,
      lowMark: 3,
      source: 'made at the mill’s open day',
      note: 'deckle edges; no two sheets alike',
    }),
    designs: [
      design('Petal', 4, ['sprigs', '#f5efe6', '#c08a93']),
      design('Straw', 3, ['plain', '#eadfbf']),
      design('Indigo rag', 2, ['plain', '#3a4a6b']),
    ],
  },
];

const found = (
  design: string,
  [width, height]: readonly [number, number],
  place: string,
  rest: Partial<Pick<FoundOffcut, 'count' | 'note' | 'border'>> = {},
): FoundOffcut => ({ design, width, height, place, count: 1, ...rest });

/** Of the sheets above, those that only came in the course of the year; the first are the oldest. */
export const BOUGHT_LATER: readonly {
  readonly daysAgo: number;
  readonly note: string;
  readonly sheets: Readonly<Record<string, number>>;
}[] = [
  { daysAgo: 292, note: 'the mill’s end-of-line box again', sheets: { Pippin: 4, Blossom: 3, Russet: 4 } },
  { daysAgo: 225, note: 'the rest of the roll', sheets: { 'Kraft, smooth': 6, 'Kraft, ribbed': 4 } },
  { daysAgo: 205, note: 'clearance, second week', sheets: { Furrow: 5, Gate: 3 } },
  { daysAgo: 170, note: 'two packs while they had them', sheets: { Chalk: 12, Oatmeal: 10 } },
  { daysAgo: 145, note: 'the mill’s open day', sheets: { Petal: 2, Straw: 1 } },
  {
    daysAgo: 110,
    note: 'swapped for two reels of tape',
    sheets: { 'Night moth': 3, Lullaby: 4, 'Milk tooth': 3 },
  },
  { daysAgo: 60, note: 'one more roll from the office', sheets: { Clear: 4, Rain: 2 } },
  { daysAgo: 21, note: 'the last that Ilse found', sheets: { Wake: 2, 'Deck boards': 3 } },
];

/** Envelopes bought, and how many were put to use since. */
export const READY_MADE = [
  {
    name: 'A2, white',
    width: 4.375,
    height: 5.75,
    bought: 25,
    used: 7,
    note: 'when there is no evening for folding',
  },
  { name: 'A7, kraft', width: 5.25, height: 7.25, bought: 12, used: 0, note: '' },
] as const;

/** Height runs along the print. */
export const OFFCUTS: readonly FoundOffcut[] = [
  found('Bramble', [8.25, 9], 'green folder'),
  found('Bramble', [3, 12], 'strip jar', { count: 2 }),
  found('Bramble', [4, 5.5], 'green folder'),
  found('Wren', [5.5, 8.5], 'green folder'),
  found('Wren', [2.25, 12], 'strip jar'),
  found('Ditch water', [9, 9.5], 'green folder', { note: 'one corner dog-eared' }),
  found('Ditch water', [4, 12], 'strip jar', { count: 2 }),
  found('Haycock', [6, 6], 'green folder', { count: 2 }),
  found('Haycock', [1.5, 12], 'strip jar', { count: 3 }),
  found('Hedgerow hem', [12, 4], 'hem drawer', { border: true }),
  found('Hedgerow hem', [8.5, 8.5], 'hem drawer', { border: true }),
  found('Hedgerow hem', [12, 3], 'hem drawer'),
  found('Sloe', [7, 7.5], 'green folder'),
  found('Sloe', [3.5, 5], 'green folder', { count: 2 }),
  found('Lamp room', [8.5, 12], 'blue folder'),
  found('Lamp room', [2, 12], 'strip jar'),
  found('Wake', [6, 9], 'blue folder'),
  found('Wake', [12, 3.5], 'strip jar'),
  found('Deck boards', [5.25, 11], 'blue folder'),
  found('Deck boards', [1, 12], 'strip jar', { count: 4 }),
  found('Signal flags', [5.5, 5.5], 'blue folder', { count: 2 }),
  found('Signal flags', [8, 8.25], 'blue folder'),
  found('Fog', [9, 12], 'blue folder'),
  found('Fog', [4.5, 6.5], 'blue folder', { count: 2 }),
  found('Harbour hem', [9, 9], 'hem drawer', { border: true }),
  found('Harbour hem', [12, 2.25], 'hem drawer', { border: true }),
  found('Pippin', [8, 5.25], 'biscuit tin'),
  found('Pippin', [2.5, 3.5], 'biscuit tin', { count: 3 }),
  found('Ladder', [5.5, 5.5], 'biscuit tin'),
  found('Blossom', [8, 6], 'biscuit tin'),
  found('Blossom', [1.75, 8], 'strip jar', { count: 2 }),
  found('Account book', [6.5, 8], 'biscuit tin'),
  found('Wasp', [4, 4], 'biscuit tin', { count: 2 }),
  found('Russet', [5.25, 8], 'biscuit tin'),
  found('Russet', [3, 3], 'biscuit tin', { count: 4 }),
  found('Night moth', [5.5, 6], 'biscuit tin'),
  found('Candle', [3, 6], 'strip jar', { count: 2 }),
  found('Lullaby', [4.25, 6], 'biscuit tin'),
  found('Milk tooth', [6, 4], 'biscuit tin'),
  found('Quilt', [5.25, 5.25], 'biscuit tin'),
  found('Furrow', [8.5, 5.5], 'letter rack'),
  found('Furrow', [4.25, 11], 'letter rack', { count: 2 }),
  found('Post road', [7.5, 11], 'letter rack'),
  found('Post road', [2, 11], 'strip jar'),
  found('Clover', [8.5, 8.25], 'letter rack'),
  found('Gate', [5.5, 8.5], 'letter rack'),
  found('Stile hem', [8.5, 3], 'hem drawer', { border: true }),
  found('Stile hem', [8.5, 6.5], 'hem drawer'),
  found('Kraft, smooth', [9, 12], 'behind the door'),
  found('Kraft, smooth', [3, 12], 'strip jar', { count: 2 }),
  found('Kraft, ribbed', [7.25, 7.25], 'behind the door'),
  found('Chalk', [4.25, 8.5], 'white box', { count: 6, note: 'good for inside panels' }),
  found('Chalk', [2.5, 11], 'white box', { count: 3 }),
  found('Oatmeal', [5.5, 8.5], 'white box', { count: 4 }),
  found('Oatmeal', [3, 8.5], 'white box', { count: 2 }),
  found('Slate', [4, 5.25], 'white box', { count: 2 }),
  found('Brick', [1, 11], 'strip jar', { count: 5, note: 'belly bands' }),
  found('Clear', [8.5, 5.5], 'flat drawer'),
  found('Frost', [6, 8], 'flat drawer'),
  found('Rain', [4, 11], 'flat drawer'),
  found('Petal', [8, 4.5], 'flat drawer', { note: 'deckle on two sides' }),
  found('Straw', [6, 6.25], 'flat drawer'),
  found('Indigo rag', [8, 3], 'flat drawer'),
];
