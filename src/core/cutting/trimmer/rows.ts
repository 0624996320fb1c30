/**
 * Blocks as rows of blocks side by side, and the one arrangement that stands for all that can be cut alike: what is
 * wanted first, widest first, what is left over last. Knows no plan, no paper and no search.
 */
import type { Pin } from '../order.ts';

type Axis = 'x' | 'y';

/** What a block holds that keeps it from being moved, as bits. */
const NEEDS = { left: 1, right: 2, top: 4, bottom: 8, spot: 16, lie: 32 };
const PINNED = NEEDS.left | NEEDS.right | NEEDS.top | NEEDS.bottom | NEEDS.spot;

interface Common {
  readonly width: number;
  readonly height: number;
  /** The same for blocks of one size that are cut alike. */
  readonly key: string;
  readonly needs: number;
  readonly cuts: number;
  /** Parts that lie turned. */
  readonly across: number;
}

interface PartBlock extends Common {
  readonly kind: 'part';
  readonly part: number;
  readonly turned: boolean;
}

/** A row along x is cut from top to bottom into blocks from left to right, none of them a row along x. */
interface Row extends Common {
  readonly kind: 'row';
  readonly along: Axis;
  readonly blocks: readonly Block[];
}

export type Block = PartBlock | Row | (Common & { readonly kind: 'rest' });

interface Sides {
  readonly width: number;
  readonly height: number;
}

/** `needs` of a part at a pin, and of one that may not lie the other way. */
export function needsOf(pin: Pin | undefined, lies: boolean): number {
  if (pin) return NEEDS.lie | ('edge' in pin ? NEEDS[pin.edge] : NEEDS.spot);
  return lies ? NEEDS.lie : 0;
}

export const partBlock = (part: number, turned: boolean, sides: Sides, needs: number): Block => ({
  ...{
    kind: 'part',
    width: sides.width,
    height: sides.height,
    part,
    turned,
    needs,
    cuts: 0,
    across: turned ? 1 : 0,
  },
  key: turned ? `${part}t` : `${part}`,
});

export const restBlock = ({ width, height }: Sides): Block => ({
  ...{ kind: 'rest', width, height, needs: 0, cuts: 0, across: 0 },
  key: '-',
});

/** Rows along the same axis become one, neighbouring rests too; a row of one block is that block. */
export function rowOf(along: Axis, blocks: readonly Block[]): Block {
  const flat: Block[] = [];
  for (const block of blocks.flatMap((one) => (isRow(one, along) ? one.blocks : [one]))) {
    const last = flat.at(-1);
    if (last?.kind === 'rest' && block.kind === 'rest') flat[flat.length - 1] = joined(along, last, block);
    else flat.push(block);
  }
  if (flat.length === 1) return flat[0]!;
  const length = flat.reduce((sum, one) => sum + measure(one, along), 0);
  const across = measure(flat[0]!, other(along));
  return {
    kind: 'row',
    along,
    blocks: flat,
    ...(along === 'x' ? { width: length, height: across } : { width: across, height: length }),
    key: `${along}[${flat.map((one) => `${measure(one, along)}:${one.key}`).join()}]`,
    needs: flat.reduce((all, one) => all | one.needs, 0),
    cuts: flat.reduce((sum, one) => sum + one.cuts, flat.length - 1),
    across: flat.reduce((sum, one) => sum + one.across, 0),
  };
}

const isRow = (block: Block, along: Axis): block is Row => block.kind === 'row' && block.along === along;

const joined = (along: Axis, one: Block, next: Block): Block =>
  restBlock(
    along === 'x'
      ? { width: one.width + next.width, height: one.height }
      : { width: one.width, height: one.height + next.height },
  );

export const measure = (block: Sides, along: Axis): number => (along === 'x' ? block.width : block.height);

const other = (along: Axis): Axis => (along === 'x' ? 'y' : 'x');

/**
 * Arranges blocks, and remembers what it has arranged: use one for blocks whose parts have the same needs. Parts keep their
 * pins, no cut gets longer than `longestCut`, and rests that can be joined are.
 */
export class Arranger {
  private readonly longestCut: number;
  private readonly known = new Map<string, readonly Block[]>();

  constructor(longestCut: number) {
    this.longestCut = longestCut;
  }

  /** One, and where the block is square and nothing in it has to lie as it does, also the one that lies across. */
  arrangements(block: Block): readonly Block[] {
    const name = `${block.width} ${block.height} ${block.key}`;
    const known = this.known.get(name) ?? this.arrange(block);
    this.known.set(name, known);
    return known;
  }

  /** Laid across time and again, an arrangement may change once more; those count to which it comes back. */
  private arrange(block: Block): readonly Block[] {
    const turns = [this.settled(block)];
    if (block.width !== block.height || block.needs & NEEDS.lie) return turns;
    for (;;) {
      const next = this.settled(transposed(turns.at(-1)!));
      const before = turns.findIndex((one) => one.key === next.key);
      if (before >= 0) return turns.slice(before);
      turns.push(next);
    }
  }

  private arranged(block: Block): Block {
    return block.kind === 'row' ? this.arrangements(block).reduce(simpler) : block;
  }

  /** Arranged from within; rests that end several neighbours alike are cut off all of them at once. */
  private settled(block: Block): Block {
    if (block.kind !== 'row') return block;
    const { along } = block;
    const inner = block.blocks.map((one) => this.arranged(one));
    const row = rowOf(along, inner);
    if (!isRow(row, along) || row.needs & NEEDS.spot) return row;
    const sorted = rowOf(along, row.blocks.toSorted(inOrder(along)));
    if (!isRow(sorted, along)) return sorted;
    const shared = withSharedRest(sorted, this.longestCut);
    if (shared) return this.settled(shared);
    const across = this.cutAcross(sorted);
    return across ? simpler(sorted, across) : sorted;
  }

  /** The same blocks cut the other way first, where all blocks of the row are divided alike. */
  private cutAcross(row: Row): Block | undefined {
    const { along, blocks } = row;
    const across = other(along);
    if (row.needs & PINNED || measure(row, along) > this.longestCut) return undefined;
    const rows = blocks.flatMap((one) => (isRow(one, across) ? [one] : []));
    const divided = (one: Row): string => one.blocks.map((each) => measure(each, across)).join();
    if (rows.length < blocks.length || rows.some((one) => divided(one) !== divided(rows[0]!)))
      return undefined;
    const lines = rows[0]!.blocks.map((_, index) =>
      this.arranged(
        rowOf(
          along,
          rows.map((one) => one.blocks[index]!),
        ),
      ),
    );
    return rowOf(across, lines.toSorted(inOrder(across)));
  }
}

/** Fewer cuts, else fewer parts turned, else whichever key comes first. */
export function simpler(one: Block, next: Block): Block {
  const less = next.cuts - one.cuts || next.across - one.across || (next.key < one.key ? -1 : 0);
  return less < 0 ? next : one;
}

function transposed(block: Block): Block {
  if (block.kind === 'row') return rowOf(other(block.along), block.blocks.map(transposed));
  const sides = { width: block.height, height: block.width };
  if (block.kind === 'rest') return restBlock(sides);
  const turned = block.width === block.height ? block.turned : !block.turned;
  return partBlock(block.part, turned, sides, block.needs);
}

const inOrder =
  (along: Axis) =>
  (one: Block, next: Block): number =>
    place(one, along) - place(next, along) ||
    measure(next, along) - measure(one, along) ||
    (one.key < next.key ? -1 : one.key > next.key ? 1 : 0);

function place(block: Block, along: Axis): number {
  if (block.needs & (along === 'x' ? NEEDS.left : NEEDS.top)) return 0;
  if (block.needs & (along === 'x' ? NEEDS.right : NEEDS.bottom)) return 3;
  return block.kind === 'rest' ? 2 : 1;
}

/** Blocks of the row that end in a rest of the same measure, taken together so that it comes off in one. */
function withSharedRest({ along, blocks }: Row, longestCut: number): Block | undefined {
  const across = other(along);
  for (const block of blocks) {
    const rest = restAtEnd(block, across);
    if (rest === undefined) continue;
    const alike = blocks.filter((one) => restAtEnd(one, across) === rest);
    const length = alike.reduce((sum, one) => sum + measure(one, along), 0);
    if (alike.length < 2 || length > longestCut) continue;
    const heads = alike.map((one) => rowOf(across, (one as Row).blocks.slice(0, -1)));
    const tails = alike.map((one) => (one as Row).blocks.at(-1)!);
    const together = rowOf(across, [rowOf(along, heads), rowOf(along, tails)]);
    return rowOf(along, [together, ...blocks.filter((one) => !alike.includes(one))]);
  }
  return undefined;
}

function restAtEnd(block: Block, along: Axis): number | undefined {
  if (!isRow(block, along) || block.needs & PINNED) return undefined;
  const last = block.blocks.at(-1)!;
  return last.kind === 'rest' ? measure(last, along) : undefined;
}
