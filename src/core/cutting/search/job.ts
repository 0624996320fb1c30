/**
 * An order and its pieces as the search sees them: whole numbers on the coarsest common grid, pieces alike counted
 * together, and for each kind of paper which parts it may give and how they may lie. Knows no search.
 */
import { canPart, heightAbove, reachOf } from '../border.ts';
import { gridOf } from '../grid.ts';
import { copiesOf, edgesOf, mayTurn, type Order, type Part, type Piece, suits } from '../order.ts';

/** Pieces alike in size, kind and paper. Where nothing is pinned on them they end above their border. */
export interface Stock {
  readonly width: number;
  readonly height: number;
  /** Of the whole piece. */
  readonly area: number;
  /** Depth of a border within it, for pinned parts only; 0 where there is none. */
  readonly border: number;
  /** Depth of the border that it ends above; 0 where there is none. */
  readonly below: number;
  readonly sheet: boolean;
  readonly copies: number;
  /** Index into `papers`. */
  readonly paper: number;
  readonly ids: readonly { readonly id: string; readonly copies: number }[];
}

/** Ways to lie on one kind of paper, as (part, turned, length along a strip, thickness of the strip), thinnest first. */
export interface Ways {
  readonly count: number;
  readonly part: Int32Array;
  readonly turned: Uint8Array;
  readonly length: Int32Array;
  readonly thickness: Int32Array;
}

export interface Paper {
  readonly design: string | undefined;
  /** Per part: 0 not from this paper, 1 as it is, 2 also turned, 3 pinned. */
  readonly lies: Uint8Array;
  readonly pinned: boolean;
  /** Strips whose length runs along x, and along y. */
  readonly across: Ways;
  readonly down: Ways;
}

/** Parts that must match: indices in order of rising copies. */
export interface Matching {
  readonly parts: readonly number[];
  readonly oneDesign: boolean;
}

export interface Job {
  /** The grid: given lengths divided by this. */
  readonly grid: number;
  readonly parts: readonly Part[];
  readonly width: Int32Array;
  readonly height: Int32Array;
  readonly copies: Int32Array;
  readonly area: Float64Array;
  readonly stocks: readonly Stock[];
  readonly papers: readonly Paper[];
  readonly matchings: readonly Matching[];
  readonly longestCut: number;
  readonly keepAtLeast: number;
}

/** Trusts its input: positive whole lengths, copies of at least one. */
export function prepare(order: Order, pieces: readonly Piece[]): Job {
  const available = pieces.filter((piece) => copiesOf(piece) > 0);
  const grid = commonGrid(order, available);
  const { stocks, papers } = gather(order, available, grid);
  const scaled = (lengths: number[]): Int32Array => Int32Array.from(lengths, (length) => length / grid);
  const width = scaled(order.parts.map((part) => part.width));
  const height = scaled(order.parts.map((part) => part.height));
  return {
    grid,
    parts: order.parts,
    width,
    height,
    copies: Int32Array.from(order.parts, (part) => part.copies),
    area: Float64Array.from(width, (one, index) => one * height[index]!),
    stocks,
    papers: papersOf(papers, width, height),
    matchings: matchings(order.parts),
    longestCut:
      order.longestCut === undefined ? Number.MAX_SAFE_INTEGER : Math.floor(order.longestCut / grid),
    keepAtLeast: Math.max(1, Math.ceil((order.keepAtLeast ?? 0) / grid)),
  };
}

/** Whether a part that lies like this may go anywhere on the paper. */
export const isFree = (lie: number): boolean => lie === 1 || lie === 2;

/** Whether the piece is large enough for the part, and of a paper that it may come from. */
export function fits(job: Job, part: number, stock: Stock): boolean {
  const { width, paper } = stock;
  const lies = job.papers[paper]!.lies[part]!;
  if (lies === 0) return false;
  const height = reachOf(job.parts[part]!, stock);
  const [wide, high] = [job.width[part]!, job.height[part]!];
  return (wide <= width && high <= height) || (lies === 2 && high <= width && wide <= height);
}

const commonGrid = ({ parts }: Order, pieces: readonly Piece[]): number =>
  gridOf([
    ...[...parts, ...pieces].flatMap(({ width, height }) => [width, height]),
    ...pieces.map(({ border = 0 }) => border),
    ...parts.flatMap(({ pin }) => (pin && 'x' in pin ? [pin.x, pin.y] : [])),
  ]);

interface Sort {
  readonly key: string;
  readonly design: string | undefined;
  readonly lies: Uint8Array;
}

function gather(order: Order, pieces: readonly Piece[], grid: number) {
  const { parts } = order;
  const papers: Sort[] = [];
  const found = new Map<string, Stock & { ids: { id: string; copies: number }[]; copies: number }>();
  const bySort = new Map<string, number>();
  const designsMatter = parts.some((part) => part.match !== undefined);
  for (const piece of pieces) {
    const sort = [piece.design ?? '', piece.upright === true, edgesOf(piece).join(), piece.kind].join('|');
    if (!bySort.has(sort)) bySort.set(sort, paperIndex(papers, parts, piece, designsMatter));
    const paper = bySort.get(sort)!;
    const [width, whole] = [piece.width / grid, piece.height / grid];
    const depth = (piece.height - heightAbove(piece)) / grid;
    const [border, below] = papers[paper]!.lies.includes(3) ? [depth, 0] : [0, depth];
    const height = whole - below;
    if (height === 0 || (below > 0 && !canPart(piece, order))) continue;
    const key = [width, height, piece.kind, paper, depth].join('|');
    const copies = copiesOf(piece);
    const known = found.get(key);
    if (known) {
      known.copies += copies;
      known.ids.push({ id: piece.id, copies });
    } else {
      const ids = [{ id: piece.id, copies }];
      found.set(key, {
        width,
        height,
        area: width * whole,
        ...{ border, below },
        sheet: piece.kind === 'sheet',
        copies,
        paper,
        ids,
      });
    }
  }
  return { papers, stocks: [...found.values()] };
}

/** Papers that let the same parts lie the same way count as one, unless designs have to match. */
function paperIndex(papers: Sort[], parts: readonly Part[], piece: Piece, designsMatter: boolean): number {
  const lies = Uint8Array.from(parts, (part) => {
    if (!suits(part, piece)) return 0;
    if (part.pin) return 3;
    return mayTurn(part, piece) && part.width !== part.height ? 2 : 1;
  });
  const design = designsMatter ? piece.design : undefined;
  const key = `${designsMatter ? (piece.design ?? '') : ''}|${lies.join('')}`;
  const known = papers.findIndex((paper) => paper.key === key);
  return known >= 0 ? known : papers.push({ key, design, lies }) - 1;
}

function papersOf(sorts: readonly Sort[], width: Int32Array, height: Int32Array): Paper[] {
  const alike = new Map<string, Omit<Paper, 'design'>>();
  return sorts.map(({ design, lies }) => {
    const key = lies.join('');
    const known = alike.get(key) ?? {
      lies,
      pinned: lies.includes(3),
      across: ways(lies, width, height),
      down: ways(lies, height, width),
    };
    alike.set(key, known);
    return { ...known, design };
  });
}

function ways(lies: Uint8Array, along: Int32Array, across: Int32Array): Ways {
  const list: [part: number, turned: number, length: number, thickness: number][] = [];
  lies.forEach((lie, part) => {
    if (isFree(lie)) list.push([part, 0, along[part]!, across[part]!]);
    if (lie === 2) list.push([part, 1, across[part]!, along[part]!]);
  });
  list.sort((one, other) => one[3] - other[3] || other[2] - one[2] || one[0] - other[0]);
  return {
    count: list.length,
    part: Int32Array.from(list, (way) => way[0]),
    turned: Uint8Array.from(list, (way) => way[1]),
    length: Int32Array.from(list, (way) => way[2]),
    thickness: Int32Array.from(list, (way) => way[3]),
  };
}

function matchings(parts: readonly Part[]): Matching[] {
  const labels = new Set(parts.flatMap((part) => part.match ?? []));
  return [...labels].map((label) => {
    const members = parts.flatMap((part, index) => (part.match === label ? [index] : []));
    members.sort((one, other) => parts[one]!.copies - parts[other]!.copies);
    return { parts: members, oneDesign: members.some((index) => parts[index]!.oneDesign === true) };
  });
}
