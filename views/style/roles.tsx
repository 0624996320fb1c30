/** Every role of line, area and label, plain, lit and quiet, as a drawing wears it. */
import type { FC } from 'hono/jsx';
import {
  area,
  type Drawing,
  label,
  line,
  rectangle,
  type Shape,
  type Weight,
} from '#core/drawing/drawing.ts';
import { AREAS, LABELS, LINES } from '../diagrams/ink.ts';
import { Picture } from '../diagrams/picture.tsx';

const WEIGHTS: readonly Weight[] = ['plain', 'lit', 'quiet'];
const [WIDTH, ROW, SAMPLE, NAMED] = [358, 30, 62, 130];

export const Roles: FC = () => (
  <div class="columns">
    {SHEETS.map((drawing, one) => (
      <figure class="sheet">
        <Picture id={`roles-${one}`} drawing={drawing} grows />
      </figure>
    ))}
  </div>
);

function sheetOf<Role extends string>(
  title: string,
  inks: Record<Role, unknown>,
  shapes: (role: Role, weight: Weight, x: number, y: number) => Shape,
): Drawing {
  const roles = Object.keys(inks) as Role[];
  return {
    title,
    words: `${roles.join(', ')}: plain, lit and quiet.`,
    width: WIDTH,
    height: roles.length * ROW,
    shapes: roles.flatMap((role, row) => [
      label('caption', { x: 4, y: (row + 0.5) * ROW }, role, { anchor: 'start' }),
      ...WEIGHTS.map((weight, one) => shapes(role, weight, NAMED + one * (SAMPLE + 12), (row + 0.5) * ROW)),
    ]),
  };
}

const SHEETS: readonly Drawing[] = [
  sheetOf('Lines', LINES, (role, weight, x, y) =>
    line(
      role,
      [
        { x, y },
        { x: x + SAMPLE, y },
      ],
      weight,
    ),
  ),
  sheetOf('Areas', AREAS, (role, weight, x, y) => area(role, rectangle(x, y - 10, SAMPLE, 20), weight)),
  sheetOf('Labels', LABELS, (role, weight, x, y) =>
    label(role, { x: x + SAMPLE / 2, y }, role === 'order' ? '1' : '7⅞″', { weight }),
  ),
];
