/** Checks what every picture promises the page: it stands alone, speaks, and brings no style, script or stray markup. */
import { describe, expect, it } from 'vitest';
import { area, type Drawing, label, rectangle } from '#core/drawing/drawing.ts';
import { UNMOVED } from '#core/geometry/transform.ts';
import { MOTIFS, type Swatch } from '#shared/swatch.ts';
import { Picture } from '#views/diagrams/picture.tsx';
import { SwatchChip } from '#views/diagrams/swatch.tsx';
import * as pictures from './pictures.tsx';

const SVGS = Object.entries(pictures).map(([name, picture]) => [name, picture()] as const);

const all = (svg: string, pattern: RegExp): string[] => [...svg.matchAll(pattern)].map((found) => found[1]!);

describe('every picture', () => {
  it.each(SVGS)('%s finds its own patterns and words by ids that are its own', (_, svg) => {
    const ids = all(svg, / id="([^"]+)"/g);
    expect(new Set(ids).size).toBe(ids.length);
    const wanted = [
      ...all(svg, /url\(#([^)]+)\)/g),
      ...all(svg, /aria-labelledby="([^"]+)"/g).flatMap((one) => one.split(' ')),
    ];
    expect(wanted.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it.each(SVGS)('%s is an image with a title, and needs no style or script', (_, svg) => {
    expect(svg).toMatch(/^<svg [^>]*role="img"/);
    expect(svg).toMatch(/<title[^>]*>[^<]+<\/title>/);
    expect(svg).not.toMatch(/style=|<style|<script|href=|NaN|undefined/);
  });
});

describe('a picture', () => {
  const DRAWING: Drawing = {
    title: '<b>Hare & moon</b>',
    words: '"quoted" words',
    width: 100,
    height: 40.123,
    shapes: [
      area('left', rectangle(0, 0, 100, 40)),
      label('note', { x: 50, y: 20 }, '<script>', { turn: -90 }),
    ],
  };

  it('shows what a maker typed as text', () => {
    const svg = String(<Picture drawing={DRAWING} id="hare" />);
    expect(svg).toContain('&lt;b&gt;Hare &amp; moon&lt;/b&gt;');
    expect(svg).toContain('&lt;script&gt;');
  });

  it('keeps its natural size, or grows with its column', () => {
    expect(String(<Picture drawing={DRAWING} id="hare" />)).toContain(
      'class="d-picture" viewBox="0 0 100 40.12"',
    );
    expect(String(<Picture drawing={DRAWING} id="hare" grows />)).toContain('class="d-picture d-grows"');
  });

  it('draws only the fillings that it uses', () => {
    const svg = String(<Picture drawing={DRAWING} id="hare" />);
    expect(all(svg, /<pattern id="([^"]+)"/g)).toEqual(['hare-hatch']);
  });
});

describe('swatches', () => {
  const swatch = (motif: Swatch['motif']): Swatch => ({ motif, ground: '#ffffff', inks: ['#112233'] });
  const chip = (motif: Swatch['motif']): string =>
    String(<SwatchChip swatch={swatch(motif)} id="chip" name={motif} />);

  it('differ from motif to motif, in the colours given', () => {
    const marks = MOTIFS.map((motif) => chip(motif).replace(/<title.*?<\/title>/, ''));
    expect(new Set(marks).size).toBe(MOTIFS.length);
    const colours = new Set(MOTIFS.flatMap((motif) => all(chip(motif), /"(#[0-9a-f]{6})"/g)));
    expect([...colours].sort()).toEqual(['#112233', '#2b2622', '#ffffff']);
  });

  it('are laid as the fold lays them', () => {
    const lay = { ...UNMOVED, a: 0, b: 1, c: -1, d: 0, e: 12.5 };
    const outline = rectangle(0, 0, 50, 50);
    const printed = {
      kind: 'printed' as const,
      outline,
      swatch: swatch('sprigs'),
      lay,
      height: 50,
      border: 10,
    };
    const svg = String(
      <Picture drawing={{ title: 't', words: 'w', width: 50, height: 50, shapes: [printed] }} id="p" />,
    );
    expect(svg).toContain('patternTransform="matrix(0 1 -1 0 12.5 0)"');
    expect(svg).toContain('width="24" height="50"');
  });
});
