/** One rectangle of printed paper in proportion, the right way up. Knows neither pads nor shelves. */
import type { FC } from 'hono/jsx';
import { UNMOVED } from '#core/geometry/transform.ts';
import type { Length } from '#shared/length.ts';
import { type Strip, sideAcross } from '#shared/sheet.ts';
import type { Size } from '#shared/size.ts';
import type { Swatch } from '#shared/swatch.ts';
import { INK } from '#views/diagrams/ink.ts';
import { number } from '#views/diagrams/numbers.ts';
import { SwatchPattern } from '#views/diagrams/swatch.tsx';

interface Props {
  /** Unique on the page. */
  readonly id: string;
  /** What it is, for those who can't see it. */
  readonly name: string;
  readonly swatch: Swatch;
  readonly size: Size;
  /** Depth of the border along the bottom edge, if it has one. */
  readonly border?: Length | undefined;
  /** What of it can't be used. */
  readonly strip?: Strip | null;
  /** Pixels per length; see `scaleFor`. */
  readonly scale: number;
}

export const Paper: FC<Props> = ({ id, name, swatch, size, border = 0, strip, scale }) => {
  const [width, height] = [drawn(size.width * scale), drawn(size.height * scale)];
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class="d-paper"
      viewBox={`-1 -1 ${number(width + 2)} ${number(height + 2)}`}
      width={number(width + 2)}
      height={number(height + 2)}
      role="img"
      aria-labelledby={`${id}-title`}
    >
      <title id={`${id}-title`}>{name}</title>
      <SwatchPattern
        id={`${id}-print`}
        swatch={swatch}
        lay={{ ...UNMOVED, a: FINE, d: FINE }}
        height={height / FINE}
        border={Math.min(border * scale, height) / FINE}
      />
      <rect width={number(width)} height={number(height)} fill={`url(#${id}-print)`} stroke={INK} />
      {strip ? <Unusable strip={strip} width={width} height={height} scale={scale} /> : null}
    </svg>
  );
};

/** Paler, with a broken line where it is cut off. */
const Unusable: FC<{ strip: Strip; width: number; height: number; scale: number }> = (props) => {
  const { edge, depth } = props.strip;
  const deep = depth * props.scale;
  const across = sideAcross(props.strip) === 'width';
  return (
    <rect
      x={number(edge === 'right' ? props.width - deep : 0)}
      y={number(edge === 'bottom' ? props.height - deep : 0)}
      width={number(across ? deep : props.width)}
      height={number(across ? props.height : deep)}
      fill="#fffdf7"
      fill-opacity="0.8"
      stroke={INK}
      stroke-dasharray="4 3"
    />
  );
};

/** The scale at which all of these, side by side, keep within `longest` pixels; small ones are not blown up. */
export const scaleFor = (sizes: readonly Size[], longest: number, atLeast: Length): number =>
  longest / Math.max(atLeast, ...sizes.map((size) => Math.max(size.width, size.height)));

/** Motifs are shown finer than on a chip, so that a strip still shows its print. */
const FINE = 0.5;

/** The thinnest strip is still seen. */
const drawn = (pixels: number): number => Math.max(pixels, 2);
