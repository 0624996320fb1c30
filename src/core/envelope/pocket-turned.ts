/** Whether a measured pocket was noted with its sides swapped. Knows the recipe it was folded to and no tool. */
import { inches, type Length } from '#shared/length.ts';
import { type Size, turned } from '#shared/size.ts';
import type { Recipe } from './recipe.ts';
import { insetFrom, pocketHeight, pocketWidth, zeroOffsetFrom } from './square.ts';

/** What a folded pocket may be off without a word: beyond hand work and a ruler in 32nds. */
const UNREMARKABLE = inches(1 / 8);

/** The measures really used; `twin` when the start was read from the other corner. */
interface AsMade {
  readonly square: Length;
  readonly start: Length;
  readonly twin: boolean;
}

/**
 * The pocket turned round, when it is off from what its measures should give, and turned it is
 * off by less than half as much; undefined when it is fine as noted.
 */
export function turnedPocket(recipe: Recipe, pocket: Size, asMade: AsMade): Size | undefined {
  const due = recipe.fold === 'diagonal' ? dueFrom(recipe, asMade) : recipe.pocket;
  const other = turned(pocket);
  return off(pocket, due) > UNREMARKABLE && 2 * off(other, due) < off(pocket, due) ? other : undefined;
}

interface Plain {
  readonly width: number;
  readonly height: number;
}

const off = (one: Plain, other: Plain): number =>
  Math.max(Math.abs(one.width - other.width), Math.abs(one.height - other.height));

/** The pocket of these measures on a tool that sets as the recipe takes it to. */
function dueFrom({ blank, starts, pocket }: Recipe, { square, start, twin }: AsMade): Plain {
  const inset = insetFrom(blank.width, pocket.width, pocket.height);
  const trueStart = start + zeroOffsetFrom(blank.width, starts[0], pocket.width, pocket.height);
  const due = { width: pocketWidth(square, trueStart, inset), height: pocketHeight(trueStart, inset) };
  return twin ? { width: due.height, height: due.width } : due;
}
