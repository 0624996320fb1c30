/**
 * A finished card described by its layers: what it weighs, how thick it is closed, and whether its fold runs with the
 * grain. Knows layers of paper and what holds them apart, but no card sizes, envelopes or stash.
 */
import { add, type Length, millimetres } from '#shared/length.ts';
import { addMass, type Mass, mass } from '#shared/mass.ts';
import type { Size } from '#shared/size.ts';
import { massOfCut } from './mass.ts';
import { type Paper, type Range, stacked, thicknessOf } from './thickness.ts';
import { gramsPerSquareMetre } from './weight.ts';

export interface Layer {
  readonly name: string;
  /** As cut: a folded base counts with its flat size. */
  readonly size: Size;
  readonly paper: Paper;
  /** How many leaves of it lie on one another when the card is closed: 2 for a folded base. */
  readonly leaves?: number;
  /** Foam tape, a knot, a charm: what it adds at its thickest, beyond the paper. */
  readonly raisedBy?: Length;
  /** The mass of what is no paper: ribbon, charm, tape. */
  readonly extra?: Mass;
  /** The grain runs along this side of the cut piece. */
  readonly grain?: 'width' | 'height';
  /** For a folded layer: the fold runs along this side. */
  readonly fold?: 'width' | 'height';
}

export interface Layered {
  /** Where all layers lie on one another. */
  readonly bulk: Range;
  readonly mass: Mass;
  /** Something stands up from it: it's no longer flat to the post. */
  readonly lumps: boolean;
  readonly notes: readonly string[];
}

/** Sums the layers from bottom to top. Throws on no layers at all. */
export function describeLayers(layers: readonly Layer[]): Layered {
  if (layers.length === 0) throw new Error('invalid card: no layers');
  const ranges = layers.map(layerBulk);
  return {
    bulk: { least: add(...ranges.map((one) => one.least)), most: add(...ranges.map((one) => one.most)) },
    mass: addMass(
      ...layers.map((layer) => addMass(massOfCut(layer.size, layer.paper.weight), layer.extra ?? mass(0))),
    ),
    lumps: layers.some((layer) => (layer.raisedBy ?? 0) > FLAT),
    notes: layers.flatMap(foldNotes),
  };
}

/** Foam tape of a millimetre still lies flat; a bow doesn't. A choice of ours: no published limit. */
const FLAT = millimetres(1);

/** Guides disagree between 0.005 and 0.006 in, and on about 120 g/m². */
const SCORE_FROM_GRAMS = 120;

function layerBulk(layer: Layer): Range {
  const paper = stacked(thicknessOf(layer.paper), layer.leaves ?? 1);
  const raised = layer.raisedBy ?? millimetres(0);
  return { least: add(paper.least, raised), most: add(paper.most, raised) };
}

function foldNotes(layer: Layer): string[] {
  if (!layer.fold) return [];
  return [grainNote(layer), scoreNote(layer)].filter((note) => note !== undefined);
}

function grainNote({ name, grain, fold }: Layer): string {
  if (!grain) return `${name}: find the grain (it bends more easily along it) and fold along it.`;
  if (grain === fold) return `${name}: the fold runs along the grain. Good.`;
  return `${name}: the fold runs across the grain and may crack. Cut it turned, or score it deeper.`;
}

const scoreNote = ({ name, paper }: Layer): string | undefined =>
  gramsPerSquareMetre(paper.weight) < SCORE_FROM_GRAMS
    ? undefined
    : `${name}: score before folding, with the bead inside.`;
