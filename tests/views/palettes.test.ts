/** The two palettes against the contrast that WCAG 2.2 asks for (1.4.3: 4.5 for words, 1.4.11: 3 for edges), by its own formula. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ACCENT, FAINT_INK, GLUE_TINT, INK, LIT_FILL, QUIET_LABEL, SHEET } from '#views/diagrams/ink.ts';

const tokens = readFileSync('views/assets/tokens.css', 'utf8');
const [day, rest] = tokens.split('@media screen and (prefers-color-scheme: dark)') as [string, string];
const evening = rest.split('@media (forced-colors')[0]!;

const palette = (css: string): Map<string, string> =>
  new Map([...css.matchAll(/--([\w-]+): (#[\da-f]{6});/g)].map(([, name, colour]) => [name!, colour!]));

const luminance = (colour: string): number => {
  const [red, green, blue] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)) as [
    number,
    number,
    number,
  ];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};

const contrast = (one: string, other: string): number => {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

const WORDS: Readonly<Record<string, string>> = {
  ink: 'paper sheet wash good-wash field wrong',
  quiet: 'paper sheet wash',
  'accent-deep': 'paper sheet wash good-wash',
  'on-accent': 'accent accent-deep good',
  'd-ink': 'paper sheet d-sheet d-inside d-glue d-lit',
  'd-quiet': 'd-sheet',
  'd-accent': 'd-sheet d-inside d-lit',
};
const EDGES: Readonly<Record<string, string>> = {
  edge: 'paper sheet field',
  accent: 'paper sheet field wash',
  good: 'paper sheet good-wash',
  'd-faint': 'sheet d-sheet',
};

test('the formula gives what is published: 21 for black on white, 4.54 for #767676', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
});

test.each([
  { name: 'by day', css: day },
  { name: 'in the evening', css: evening },
])('$name words and edges stand out', ({ css }) => {
  const colours = palette(css);
  const faint = [
    [WORDS, 4.5],
    [EDGES, 3],
  ].flatMap(([pairs, least]) =>
    Object.entries(pairs as typeof WORDS).flatMap(([front, backs]) =>
      backs
        .split(' ')
        .filter((back) => contrast(colours.get(front)!, colours.get(back)!) < (least as number))
        .map((back) => `${front} on ${back}`),
    ),
  );
  expect(faint).toEqual([]);
});

test('the evening changes every colour of the day', () => {
  expect([...palette(day).keys()].filter((name) => !evening.includes(`--${name}:`))).toEqual([]);
});

test('by day a drawing on a page has the inks that it carries', () => {
  const colours = palette(day);
  const inks = ['ink', 'faint', 'quiet', 'accent', 'sheet', 'glue', 'lit'].map((name) =>
    colours.get(`d-${name}`),
  );
  expect(inks).toEqual([INK, FAINT_INK, QUIET_LABEL.fill, ACCENT, SHEET, GLUE_TINT, LIT_FILL]);
});
