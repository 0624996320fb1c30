/**
 * A PDF as its printer would put it on paper, to be measured in millimetres: pages rasterised by pdftoppm, black lines
 * along a row or column. Knows nothing of what is printed.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';

export const canPrint = spawnSync('pdftoppm', ['-v']).error === undefined;

if (!canPrint) console.log('Skipped: measuring PDFs. No pdftoppm found; apt-get install -y poppler-utils.');

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

/** One page of it, counted from 1. */
export async function printed(pdf: Uint8Array, page = 1): Promise<Printed> {
  const folder = mkdtempSync(join(tmpdir(), 'creasebook-print-'));
  try {
    const [file, out] = [join(folder, 'in.pdf'), join(folder, 'page')];
    writeFileSync(file, pdf);
    const which = ['-f', `${page}`, '-l', `${page}`, '-singlefile'];
    execFileSync('pdftoppm', ['-r', `${RESOLUTION}`, '-gray', '-png', ...which, file, out]);
    return await readable(readFileSync(`${out}.png`));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function readable(png: Buffer): Promise<Printed> {
  const { data, info } = await sharp(png, { limitInputPixels: false })
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  const dots = (millimetres: number): number => Math.floor((millimetres / 25.4) * RESOLUTION);
  const inMillimetres = (all: number): number => (all / RESOLUTION) * 25.4;
  const runs = (start: number, step: number, from: number, to: number): number[] => {
    const middles: number[] = [];
    let [ink, moment, darkest] = [0, 0, 255];
    for (let dot = from; dot <= to; dot++) {
      const grey = dot < to ? data[(start + dot * step) * info.channels]! : 255;
      if (grey < PAPER) {
        ink += 255 - grey;
        moment += (255 - grey) * (dot + 0.5);
        darkest = Math.min(darkest, grey);
        continue;
      }
      if (darkest < BLACK) middles.push(inMillimetres(moment / ink));
      [ink, moment, darkest] = [0, 0, 255];
    }
    return middles;
  };
  const [width, height] = [inMillimetres(info.width), inMillimetres(info.height)];
  return {
    width,
    height,
    row: (at, from = 0, to = width) => runs(dots(at) * info.width, 1, dots(from), dots(to)),
    column: (at, from = 0, to = height) => runs(dots(at), info.width, dots(from), dots(to)),
  };
}
