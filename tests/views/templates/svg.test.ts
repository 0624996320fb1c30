/** Checks the SVG that cutting machines open: real units, one layer each for cut, score and labels, nothing else. */
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { envelopeTemplates, partTemplate } from '#core/drawing/template.ts';
import { FOLDS } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope, tryMeasures } from '#core/envelope/recipes.ts';
import { notchedPair } from '#core/sets/notches.ts';
import { inches, toInches, type Units } from '#shared/length.ts';
import { thin, tool } from '#tests/core/envelope/cast.ts';
import { rect, sound } from '#tests/support/checked.ts';
import { expectPicture } from '#tests/support/snapshot.ts';
import { templateSvg } from '#views/templates/svg.tsx';

const INCHES: Units = { unit: 'in', step: 16 };
const CARD = thin(5.875, 3);

const foundBy = (fold: string): Recipe =>
  solveEnvelope({ card: CARD, notcher: tool(1 / 8) }).find((recipe) => recipe.fold === fold)!;

const layersOf = (svg: string): Record<string, string> =>
  Object.fromEntries(
    [...svg.matchAll(/<g [^>]*id="([^"]+)"[^>]*>(.*?)<\/g>/gs)].map(([, id, body]) => [id, body]),
  );

const numbersIn = (path: string): number[] => path.match(/-?[\d.]+/g)!.map(Number);

const pathsIn = (layer: string | undefined): number[][] =>
  [...layer!.matchAll(/<path d="([^"]+)"/g)].map((found) => numbersIn(found[1]!));

describe.each(Object.keys(FOLDS))('the %s fold', (fold) => {
  const recipe = foundBy(fold);
  const templates = envelopeTemplates(recipe, INCHES);
  const svg = templateSvg(templates);

  it('is drawn as it was', () => {
    expectPicture(`template-${fold}`, svg);
  });

  it('has its layers, and nothing that a machine can’t read', () => {
    expect(Object.keys(layersOf(svg))).toEqual(['cut', 'score', 'labels']);
    expect(svg).not.toMatch(/<pattern|<style|style=|url\(|<script|<image|NaN|undefined/);
    expect(layersOf(svg).cut).not.toContain('transform');
  });

  it('has one cut for each piece and every score, inside a page in millimetres', () => {
    const { cut, score } = layersOf(svg);
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 \1 \2"/
      .exec(svg)!
      .map(Number);
    expect(pathsIn(cut)).toHaveLength(FOLDS[recipe.fold].blanks(recipe).length);
    expect(pathsIn(score)).toHaveLength(templates.flatMap((one) => one.scores).length);
    const corners = pathsIn(cut).flat();
    const [xs, ys] = [
      corners.filter((_, index) => index % 2 === 0),
      corners.filter((_, index) => index % 2 === 1),
    ];
    expect([Math.min(...xs), Math.min(...ys)]).toEqual([0, 0]);
    expect([Math.max(...xs), Math.max(...ys)]).toEqual([width, height]);
  });

  it('is as large to another renderer, which knows 72 dots to the inch', async () => {
    const { width, height } = await sharp(Buffer.from(svg)).metadata();
    const across = templates.reduce((sum, one) => sum + toInches(one.width), 0);
    const gaps = ((templates.length - 1) * 10) / 25.4;
    const down = Math.max(...templates.map((one) => toInches(one.height)));
    expect(Math.abs(width - 72 * (across + gaps))).toBeLessThan(1);
    expect(Math.abs(height - 72 * down)).toBeLessThan(1);
  });
});

it('a square of 7½ in with its start at 2¾ is 190.5 mm wide and notched about 69.85 mm', () => {
  const measures = { card: CARD, notcher: tool(1 / 8), square: inches(7.5), start: inches(2.75) };
  const svg = templateSvg(envelopeTemplates(tryMeasures(measures), INCHES));
  expect(svg).toContain('width="190.5mm" height="190.5mm" viewBox="0 0 190.5 190.5"');
  expect(layersOf(svg).cut).toContain('L69.85 11.113L');
});

it('a notched part keeps its notches, and what a maker reads is escaped', () => {
  const wish = { edges: 'top and bottom', at: inches(1.125), ribbon: inches(0.25), copies: 1 } as const;
  const { base } = sound(notchedPair({ ...wish, panel: rect(5.25, 2.25), base: rect(5.5, 2.5) }));
  const svg = templateSvg([partTemplate({ ...base, name: 'Base <& more>' }, INCHES)]);
  expect(pathsIn(layersOf(svg).cut)[0]).toHaveLength(24);
  expect(svg).toContain('Base &lt;&amp; more&gt;');
});
