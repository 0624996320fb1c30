/**
 * The same parts from a piece, cut the way a trimmer cuts truly: what is wanted comes off at its own tight measure, and
 * what is left over lies last in its direction and falls off. Knows trees of cuts; chooses no parts and makes no steps.
 */
import { type Cut, type CutTree, isCut, type Rectangle, type UsedPiece } from '../cuts.ts';
import type { Edge, Order, Piece } from '../order.ts';
import { worth } from '../worth.ts';
import { type Placed, partsOf, stripsOf } from './tree.ts';

/**
 * Brings a piece to that form: its strips in one order, largest first, whatever order or mirroring they had, and its
 * leftovers where they are worth most to the shelf. Parts pinned to an edge stay at it, and those at a place stay there.
 * No cut is longer than the longest of the order. A piece of which a part would come to lie in the border stays as it is.
 */
export function trimmer(order: Order): (used: UsedPiece, piece: Piece) => UsedPiece {
  const laying = new Laying(order);
  const pinned = new Set(order.parts.flatMap(({ id, pin }) => (pin ? [id] : [])));
  return (used, { width, height, border = 0 }) => {
    const whole = { x: 0, y: 0, width, height };
    const cuts = laying.inPlace(used.cuts, whole);
    const made = { piece: used.piece, ...partsOf(cuts, whole), cuts };
    const inBorder = made.rectangles.some(
      (one) => !pinned.has(one.part) && one.y + one.height > height - border,
    );
    return inBorder ? used : made;
  };
}

/** What is wanted of a block, at its tight measure; `key` is the same for what is cut alike. */
interface Want {
  readonly width: number;
  readonly height: number;
  readonly key: string;
  readonly edges: ReadonlySet<Edge>;
  readonly what:
    | { readonly part: string; readonly turned: boolean }
    | { readonly along: Cut['along']; readonly strips: readonly Want[] };
}

/** A way to cut a want from a block, built where the block lies. */
interface Way {
  readonly worth: number;
  readonly cuts: number;
  readonly build: (x: number, y: number) => CutTree;
}

/** What follows along a block; `open` is where it gives way when the paper is off its size. */
interface Segment {
  readonly extent: number;
  readonly way: Way;
  readonly open: boolean;
}

const SIDE = { x: 'width', y: 'height' } as const;
const NEAR = { x: 'left', y: 'top' } as const;
const FAR = { x: 'right', y: 'bottom' } as const;
const SLACK = 1e-9;
/** Of many strips of different sizes only the narrowest are tried with the rest beside them. */
const MOST_LOOSE = 6;

class Laying {
  private readonly pins: ReadonlyMap<string, NonNullable<Order['parts'][number]['pin']>>;
  private readonly known = new WeakMap<Want, Map<string, Way | undefined>>();
  private readonly longest: number;
  private readonly keep: number;

  constructor({ parts, longestCut = Infinity, keepAtLeast = 0 }: Order) {
    this.pins = new Map(parts.flatMap(({ id, pin }) => (pin ? [[id, pin] as const] : [])));
    this.longest = longestCut;
    this.keep = keepAtLeast;
  }

  /** Parts at a place are measured from the piece's left and top: what lies before one comes off after it. */
  inPlace(tree: CutTree, block: Rectangle): CutTree {
    if (!this.placed(tree)) return this.lay([[tree, block]], block);
    return isCut(tree) ? this.chain(tree.along, stripsOf(tree, tree.along, block)) : tree;
  }

  private chain(along: Cut['along'], segments: readonly Placed[]): CutTree {
    const last = segments.findLastIndex(([tree]) => this.placed(tree));
    if (last < 0) return this.lay(segments, union(segments), along);
    if (segments.length === 1) return this.inPlace(...segments[0]!);
    const from = last + 1 < segments.length ? last + 1 : last;
    const parts = [segments.slice(0, from), segments.slice(from)] as const;
    return {
      at: segments[from]![1][along],
      along,
      parts: [this.chain(along, parts[0]), this.chain(along, parts[1])],
    };
  }

  private placed = (tree: CutTree): boolean => {
    if (isCut(tree)) return tree.parts.some(this.placed);
    const pin = 'part' in tree ? this.pins.get(tree.part) : undefined;
    return pin !== undefined && 'x' in pin;
  };

  private lay(segments: readonly Placed[], block: Rectangle, along: Cut['along'] = 'x'): CutTree {
    const wants = segments.flatMap(([tree, at]) => this.read(tree, at) ?? []);
    if (wants.length === 0) return this.rest(block.width, block.height).build(block.x, block.y);
    const want = wants.length === 1 ? wants[0]! : levelOf(along, wants);
    const way = this.wayOf(want, block.width, block.height);
    if (!way) throw new Error(`invalid cuts: ${want.key} can't be cut from ${block.width} × ${block.height}`);
    return way.build(block.x, block.y);
  }

  private read(tree: CutTree, block: Rectangle): Want | undefined {
    if (isCut(tree)) {
      const strips = stripsOf(tree, tree.along, block).flatMap(([one, at]) => this.read(one, at) ?? []);
      return strips.length > 1 ? levelOf(tree.along, strips) : strips[0];
    }
    if (!('part' in tree)) return undefined;
    const { width, height } = block;
    const pin = this.pins.get(tree.part);
    const edges = new Set(pin && 'edge' in pin ? [pin.edge] : []);
    const key = JSON.stringify([tree.part, width, height, tree.turned]);
    return { width, height, key, edges, what: { part: tree.part, turned: tree.turned } };
  }

  /** The way that leaves most for the shelf, then with fewest cuts; undefined where all need too long a cut. */
  private wayOf(want: Want, width: number, height: number): Way | undefined {
    const known = this.known.get(want) ?? new Map<string, Way | undefined>();
    this.known.set(want, known);
    const size = `${width} ${height}`;
    if (!known.has(size)) known.set(size, best(this.waysOf(want, width, height)));
    return known.get(size);
  }

  private waysOf(want: Want, width: number, height: number): (Way | undefined)[] {
    const { what } = want;
    const off = (['x', 'y'] as const).map((along) => this.withRest(want, along, width, height));
    if ('along' in what) return [...off, ...this.stripped(want, what, width, height)];
    const exact = want.width === width && want.height === height;
    return exact ? [{ worth: 0, cuts: 0, build: () => what }] : off;
  }

  /** The want as one block at its tight measure along an axis, the rest beside it; across a level only. */
  private withRest(want: Want, along: Cut['along'], width: number, height: number): Way | undefined {
    const { what, edges } = want;
    const block = { width, height };
    const rest = block[SIDE[along]] - want[SIDE[along]];
    if (rest === 0 || ('along' in what && what.along === along)) return undefined;
    if (edges.has(NEAR[along]) && edges.has(FAR[along])) return undefined;
    const kept = { ...block, [SIDE[along]]: want[SIDE[along]] };
    const way = this.wayOf(want, kept.width, kept.height);
    if (!way) return undefined;
    const segments = [{ extent: want[SIDE[along]], way, open: false }, this.restOf(along, rest, block)];
    return this.inRow(along, edges.has(FAR[along]) ? segments.reverse() : segments, block);
  }

  /** Each strip at its tight measure: with the rest after them, or with one of them lying in all that is left. */
  private stripped(
    { width: tightWidth, height: tightHeight }: Want,
    { along, strips }: Extract<Want['what'], { along: unknown }>,
    width: number,
    height: number,
  ): (Way | undefined)[] {
    const block = { width, height };
    const side = SIDE[along];
    const rest = block[side] - (along === 'x' ? tightWidth : tightHeight);
    const inBlock = (want: Want, extent: number): Way | undefined =>
      along === 'x' ? this.wayOf(want, extent, height) : this.wayOf(want, width, extent);
    const row = (loose?: Want): Way | undefined => {
      const segments = strips.map((want) => {
        const extent = want[side] + (want === loose ? rest : 0);
        const way = inBlock(want, extent);
        return way && { extent, way, open: want === loose, want };
      });
      if (segments.some((one) => !one)) return undefined;
      const sound = segments as (Segment & { want: Want })[];
      const [near, far] = [NEAR, FAR].map((edge) => sound.filter(({ want }) => want.edges.has(edge[along])));
      const tight = sound.filter((one) => !near!.includes(one) && !far!.includes(one) && !one.open);
      const open = loose
        ? sound.filter((one) => one.open)
        : rest > 0
          ? [this.restOf(along, rest, block)]
          : [];
      return this.inRow(along, [...near!, ...tight, ...open, ...far!], block);
    };
    if (rest === 0) return [row()];
    const free = strips.filter(({ edges }) => !edges.has(NEAR[along]) && !edges.has(FAR[along]));
    const different = free.filter((one, index) => free[index + 1]?.key !== one.key).slice(-MOST_LOOSE);
    return [row(), ...different.map((loose) => row(loose))];
  }

  /** Cuts off what is not open from the near end, then from the far one. */
  private inRow(along: Cut['along'], segments: readonly Segment[], block: Sides): Way | undefined {
    if ((along === 'x' ? block.height : block.width) > this.longest) return undefined;
    return {
      worth: segments.reduce((sum, { way }) => sum + way.worth, 0),
      cuts: segments.reduce((sum, { way }) => sum + way.cuts, segments.length - 1),
      build: (x, y) => buildRow(along, segments, x, y),
    };
  }

  private restOf(along: Cut['along'], extent: number, block: Sides): Segment {
    const way = along === 'x' ? this.rest(extent, block.height) : this.rest(block.width, extent);
    return { extent, way, open: true };
  }

  private rest(width: number, height: number): Way {
    const kept = Math.min(width, height) >= this.keep;
    const leaf = kept ? ({ leftover: true } as const) : ({ waste: true } as const);
    return { worth: kept ? worth({ width, height }) : 0, cuts: 0, build: () => leaf };
  }
}

/** From what is left when everything else is off, back to the first cut. */
function buildRow(along: Cut['along'], segments: readonly Segment[], x: number, y: number): CutTree {
  const starts: number[] = [along === 'x' ? x : y];
  for (const { extent } of segments) starts.push(starts.at(-1)! + extent);
  const open = segments.findIndex((one) => one.open);
  const last = open < 0 ? segments.length - 1 : open;
  const built = (index: number): CutTree =>
    along === 'x'
      ? segments[index]!.way.build(starts[index]!, y)
      : segments[index]!.way.build(x, starts[index]!);
  let tree = built(last);
  for (let far = last + 1; far < segments.length; far += 1)
    tree = { at: starts[far]!, along, parts: [tree, built(far)] };
  for (let near = last - 1; near >= 0; near -= 1)
    tree = { at: starts[near + 1]!, along, parts: [built(near), tree] };
  return tree;
}

type Sides = Pick<Rectangle, 'width' | 'height'>;

function union(segments: readonly Placed[]): Rectangle {
  const [first, last] = [segments[0]![1], segments.at(-1)![1]];
  const { x, y } = first;
  return { x, y, width: last.x + last.width - x, height: last.y + last.height - y };
}

/** Strips in their one order. */
function levelOf(along: Cut['along'], wants: readonly Want[]): Want {
  const side = SIDE[along];
  const strips = wants.toSorted(
    (one, other) => other[side] - one[side] || (one.key < other.key ? -1 : one.key > other.key ? 1 : 0),
  );
  const sum = (of: 'width' | 'height'): number => strips.reduce((total, one) => total + one[of], 0);
  const most = (of: 'width' | 'height'): number => Math.max(...strips.map((one) => one[of]));
  return {
    width: along === 'x' ? sum('width') : most('width'),
    height: along === 'y' ? sum('height') : most('height'),
    key: JSON.stringify([along, ...strips.map(({ key }) => key)]),
    edges: new Set(strips.flatMap(({ edges }) => [...edges])),
    what: { along, strips },
  };
}

const best = (ways: readonly (Way | undefined)[]): Way | undefined =>
  ways.reduce((one, other) => (other && (!one || better(other, one)) ? other : one), undefined);

function better(one: Way, other: Way): boolean {
  const slack = SLACK * Math.max(one.worth, other.worth);
  if (Math.abs(one.worth - other.worth) > slack) return one.worth > other.worth;
  return one.cuts < other.cuts;
}
