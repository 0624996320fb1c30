/**
 * Puts a drawing together so that no label touches another, runs through a line or leaves the picture: each label
 * comes with several places it could go, and gets the first that is free. Knows nothing of what is drawn.
 */
import { type Box, boxOf, crosses, overlap, type Run, runOf, within } from './boxes.ts';
import type { Drawing, Label, Line, Shape } from './drawing.ts';

export interface Composition {
  add(...shapes: readonly Shape[]): void;
  /**
   * Adds the first candidate whose labels are free of labels and lines, else the first free of labels alone, else
   * nothing. Tells whether one was added.
   */
  settle(candidates: readonly (readonly Shape[])[]): boolean;
  finish(title: string, words: string): Drawing;
}

export function compose(width: number, height: number): Composition {
  const shapes: Shape[] = [];
  const labels: Label[] = [];
  const boxes: Box[] = [];
  const runs: Run[] = [];

  const add = (...added: readonly Shape[]): void => {
    shapes.push(...added);
    labels.push(...labelsOf(added));
    boxes.push(...labelsOf(added).map(boxOf));
    runs.push(...linesOf(added).filter(isStrong).map(runOf));
  };
  const freeOfLabels = (own: readonly Box[]): boolean =>
    own.every(
      (one, index) =>
        within(width, height, one) &&
        !boxes.some((other) => overlap(one, other)) &&
        !own.slice(0, index).some((other) => overlap(one, other)),
    );
  const freeOfLines = (candidate: readonly Shape[], own: readonly Box[]): boolean =>
    own.every((box) => !runs.some((run) => crosses(run, box))) &&
    linesOf(candidate)
      .map(runOf)
      .every((run) => !boxes.some((box) => crosses(run, box)));

  return {
    add,
    settle(candidates) {
      let chosen: readonly Shape[] | undefined;
      for (const candidate of candidates) {
        const own = labelsOf(candidate).map(boxOf);
        if (!freeOfLabels(own)) continue;
        chosen ??= candidate;
        if (!freeOfLines(candidate, own)) continue;
        chosen = candidate;
        break;
      }
      if (chosen) add(...chosen);
      return chosen !== undefined;
    },
    finish: (title, words) => ({
      title,
      words,
      width,
      height,
      shapes: [...shapes.filter(notLabel), ...labels],
    }),
  };
}

const WEAK = new Set(['witness', 'crease']);

/** A line that would spoil a word it ran through. */
const isStrong = (shape: Line): boolean => !WEAK.has(shape.role);

const labelsOf = (shapes: readonly Shape[]): Label[] => shapes.filter((shape) => shape.kind === 'label');

const linesOf = (shapes: readonly Shape[]): Line[] => shapes.filter((shape) => shape.kind === 'line');

const notLabel = (shape: Shape): boolean => shape.kind !== 'label';
