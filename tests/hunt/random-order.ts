/** An order at random, the same for the same seed: small or crowded, with every kind of wish. Plans nothing. */
import type { Edge, Order, Part, Piece } from '#core/cutting/order.ts';
import { type Chance, chance } from '#core/cutting/search/random.ts';

export interface RandomOrder {
  readonly order: Order;
  readonly pieces: Piece[];
  readonly timeMs: number;
  /** Small and plain enough to try everything. */
  readonly tiny: boolean;
}

const DESIGNS = ['rose', 'moss', 'sky'];
const EDGES: readonly Edge[] = ['top', 'right', 'bottom', 'left'];

export function randomOrder(seed: number): RandomOrder {
  const random = chance(seed);
  const dice = random.next();
  if (dice < 0.3) return tinyOrder(random);
  if (dice < 0.5) return padOrder(random);
  const unit = [1, 1, 4, 63_500, 500][random.below(5)]!;
  const side = (most: number): number => (1 + random.below(most)) * unit;
  const room = 12 + random.below(200);
  const parts = Array.from({ length: 1 + random.below(14) }, (_, index) =>
    somePart(random, `part ${index}`, () => side(room), unit),
  );
  const pieces = Array.from({ length: 1 + random.below(20) }, (_, index) =>
    somePiece(random, `piece ${index}`, () => side(room * 2)),
  );
  const longestCut = random.next() < 0.25 ? side(room * 2) : undefined;
  const keepAtLeast = random.next() < 0.5 ? side(Math.ceil(room / 4)) : undefined;
  const order = { parts, ...(longestCut && { longestCut }), ...(keepAtLeast && { keepAtLeast }) };
  return { order, pieces, timeMs: 5 + random.below(120), tiny: false };
}

/** Many parts, most of them one of a kind, from one pad and perhaps a few offcuts. */
function padOrder(random: Chance): RandomOrder {
  const unit = [1, 4, 63_500][random.below(3)]!;
  const room = 30 + random.below(120);
  const side = (): number =>
    Math.ceil(room * (0.08 + random.next() * 0.7) * (random.next() < 0.05 ? 2 : 1)) * unit;
  const parts = Array.from({ length: 10 + random.below(50) }, (_, index) => ({
    id: `part ${index}`,
    width: side(),
    height: side(),
    copies: 1 + random.below(random.next() < 0.2 ? 4 : 1),
    ...(random.next() < 0.4 && { upright: true }),
  }));
  const sheet: Piece = { id: 'pad', width: room * unit, height: room * unit, kind: 'sheet', copies: 60 };
  const offcuts = Array.from({ length: random.below(4) }, (_, index) =>
    somePiece(random, `offcut ${index}`, () => 2 * side()),
  );
  return { order: { parts }, pieces: [sheet, ...offcuts], timeMs: 60 + random.below(300), tiny: false };
}

function somePart(random: Chance, id: string, side: () => number, unit: number): Part {
  const match =
    random.next() < 0.2
      ? { match: ['a', 'b'][random.below(2)]!, ...(random.next() < 0.3 && { oneDesign: true }) }
      : {};
  const pin =
    random.next() < 0.5
      ? { edge: EDGES[random.below(4)]! }
      : { x: random.below(60) * unit, y: random.below(60) * unit };
  return {
    id,
    width: side(),
    height: side(),
    copies: 1 + random.below(random.next() < 0.1 ? 60 : 8),
    ...(random.next() < 0.4 && { upright: true }),
    ...(random.next() < 0.3 && { designs: DESIGNS.slice(random.below(3)) }),
    ...match,
    ...(random.next() < 0.12 && { pin }),
  };
}

const somePiece = (random: Chance, id: string, side: () => number): Piece => ({
  id,
  width: side(),
  height: side(),
  kind: random.next() < 0.4 ? 'sheet' : 'offcut',
  copies: 1 + random.below(6),
  ...(random.next() < 0.7 && { design: DESIGNS[random.below(3)]! }),
  ...(random.next() < 0.5 && { upright: true }),
  ...(random.next() < 0.2 && { edges: EDGES.slice(random.below(4)) }),
  ...(random.next() < 0.05 && { keep: true }),
  ...(random.next() < 0.25 && { border: side() }),
});

function tinyOrder(random: Chance): RandomOrder {
  const side = (least: number, most: number): number => least + random.below(most - least + 1);
  const matching = random.next() < 0.4;
  const parts = Array.from({ length: 1 + random.below(3) }, (_, index) => ({
    id: `part ${index}`,
    width: side(2, 9),
    height: side(2, 9),
    copies: 1 + random.below(2),
    upright: random.next() < 0.5,
    ...(matching && random.next() < 0.7 && { match: 'set', oneDesign: random.next() < 0.2 }),
    ...(matching && random.next() < 0.3 && { designs: DESIGNS.slice(random.below(2), 2) }),
  }));
  const pieces = Array.from(
    { length: 1 + random.below(matching ? 3 : 2) },
    (_, index): Piece => ({
      id: `piece ${index}`,
      width: side(4, 10),
      height: side(4, 10),
      kind: random.next() < 0.5 ? 'sheet' : 'offcut',
      copies: 1 + random.below(2),
      upright: random.next() < 0.5,
      ...(matching && random.next() < 0.85 && { design: DESIGNS[random.below(2)]! }),
    }),
  );
  return { order: { parts }, pieces, timeMs: 60, tiny: true };
}
