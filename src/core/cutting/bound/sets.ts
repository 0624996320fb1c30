/**
 * What matching costs any plan: the parts of a set come from one design, so each design's pieces limit the sets that it
 * gives. Knows one match label at a time, whatever else is cut; a bound on all is for bound.ts to make of it.
 */
import { fits, type Job, type Matching, type Stock } from '../search/job.ts';
import { bestPricings, leastSheets, leastUnplaced, type Pricing } from './pricing.ts';
import { priceTable } from './table.ts';

export interface SetBound {
  /** The parts of the label. */
  readonly parts: readonly number[];
  /** No plan leaves fewer of their copies unplaced. */
  readonly unplaced: number;
  /** No plan that leaves so many of their copies opens less area of sheets, in grid units. */
  readonly sheetArea: (unplaced: number) => number;
}

// Untuned, taken as reasonable.
/** A few functions on a few sizes have to do: there may be many designs. */
const LIGHT = { sizes: 2, steps: 8, kept: 3, rooms: 128, tables: false };
/** With more sets than these, dividing them among the designs for the least area is not worth its time. */
const MOST_SETS = 60;
const SLACK = 1e-7;

/** One for each label, fewer when it is `late`. */
export function setBounds(job: Job, late: () => boolean): SetBound[] {
  return job.matchings.flatMap((matching) => {
    if (late()) return [];
    const sources = sourcesOf(job, matching.parts, late);
    return [matching.oneDesign ? wholeBound(job, matching, sources) : eachBound(job, matching, sources)];
  });
}

/** The pieces of one design, and the most copies of each part, by its index, that could be cut from them. */
interface DesignStock {
  readonly stocks: readonly Stock[];
  readonly caps: ReadonlyMap<number, number>;
  /** The same for its offcuts alone. */
  readonly spare: ReadonlyMap<number, number>;
  /** For parts that all fit. */
  readonly pricings: (parts: readonly number[]) => readonly Pricing[];
}

function sourcesOf(job: Job, parts: readonly number[], late: () => boolean): DesignStock[] {
  const most = parts.map((part) => mostCopies(job, part));
  const designs = new Map<string | undefined, Stock[]>();
  for (const stock of job.stocks) {
    if (!parts.some((part) => fits(job, part, stock))) continue;
    const { design } = job.papers[stock.paper]!;
    designs.set(design, [...(designs.get(design) ?? []), stock]);
  }
  const capsOf = (stocks: readonly Stock[]): Map<number, number> =>
    new Map(
      parts.map((part, index) => {
        const sum = stocks.reduce((sum, stock) => sum + stock.copies * most[index]!(stock), 0);
        return [part, Math.min(job.copies[part]!, sum)];
      }),
    );
  return [...designs.values()].map((stocks) => ({
    stocks,
    caps: capsOf(stocks),
    spare: capsOf(stocks.filter(({ sheet }) => !sheet)),
    pricings: (parts) => bestPricings(job, { parts, stocks }, late, LIGHT),
  }));
}

/** The most copies of one part that a piece could give if nothing else were cut from it. */
function mostCopies(job: Job, part: number): (stock: Stock) => number {
  const [wide, high] = [job.width[part]!, job.height[part]!];
  const { pin } = job.parts[part]!;
  const able = job.stocks.filter((stock) => fits(job, part, stock));
  const either = [
    { width: wide, height: high, price: 1 },
    { width: high, height: wide, price: 1 },
  ];
  const turning = able.filter(({ paper }) => job.papers[paper]!.lies[part] === 2);
  const table =
    turning.length > 0
      ? priceTable(
          either,
          largest(turning.map(({ width }) => width)),
          largest(turning.map(({ height }) => height)),
        )
      : undefined;
  return (stock) => {
    if (!fits(job, part, stock)) return 0;
    const { width, height, area, paper } = stock;
    if (pin) {
      if (!('edge' in pin)) return 1;
      const level = pin.edge === 'top' || pin.edge === 'bottom';
      return level ? Math.floor(width / wide) : Math.floor(height / high);
    }
    if (job.papers[paper]!.lies[part] !== 2) return Math.floor(width / wide) * Math.floor(height / high);
    return table ? table(width, height) : Math.floor(area / (wide * high));
  };
}

const largest = (numbers: readonly number[]): number => numbers.reduce((most, one) => Math.max(most, one), 0);

/** All copies from one design: the best of the designs, each bounded alone. */
function wholeBound(job: Job, { parts }: Matching, sources: readonly DesignStock[]): SetBound {
  const choices = sources.map(({ stocks, caps, pricings }) => {
    const fitting = parts.filter((part) => caps.get(part)! > 0);
    const copies = fitting.map((part) => job.copies[part]!);
    const priced = pricings(fitting);
    const lost = sumOf(parts, (part) => (caps.get(part)! > 0 ? 0 : job.copies[part]!));
    const over = sumOf(fitting, (part) => job.copies[part]! - caps.get(part)!);
    const unplaced = lost + Math.max(over, ...priced.map((one) => leastUnplaced(one, copies, stocks)));
    const sheetArea = (left: number): number =>
      largest(priced.map((one) => leastSheets(one, copies, stocks, left - lost)));
    return { unplaced, sheetArea };
  });
  const all = sumOf(parts, (part) => job.copies[part]!);
  return {
    parts,
    unplaced: choices.reduce((least, one) => Math.min(least, one.unplaced), all),
    sheetArea: remembered((left) => {
      const open = choices.filter(({ unplaced }) => unplaced <= left);
      const least = open.reduce((least, one) => Math.min(least, one.sheetArea(left)), Number.MAX_VALUE);
      return open.length > 0 && left < all ? least : 0;
    }),
  };
}

/** Set by set: of the parts with as many copies as some part and more, as many sets as that one has copies. */
function eachBound(job: Job, { parts }: Matching, sources: readonly DesignStock[]): SetBound {
  const levels = parts.flatMap((part, from) =>
    from > 0 && job.copies[parts[from - 1]!] === job.copies[part]
      ? []
      : [level(job, parts.slice(from), sources)],
  );
  return {
    parts,
    unplaced: largest(levels.map((one) => one.unplaced)),
    sheetArea: remembered((left) => largest(levels.map((one) => one.sheetArea(left)))),
  };
}

function level(job: Job, parts: readonly number[], sources: readonly DesignStock[]): Omit<SetBound, 'parts'> {
  const sets = job.copies[parts[0]!]!;
  const yields = sources.map((source) => yieldOf(parts, source, sets));
  return {
    unplaced: parts.length * sets - mostPlaced(yields, parts.length, sets),
    sheetArea: (left) => leastArea(yields, sets - left),
  };
}

/** What one design may give of so many sets. */
interface Yield {
  /** The most sets that are complete. */
  readonly whole: number;
  /** The most copies out of so many sets: it grows by ever less. */
  readonly most: (sets: number) => number;
  /** The least area of sheets for so many complete sets. */
  readonly area: (sets: number) => number;
}

function yieldOf(parts: readonly number[], source: DesignStock, sets: number): Yield {
  const { stocks, caps, spare, pricings } = source;
  const fitting = parts.every((part) => caps.get(part)! > 0);
  const priced = fitting ? pricings(parts) : [];
  const sheets = priced.map(({ prices, holds }) => ({
    prices,
    holds: holds.map((most, at) => (stocks[at]!.sheet ? most : 0)),
  }));
  const whole = fitting
    ? Math.min(sets, ...parts.map((part) => caps.get(part)!), ...priced.map((one) => setsHeld(one, stocks)))
    : 0;
  return {
    whole,
    most: (many) =>
      Math.min(
        sumOf(parts, (part) => Math.min(many, caps.get(part)!)),
        many * (parts.length - 1) + Math.min(many, whole),
      ),
    area: (many) => {
      const all = parts.map(() => many);
      const beyond = parts.map((part) => Math.max(0, many - spare.get(part)!));
      return largest([
        ...priced.map((one) => leastSheets(one, all, stocks, 0)),
        ...sheets.map((one) => leastSheets(one, beyond, stocks, 0)),
      ]);
    },
  };
}

function setsHeld({ prices, holds }: Pricing, stocks: readonly Stock[]): number {
  const set = prices.reduce((sum, price) => sum + price, 0);
  const held = stocks.reduce((sum, stock, at) => sum + holds[at]! * stock.copies, 0);
  return set > 0 ? Math.floor(held / set + SLACK) : Number.MAX_SAFE_INTEGER;
}

/** Sets are given one by one to the design of which one more gives most. */
function mostPlaced(yields: readonly Yield[], parts: number, sets: number): number {
  const steps = new Array<number>(parts + 1).fill(0);
  for (const { most } of yields) {
    for (let many = 1; many <= sets; many += 1) {
      const more = most(many) - most(many - 1);
      if (more <= 0) break;
      steps[more]! += 1;
    }
  }
  let [left, placed] = [sets, 0];
  for (let more = parts; more > 0; more -= 1) {
    const many = Math.min(left, steps[more]!);
    placed += many * more;
    left -= many;
  }
  return placed;
}

/** So many complete sets, divided among the designs in every way. */
function leastArea(yields: readonly Yield[], sets: number): number {
  if (sets <= 0 || sets > MOST_SETS) return 0;
  let least = new Float64Array(sets + 1).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  for (const { whole, area } of yields) {
    const next = least.slice();
    for (let many = 1; many <= Math.min(whole, sets); many += 1) {
      const more = area(many);
      for (let to = many; to <= sets; to += 1) next[to] = Math.min(next[to]!, least[to - many]! + more);
    }
    least = next;
  }
  return least[sets]! < Number.POSITIVE_INFINITY ? least[sets]! : 0;
}

function remembered(reckon: (left: number) => number): (left: number) => number {
  const known = new Map<number, number>();
  return (left) => {
    const at = Math.max(0, left);
    const value = known.get(at) ?? reckon(at);
    known.set(at, value);
    return value;
  };
}

const sumOf = (parts: readonly number[], of: (part: number) => number): number =>
  parts.reduce((sum, part) => sum + of(part), 0);
