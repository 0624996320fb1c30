/**
 * Puts a drawing together so that no label touches another, runs through a line or leaves the picture: each label
 * comes with several places it could go, and gets the first that is free. Knows nothing of what is drawn.
 */
import type { Point } from '#core/geometry/point.ts';
import { crosses, overlap, within } from './boxes.ts';
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
  const lines: (readonly Point[])[] = [];

  const add = (...added: readonly Shape[]): void => {
    for (const shape of added) {
      shapes.push(shape);
      if (shape.kind === 'label') labels.push(shape);
      if (shape.kind === 'line' && isStrong(shape)) lines.push(shape.points);
    }
  };
  const freeOfLabels = (candidate: readonly Shape[]): boolean =>
    labelsOf(candidate).every(
      (one, index, own) =>
        within(width, height, one) &&
        ![...labels, ...own.slice(0, index)].some((other) => overlap(one, other)),
    );
  const freeOfLines = (candidate: readonly Shape[]): boolean =>
    labelsOf(candidate).every((one) => !lines.some((points) => crosses(points, one))) &&
    linesOf(candidate).every((one) => !labels.some((other) => crosses(one.points, other)));

  return {
    add,
    settle(candidates) {
      let chosen: readonly Shape[] | undefined;
      for (const candidate of candidates) {
        if (!freeOfLabels(candidate)) continue;
        chosen ??= candidate;
        if (!freeOfLines(candidate)) continue;
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
