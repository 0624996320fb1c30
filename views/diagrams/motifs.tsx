/** One small tile of each motif, drawn in a swatch's own colours, upright. Knows no sheets, folds or pictures. */
import type { Child } from 'hono/jsx';
import type { Motif, Swatch } from '#shared/swatch.ts';

/** The tile's side in drawing units. */
export const TILE = 24;

/** The marks of one tile over its ground; the print's upper edge is at the top. */
export const motifMarks = (swatch: Swatch): Child => MARKS[swatch.motif]((index) => inkOf(swatch, index));

/** A band `depth` deep along the foot of a strip one tile wide and `height` high. */
export function bandMarks(swatch: Swatch, height: number, depth: number): Child {
  const top = height - depth;
  const [main, second] = [inkOf(swatch, 0), inkOf(swatch, 1)];
  const scallop = Math.min(6, depth / 2);
  const line = `M0 ${top + scallop}a6 ${scallop} 0 0 1 12 0a6 ${scallop} 0 0 1 12 0V${height}H0z`;
  return (
    <>
      <path d={line} fill={main} />
      <path d={`M0 ${top - 2.5}H24`} stroke={second} stroke-width="1.2" />
      <path
        d={`M6 ${top + scallop + 1}h0M18 ${top + scallop + 1}h0`}
        stroke={swatch.ground}
        stroke-width="3"
        stroke-linecap="round"
      />
      <path d={`M0 ${height - 2}H24`} stroke={swatch.ground} stroke-width="1.2" />
    </>
  );
}

type Ink = (index: number) => string;

/** A swatch with one ink repeats it. */
const inkOf = (swatch: Swatch, index: number): string =>
  swatch.inks[index % Math.max(1, swatch.inks.length)] ?? '#2b2622';

const MARKS: Record<Motif, (ink: Ink) => Child> = {
  plain: () => null,
  stripes: (ink) => (
    <>
      <path d="M6 0V24" stroke={ink(0)} stroke-width="7" />
      <path d="M18 0V24" stroke={ink(1)} stroke-width="2.2" />
    </>
  ),
  checks: (ink) => (
    <>
      <path d="M6 0V24" stroke={ink(0)} stroke-width="12" stroke-opacity="0.5" />
      <path d="M0 6H24" stroke={ink(1)} stroke-width="12" stroke-opacity="0.5" />
    </>
  ),
  dots: (ink) => (
    <>
      <circle cx="6" cy="6" r="3.2" fill={ink(0)} />
      <circle cx="18" cy="18" r="3.2" fill={ink(1)} />
    </>
  ),
  sprigs: (ink) => (
    <>
      {sprig(6, 21, ink)}
      {sprig(18, 9, ink)}
      {sprig(18, 33, ink)}
    </>
  ),
  waves: (ink) => (
    <>
      <path d="M0 5q6 -6 12 0t12 0" fill="none" stroke={ink(0)} stroke-width="2" />
      <path d="M0 13q6 -6 12 0t12 0" fill="none" stroke={ink(1)} stroke-width="2" />
      <path d="M0 21q6 -6 12 0t12 0" fill="none" stroke={ink(2)} stroke-width="2" />
    </>
  ),
  stars: (ink) => (
    <>
      <path d={star(7, 7, 5.6)} fill={ink(0)} />
      <path d={star(18.5, 18.5, 4)} fill={ink(1)} />
    </>
  ),
  script: (ink) => (
    <>
      <path
        d="M1 10q3 -9 4 -5t-2 5q3 -4 5 -3t1 3q2 -4 4 -3t0 3q3 -7 4 -4t-1 4q2 -2 4 -1"
        fill="none"
        stroke={ink(0)}
        stroke-width="1.3"
      />
      <path
        d="M2 22q1 -4 3 -3t0 3q4 -8 5 -5t-1 5q3 -4 4 -3t-1 3q2 -2 4 -1"
        fill="none"
        stroke={ink(1)}
        stroke-width="1.3"
      />
    </>
  ),
  border: (ink) => (
    <>
      <circle cx="6" cy="6" r="1.3" fill={ink(1)} />
      <circle cx="18" cy="18" r="1.3" fill={ink(1)} />
    </>
  ),
};

/** A stalk with two pairs of leaves and a bud on top. */
function sprig(x: number, foot: number, ink: Ink): Child {
  const leaf = (y: number, side: number) =>
    `M${x} ${y}q${side * 1.5} -4.5 ${side * 5} -4.5q${-side * 1} 4 ${-side * 5} 4.5z`;
  return (
    <>
      <path d={`M${x} ${foot}v-15`} stroke={ink(0)} stroke-width="1.2" />
      <path
        d={[leaf(foot - 3, 1), leaf(foot - 3, -1), leaf(foot - 8, 1), leaf(foot - 8, -1)].join('')}
        fill={ink(0)}
      />
      <circle cx={x} cy={foot - 16} r="2.2" fill={ink(1)} />
    </>
  );
}

/** A five-pointed star standing on two points. */
function star(x: number, y: number, radius: number): string {
  const corners = Array.from({ length: 10 }, (_, index) => {
    const reach = index % 2 === 0 ? radius : radius * 0.42;
    const turn = (index * Math.PI) / 5;
    return `${(x + reach * Math.sin(turn)).toFixed(2)} ${(y - reach * Math.cos(turn)).toFixed(2)}`;
  });
  return `M${corners.join('L')}z`;
}
