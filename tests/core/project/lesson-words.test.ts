/** Which step and which part a lesson’s words tell of, tried on sentences as a maker writes them. */
import { expect, test } from 'vitest';
import { guessPart, guessStep } from '#core/project/lesson-words.ts';

test.each([
  ['Wet glue made the vellum ripple along the whole seam.', 'glue'],
  ['Vellum takes dry tape only.', 'glue'],
  ['Scored twice, lightly; it had cracked.', 'score'],
  ['Bend the sheet both ways before scoring.', 'score'],
  ['Second NOTCH on the wrong edge.', 'notch'],
  ['Tick the side that stays before laying the blade on.', 'cut'],
  ['Cut a sixteenth short.', 'cut'],
  ['The flaps overlap unevenly when folded.', 'fold'],
  ['This border never reaches the front.', 'paper'],
  ['Too tight across, the card bows.', 'fit'],
  ['The cat sat on it.', null],
  ['', null],
  ['Unglued', null],
])('“%s” belongs to %s', (words, step) => {
  expect(guessStep(words)).toBe(step);
});

test.each([
  ['The liner’s glue showed through.', 'liner'],
  ['Slid the band on too soon.', 'wrap'],
  ['The lid of the box sits loose.', 'box'],
  ['Folded on the wrong side.', 'envelope'],
])('“%s” is about the %s', (words, part) => {
  expect(guessPart(words)).toBe(part);
});
