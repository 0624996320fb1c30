/**
 * Words on a true-size piece: as large as the room inside a shape allows, or along a score. Lengths are plain numbers
 * of 25 nm. Knows no drawing units and no page.
 */
import { distance, type Line, type Point, type Polygon } from '#core/geometry/point.ts';
import { millimetres } from '#shared/length.ts';
import { textWidth } from './boxes.ts';
import { roomiest, type Spot } from './room.ts';
import { between, centreOf, direction, leftOf, moved } from './vectors.ts';

/** One line of text about its own middle; `size` is the height of its type, `turn` clockwise in degrees. */
export interface Inscription {
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly turn: number;
}

/** Lines of text one below the other where the shape has most room; none where they would be too small to read. */
export function inside(
  shape: Polygon,
  lines: readonly string[],
  covers: readonly Polygon[] = [],
): Inscription[] {
  const spot = roomyMiddle(shape, covers);
  if (!spot) return [];
  const across = Math.max(...lines.map((text) => textWidth(text, 1)));
  const size = Math.min(LARGEST, (2 * spot.room) / Math.hypot(across, lines.length * LEADING));
  if (size < SMALLEST) return [];
  return lines.map((text, index) => ({
    at: moved(spot.at, DOWN, (index - (lines.length - 1) / 2) * LEADING * size),
    text,
    size,
    turn: 0,
  }));
}

/** The score's number in the order of scoring, a share of the way along it, on the pocket's side of it. */
export function alongScore(score: Line, order: number, pocket: Polygon, share = 1 / 2): Inscription {
  const along = direction(score.from, score.to);
  const [away, centre, at] = [leftOf(along), centreOf(pocket), between(score.from, score.to, share)];
  const onLeft = (centre.x - at.x) * away.x + (centre.y - at.y) * away.y > 0;
  return {
    at: moved(at, away, onLeft ? BESIDE : -BESIDE),
    text: `score ${order}`,
    size: SCORE_TYPE,
    turn: readable((Math.atan2(along.y, along.x) * 180) / Math.PI),
  };
}

const LARGEST = millimetres(4);
const SMALLEST = millimetres(1.8);
const SCORE_TYPE = millimetres(3);
const BESIDE = millimetres(2.6);
const LEADING = 1.3;
const DOWN = { x: 0, y: 1 };

/** Of the spots with nearly the most room the one nearest to the middle. */
function roomyMiddle(shape: Polygon, covers: readonly Polygon[]): Spot | undefined {
  const spots = roomiest(shape, covers, MANY);
  const centre = centreOf(shape);
  const [best] = spots
    .filter(({ room }) => room > 0.9 * spots[0]!.room)
    .sort((one, other) => distance(one.at, centre) - distance(other.at, centre));
  return best;
}

const MANY = 1000;

/** The same line, read from the left or from below. */
const readable = (degrees: number): number => {
  const turn = Math.round(((degrees % 180) + 180) % 180);
  return turn > 90 ? turn - 180 : turn === 90 ? -90 : turn;
};
