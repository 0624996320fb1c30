/**
 * Any drawing as one SVG that stands alone: shapes inked by role, labels over hatching on a halo, title and words for those
 * who can't see it. Knows nothing of what is drawn.
 */
import { discRadius } from '#core/drawing/boxes.ts';
import type { Area, Drawing, Label, Line, Printed, Shape, Weight } from '#core/drawing/drawing.ts';
import {
  ACCENT,
  AREAS,
  FAINT_INK,
  FONT,
  GLUE_TINT,
  INK,
  LABELS,
  LINES,
  LIT_EDGE,
  LIT_FILL,
  LIT_LABEL,
  LIT_LINE,
  QUIET,
  QUIET_LABEL,
  SHEET,
} from './ink.ts';
import { number, points } from './numbers.ts';
import { SwatchPattern } from './swatch.tsx';

export interface PictureProps {
  readonly drawing: Drawing;
  /** Unique on the page: patterns, title and words are named after it. */
  readonly id: string;
  /** Grows with its column instead of keeping its natural size. */
  readonly grows?: boolean;
}

export function Picture({ drawing, id, grows = false }: PictureProps) {
  const [width, height] = [number(drawing.width), number(drawing.height)];
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class={grows ? 'd-picture d-grows' : 'd-picture'}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}-title ${id}-words`}
      font-family={FONT}
    >
      <title id={`${id}-title`}>{drawing.title}</title>
      <desc id={`${id}-words`}>{drawing.words}</desc>
      <defs>
        <Fillings drawing={drawing} id={id} />
      </defs>
      {drawing.shapes.map((shape, index) => (
        <ShapeOf shape={shape} id={id} index={index} />
      ))}
    </svg>
  );
}

function ShapeOf({ shape, id, index }: { shape: Shape; id: string; index: number }) {
  if (shape.kind === 'line') return <LineOf {...shape} />;
  if (shape.kind === 'area') return <AreaOf area={shape} id={id} />;
  if (shape.kind === 'label') return <LabelOf {...shape} />;
  return (
    <polygon
      class="d-print"
      points={points(shape.outline)}
      fill={`url(#${id}-print-${index})`}
      fill-opacity={shape.ink}
    />
  );
}

/** A lit area keeps its hatching. */
const litArea = (patterned: boolean) => (patterned ? LIT_EDGE : { ...LIT_EDGE, fill: LIT_FILL });

const classes = (role: string, weight: Weight): string =>
  weight === 'plain' ? `d-${role}` : `d-${role} d-${weight}`;

const LineOf = ({ role, points: all, weight }: Line) => (
  <polyline
    class={classes(role, weight)}
    points={points(all)}
    fill="none"
    stroke-linejoin="round"
    {...LINES[role]}
    {...(weight === 'lit' ? LIT_LINE : weight === 'quiet' ? QUIET : {})}
  />
);

function AreaOf({ area, id }: { area: Area; id: string }) {
  const { pattern, ...ink } = AREAS[area.role];
  return (
    <polygon
      class={classes(area.role, area.weight)}
      points={points(area.outline)}
      stroke-linejoin="round"
      {...(pattern ? { fill: `url(#${id}-${pattern})` } : {})}
      {...ink}
      {...(area.weight === 'lit' ? litArea(pattern !== undefined) : area.weight === 'quiet' ? QUIET : {})}
    />
  );
}

function LabelOf({ role, at, text, size, anchor, turn, weight }: Label) {
  const [x, y] = [number(at.x), number(at.y)];
  const lit = weight === 'lit' ? LIT_LABEL : {};
  const words = (
    <text
      class={classes(role, weight)}
      x={x}
      y={number(at.y + size * 0.35)}
      font-size={size}
      text-anchor={anchor}
      {...(role === 'note' ? HALO : {})}
      {...(turn === 0 ? {} : { transform: `rotate(${number(turn)} ${x} ${y})` })}
      {...LABELS[role]}
      {...lit}
      {...(weight === 'quiet' ? QUIET_LABEL : {})}
    >
      {text}
    </text>
  );
  if (role !== 'order') return words;
  return (
    <g class={classes('stamp', weight)}>
      <circle
        cx={x}
        cy={y}
        r={number(discRadius(size))}
        fill={SHEET}
        stroke={weight === 'lit' ? ACCENT : INK}
      />
      {words}
    </g>
  );
}

/** Keeps words legible over hatching. */
const HALO = { stroke: SHEET, 'stroke-width': 4, 'stroke-linejoin': 'round', 'paint-order': 'stroke' };

function Fillings({ drawing, id }: { drawing: Drawing; id: string }) {
  const used = new Set(
    drawing.shapes.map((shape) => (shape.kind === 'area' ? AREAS[shape.role].pattern : undefined)),
  );
  return (
    <>
      {used.has('hatch') ? <Hatch id={`${id}-hatch`} /> : null}
      {used.has('cross') ? <Cross id={`${id}-cross`} /> : null}
      {used.has('stipple') ? <Stipple id={`${id}-stipple`} /> : null}
      {drawing.shapes.map((shape, index) =>
        shape.kind === 'printed' ? <PrintOf {...shape} id={`${id}-print-${index}`} /> : null,
      )}
    </>
  );
}

const PrintOf = ({ id, swatch, lay, height, border }: Printed & { id: string }) => (
  <SwatchPattern id={id} swatch={swatch} lay={lay} height={height} border={border} />
);

const Hatch = ({ id }: { id: string }) => (
  <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse">
    <rect width="6" height="6" fill={SHEET} />
    <path d="M-1 1L1 -1M0 6L6 0M5 7L7 5" stroke={FAINT_INK} stroke-width="0.9" />
  </pattern>
);

const Cross = ({ id }: { id: string }) => (
  <pattern id={id} width="9" height="9" patternUnits="userSpaceOnUse">
    <rect width="9" height="9" fill={SHEET} />
    <path d="M3 3L6 6M6 3L3 6" stroke={FAINT_INK} stroke-width="0.7" />
  </pattern>
);

const Stipple = ({ id }: { id: string }) => (
  <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse">
    <rect width="6" height="6" fill={GLUE_TINT} />
    <circle cx="1.5" cy="1.5" r="0.8" fill={INK} />
    <circle cx="4.5" cy="4.5" r="0.8" fill={INK} />
  </pattern>
);
