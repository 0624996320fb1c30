/**
 * A PDF as its printer would put it on paper, to be measured in millimetres: pages rasterised by pdftoppm, black lines
 * along a row or column. Knows nothing of what is printed.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const canPrint = spawnSync('pdftoppm', ['-v']).error === undefined;

export interface Printed {
  readonly width: number;
  readonly height: number;
  /** The middles of the black lines along the row or column at this many millimetres, from the left or from the top. */
  row(at: number, from?: number, to?: number): number[];
  column(at: number, from?: number, to?: number): number[];
}

/** 0.085 mm for each dot; what a dot is half covered by is read from its grey, so that lines are found between dots. */
const RESOLUTION = 300;
/** Darker than this somewhere in it: a black line, not a grey word or a tint. */
const BLACK = 80;
/** Lighter than this ends a line. */
const PAPER = 225;

/** One page of it, counted from 1, or only as much of its top as is asked for. */
export function printed(pdf: Uint8Array, page = 1, top?: number): Printed {
  const folder = mkdtempSync(join(tmpdir(), 'creasebook-print-'));
  try {
    const [file, out] = [join(folder, 'in.pdf'), join(folder, 'page')];
    writeFileSync(file, pdf);
    const which = ['-f', `${page}`, '-l', `${page}`, '-singlefile'];
    const part = top === undefined ? [] : ['-H', `${Math.ceil((top / 25.4) * RESOLUTION)}`];
    execFileSync('pdftoppm', ['-r', `${RESOLUTION}`, '-gray', ...which, ...part, file, out]);
    return readable(readFileSync(`${out}.pgm`));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A binary grey map: its size and deepest white in words, then one byte for each dot. */
function readable(pgm: Buffer): Printed {
  const [head, across, down] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.toString('latin1', 0, 60))!;
  const [columns, rows, dots] = [Number(across), Number(down), pgm.subarray(head.length)];
  const lines = (start: number, step: number, from: number, to: number): number[] => {
    const [first, last] = [Math.floor(inDots(from)), Math.floor(inDots(to))];
    const greys = Array.from({ length: last - first }, (_, index) => dots[start + (first + index) * step]!);
    return middlesIn(greys).map((middle) => inMillimetres(first + middle));
  };
  const [width, height] = [inMillimetres(columns), inMillimetres(rows)];
  return {
    width,
    height,
    row: (at, from = 0, to = width) => lines(Math.floor(inDots(at)) * columns, 1, from, to),
    column: (at, from = 0, to = height) => lines(Math.floor(inDots(at)), columns, from, to),
  };
}

const inDots = (millimetres: number): number => (millimetres / 25.4) * RESOLUTION;
const inMillimetres = (dots: number): number => (dots / RESOLUTION) * 25.4;

/** Where the ink of each black line has its middle, in dots. */
function middlesIn(greys: readonly number[]): number[] {
  const middles: number[] = [];
  let [ink, moment, darkest] = [0, 0, 255];
  for (const [dot, grey] of [...greys, 255].entries()) {
    if (grey < PAPER) {
      ink += 255 - grey;
      moment += (255 - grey) * (dot + 0.5);
      darkest = Math.min(darkest, grey);
      continue;
    }
    if (darkest < BLACK) middles.push(moment / ink);
    [ink, moment, darkest] = [0, 0, 255];
  }
  return middles;
}
