/**
 * What would make room for parts that a plan leaves out: more of some paper, matching less, a kept piece, turning, a
 * longer cut, a smaller part. Judges one part at a time on a piece of its own; looks for no plan.
 */
import { areaOf } from '#shared/size.ts';
import { canPart, reachOf } from '../border.ts';
import type { Remedy, UsedPiece } from '../cuts.ts';
import { edgesOf, mayTurn, type Part, type Piece, type Sides, suits } from '../order.ts';
import { cutNeeded, inRows, sizeThatFits, waysToLie } from './alone.ts';
import { type PlacedByDesign, roomByDesign } from './match-room.ts';

interface CutShelf {
  readonly parts: readonly Part[];
  readonly pieces: readonly Piece[];
  readonly used: readonly UsedPiece[];
  readonly longestCut?: number | undefined;
}

/**
 * Answers with the remedies for `missing` copies of a part, never none: what takes them as the shelf's paper is, each a
 * way of its own except that several `another` belong together; and only where there is no such way, what else would do.
 */
export function remediesFor(shelf: CutShelf): (part: Part, missing: number) => Remedy[] {
  const adviser = new Adviser(shelf);
  return (part, missing) => adviser.advise(part, missing);
}

/** A piece as far as a part may reach into it, and how many of it are left. */
interface Reach extends Sides {
  readonly piece: Piece;
  readonly left: number;
}

/** Pieces alike but in size. */
interface Rack {
  readonly sample: Piece;
  readonly design: string;
  readonly reaches: Reach[];
}

/** What a design's pieces take, and of which piece fewest are needed. */
interface Source {
  readonly piece: Piece;
  readonly copies: number;
}

/** How many more copies a design may give. */
type Room = (design: string) => number;

class Adviser {
  private readonly racks: readonly Rack[];
  private readonly longestCut: number;
  private readonly placed: Map<string, Map<string, number>>;
  private readonly trouble = new Map<string, number>();
  /** By match, in order of rising copies. */
  private readonly labels = new Map<string | undefined, Part[]>();

  constructor({ parts, pieces, used, longestCut = Number.MAX_VALUE }: CutShelf) {
    this.longestCut = longestCut;
    this.racks = racksOf(pieces, used);
    this.placed = placedIn(pieces, used);
    for (const part of parts.toSorted((one, other) => one.copies - other.copies)) {
      const label = this.labels.get(part.match) ?? [];
      label.push(part);
      this.labels.set(part.match, label);
    }
  }

  advise(part: Part, missing: number): Remedy[] {
    const suitable = this.racks.filter(({ sample }) => suits(part, sample));
    const room = this.roomFor(part, this.placed, suitable);
    const open = suitable.filter(({ design }) => room(design) > 0);
    const free = open.filter(({ sample }) => !sample.keep);
    const shut = suitable.filter(({ sample, design }) => !sample.keep && room(design) === 0);
    const kept = this.firstThatGives(
      part,
      open.filter(({ sample }) => sample.keep),
    );
    const ways: Remedy[] = [
      ...this.another(part, missing, free, room),
      ...(this.firstThatGives(part, shut) ? [{ kind: 'apart' } as const] : []),
      ...(kept ? [{ kind: 'kept', piece: kept.id } as const] : []),
    ];
    const asked = ways.length > 0 ? ways : this.asked(part, free);
    return asked.length > 0 ? asked : [{ kind: 'paper' }];
  }

  /** More pieces of one design, or of several where matching leaves no single one room for all. */
  private another(part: Part, missing: number, free: readonly Rack[], first: Room): Remedy[] {
    const found: Remedy[] = [];
    const placed = new Map(this.placed);
    let left = missing;
    let room = first;
    while (left > 0 && found.length < MOST_DESIGNS) {
      const best = this.bestSource(part, left, free, room);
      if (!best) break;
      const { piece, copies, takes, design } = best;
      found.push({ kind: 'another', piece: piece.id, copies, takes });
      const mine = new Map(placed.get(part.id));
      placed.set(part.id, mine.set(design, (mine.get(design) ?? 0) + takes));
      left -= takes;
      if (left > 0) room = this.roomFor(part, placed, free);
    }
    return found;
  }

  /** The design that takes most copies, and among these the one that all of the label need least of. */
  private bestSource(part: Part, left: number, free: readonly Rack[], room: Room) {
    const sources = (part.match === undefined ? [free] : byDesign(free)).flatMap((racks) => {
      const design = racks[0]?.design ?? '';
      const takes = Math.min(left, room(design));
      const source = takes > 0 ? this.fewest(part, takes, racks) : undefined;
      return source
        ? [{ ...source, design, takes, trouble: this.troubleOf(part, racks, design, source) }]
        : [];
    });
    sources.sort((one, other) => other.takes - one.takes || one.trouble - other.trouble);
    return sources[0];
  }

  /** So that parts that miss each other wait for the same design. */
  private troubleOf({ match }: Part, racks: readonly Rack[], design: string, own: Source): number {
    if (match === undefined) return own.copies;
    const key = `${match}|${design}`;
    const known = this.trouble.get(key);
    if (known !== undefined) return known;
    let sum = 0;
    for (const part of this.labels.get(match)!) {
      const missing = part.copies - this.placedOf(part);
      if (missing > 0) sum += this.fewest(part, missing, racks)?.copies ?? NEVER;
    }
    this.trouble.set(key, sum);
    return sum;
  }

  private placedOf({ id }: Part): number {
    return [...(this.placed.get(id)?.values() ?? [])].reduce((sum, count) => sum + count, 0);
  }

  /** The piece that fewest are needed of: sheets before offcuts, which cannot be bought. */
  private fewest(part: Part, copies: number, racks: readonly Rack[]): Source | undefined {
    let best: Source | undefined;
    for (const { sample, reaches } of this.openTo(part, racks)) {
      if (best?.piece.kind === 'sheet' && sample.kind === 'offcut') break;
      if (!suits(part, sample)) continue;
      const ways = waysToLie(part, mayTurn(part, sample));
      for (const reach of reaches) {
        const many = inRows(ways, reach, this.longestCut);
        const needed = many === 0 ? NEVER : Math.ceil(copies / many);
        if (needed < (best?.copies ?? NEVER)) best = { piece: reach.piece, copies: needed };
      }
    }
    return best;
  }

  /** A whole piece on the shelf that gives a copy. */
  private firstThatGives(part: Part, racks: readonly Rack[]): Piece | undefined {
    for (const { sample, reaches } of this.openTo(part, racks)) {
      const ways = waysToLie(part, mayTurn(part, sample));
      const found = reaches.find((reach) => reach.left > 0 && cutNeeded(ways, reach) <= this.longestCut);
      if (found) return found.piece;
    }
    return undefined;
  }

  /** What the maker could ask otherwise, or cut otherwise. */
  private asked(part: Part, free: readonly Rack[]): Remedy[] {
    const either = waysToLie(part, true);
    let turned: Piece | undefined;
    let cut = Number.POSITIVE_INFINITY;
    for (const { sample, reaches } of this.openTo(part, free)) {
      const ways = waysToLie(part, mayTurn(part, sample));
      for (const reach of reaches) {
        cut = Math.min(cut, cutNeeded(ways, reach));
        if (turned || part.pin) continue;
        if (cutNeeded(either, reach) <= this.longestCut) turned = reach.piece;
      }
    }
    const fits = cut < Number.POSITIVE_INFINITY;
    const smaller = fits ? undefined : this.largest(part, free);
    return [
      ...(turned ? [{ kind: 'turned', piece: turned.id } as const] : []),
      ...(fits ? [{ kind: 'longer cut', length: cut } as const] : []),
      ...(smaller ? [{ kind: 'smaller', ...smaller } as const] : []),
    ];
  }

  /** The largest size, by area, to which the part could be cut down on some piece. */
  private largest(part: Part, free: readonly Rack[]) {
    let best: Sides | undefined;
    for (const { sample, reaches } of this.openTo(part, free)) {
      const ways = waysToLie(part, mayTurn(part, sample));
      for (const reach of reaches) {
        const size = sizeThatFits(ways, reach, this.longestCut);
        if (size && (!best || areaOf(size) > areaOf(best))) best = size;
      }
    }
    return best;
  }

  /** The pieces as far as the part may reach into them. */
  private openTo(part: Part, racks: readonly Rack[]): Rack[] {
    const { longestCut } = this;
    return racks.map((rack) => {
      if (part.pin || !rack.sample.border) return rack;
      const reaches = rack.reaches.map((one) => ({
        ...one,
        height: canPart(one.piece, { longestCut }) ? reachOf(part, one.piece) : 0,
      }));
      return { ...rack, reaches };
    });
  }

  private roomFor(part: Part, placed: PlacedByDesign, racks: readonly Rack[]): Room {
    if (part.match === undefined) return () => Number.POSITIVE_INFINITY;
    const room = roomByDesign(
      part,
      this.labels.get(part.match)!,
      placed,
      new Set(racks.map(({ design }) => design)),
    );
    return (design) => room.get(design) ?? 0;
  }
}

/** More than these are too many to go and buy. */
const MOST_DESIGNS = 3;

/** More pieces than anyone has: what it takes where nothing does. */
const NEVER = 1e6;

function racksOf(pieces: readonly Piece[], used: readonly UsedPiece[]): Rack[] {
  const gone = new Map<string, number>();
  for (const { piece } of used) gone.set(piece, (gone.get(piece) ?? 0) + 1);
  const racks = new Map<string, Rack>();
  for (const piece of pieces) {
    const { design = '', kind, upright, keep, border = 0 } = piece;
    const key = [design, kind, upright, keep, border, edgesOf(piece).join()].join('|');
    const rack = racks.get(key) ?? { sample: piece, design, reaches: [] };
    const { width, height, copies = 1 } = piece;
    rack.reaches.push({ width, height, piece, left: copies - (gone.get(piece.id) ?? 0) });
    racks.set(key, rack);
  }
  return [...racks.values()].sort((one, other) => byKind(one) - byKind(other));
}

const byKind = ({ sample }: Rack): number => (sample.kind === 'sheet' ? 0 : 1);

function placedIn(pieces: readonly Piece[], used: readonly UsedPiece[]): Map<string, Map<string, number>> {
  const designs = new Map(pieces.map(({ id, design = '' }) => [id, design]));
  const placed = new Map<string, Map<string, number>>();
  for (const { piece, rectangles } of used) {
    const design = designs.get(piece)!;
    for (const { part } of rectangles) {
      const counts = placed.get(part) ?? new Map<string, number>();
      placed.set(part, counts.set(design, (counts.get(design) ?? 0) + 1));
    }
  }
  return placed;
}

function byDesign(racks: readonly Rack[]): Rack[][] {
  const groups = new Map<string, Rack[]>();
  for (const rack of racks) groups.set(rack.design, [...(groups.get(rack.design) ?? []), rack]);
  return [...groups.values()];
}
