/**
 * Templates as one SVG in millimetres for a cutting machine: a layer each for what is cut, what is scored and what
 * is only read. Plain paths without patterns, style sheets or transforms of the cut lines.
 */
import type { Child } from 'hono/jsx';
import type { Inscription } from '#core/drawing/inscription.ts';
import type { Template } from '#core/drawing/template.ts';
import type { Line, Polygon } from '#core/geometry/point.ts';
import { applyToAll, shift } from '#core/geometry/transform.ts';
import { millimetres, toMillimetres } from '#shared/length.ts';

/** A whole file. Several pieces lie side by side. */
export function templateSvg(templates: readonly Template[]): string {
  const laid = sideBySide(templates);
  const width = Math.max(...laid.map(({ left, template }) => left + template.width));
  const height = Math.max(...templates.map((template) => template.height));
  const svg = (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      width={`${mm(width)}mm`}
      height={`${mm(height)}mm`}
      viewBox={`0 0 ${mm(width)} ${mm(height)}`}
    >
      <title>{templates.map(({ name }) => name).join(' · ')}</title>
      <desc>{templates.map(({ words }) => words).join(' ')}</desc>
      <Layer id="cut" stroke={CUT}>
        {laid.flatMap(({ template, left }) => template.cuts.map((cut) => <path d={closed(cut, left)} />))}
      </Layer>
      <Layer id="score" stroke={SCORE} stroke-dasharray="3 2">
        {laid.flatMap(({ template, left }) => template.scores.map((score) => <path d={open(score, left)} />))}
      </Layer>
      <Layer id="labels" stroke={LABEL} font-family="sans-serif">
        {laid.flatMap(({ template, left }) => [
          ...template.glue.map((spot) => <path d={closed(spot, left)} stroke-dasharray="0.5 1" />),
          ...template.labels.map((label) => <Words label={label} left={left} />),
        ])}
      </Layer>
    </svg>
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`;
}

const CUT = '#000000';
const SCORE = '#0057b8';
const LABEL = '#6f6f6f';
const GAP = millimetres(10);

interface LaidTemplate {
  readonly template: Template;
  readonly left: number;
}

const sideBySide = (templates: readonly Template[]): LaidTemplate[] =>
  templates.map((template, index) => ({
    template,
    left: templates.slice(0, index).reduce((sum, { width }) => sum + width + GAP, 0),
  }));

function Layer({
  children,
  ...rest
}: { id: string; stroke: string; children?: Child } & Record<string, unknown>) {
  return (
    <g fill="none" stroke-width="0.2" {...rest}>
      {children}
    </g>
  );
}

function Words({ label: { at, text, size, turn }, left }: { label: Inscription; left: number }) {
  const [x, y] = [mm(at.x + left), mm(at.y)];
  return (
    <text
      x={x}
      y={y}
      font-size={mm(size)}
      text-anchor="middle"
      dominant-baseline="central"
      fill={LABEL}
      stroke="none"
      {...(turn === 0 ? {} : { transform: `rotate(${turn} ${x} ${y})` })}
    >
      {text}
    </text>
  );
}

const closed = (polygon: Polygon, left: number): string => `M${run(polygon, left)}Z`;

const open = ({ from, to }: Line, left: number): string => `M${run([from, to], left)}`;

const run = (polygon: Polygon, left: number): string =>
  applyToAll(shift(left, 0), polygon)
    .map(({ x, y }) => `${mm(x)} ${mm(y)}`)
    .join('L');

/** To the micrometre. */
const mm = (units: number): string => `${Number(toMillimetres(units).toFixed(3)) + 0}`;
