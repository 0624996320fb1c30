/** A design's look as an SVG pattern for any outline, and as a small chip. Knows no folds: the caller lays the print. */
import { type Transform, UNMOVED } from '#core/geometry/transform.ts';
import type { Swatch } from '#shared/swatch.ts';
import { INK } from './ink.ts';
import { bandMarks, motifMarks, TILE } from './motifs.tsx';
import { matrix, number } from './numbers.ts';

export interface SwatchPatternProps {
  readonly id: string;
  readonly swatch: Swatch;
  /** The printed sheet into the drawing: see `Printed`. */
  readonly lay: Transform;
  /** The sheet's height in drawing units, and how deep the border along its foot is (0 for none). */
  readonly height: number;
  readonly border: number;
}

/** Fills any outline with `url(#id)`. */
export function SwatchPattern({ id, swatch, lay, height, border }: SwatchPatternProps) {
  const tall = border > 0;
  const depth = tall ? Math.ceil(height / TILE) : 1;
  const size = tall ? height : TILE;
  return (
    <pattern
      id={id}
      width={TILE}
      height={number(size)}
      patternUnits="userSpaceOnUse"
      patternTransform={matrix(lay)}
    >
      <rect width={TILE} height={number(size)} fill={swatch.ground} />
      {Array.from({ length: depth }, (_, row) => (
        <g {...(row === 0 ? {} : { transform: `translate(0 ${row * TILE})` })}>{motifMarks(swatch)}</g>
      ))}
      {tall ? bandMarks(swatch, height, border) : null}
    </pattern>
  );
}

export interface SwatchChipProps {
  readonly swatch: Swatch;
  /** Unique on the page. */
  readonly id: string;
  /** The design's name, as its label in words. */
  readonly name: string;
  readonly size?: number;
}

/** A small square of the design, the right way up. */
export function SwatchChip({ swatch, id, name, size = 2 * TILE }: SwatchChipProps) {
  const border = swatch.motif === 'border' ? size / 3 : 0;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class="d-chip"
      viewBox={`0 0 ${size} ${size}`}
      width={size}
      height={size}
      role="img"
      aria-labelledby={`${id}-title`}
    >
      <title id={`${id}-title`}>{name}</title>
      <SwatchPattern id={`${id}-print`} swatch={swatch} lay={UNMOVED} height={size} border={border} />
      <rect
        x="0.5"
        y="0.5"
        width={size - 1}
        height={size - 1}
        rx="2"
        fill={`url(#${id}-print)`}
        stroke={INK}
      />
    </svg>
  );
}
