/**
 * How each role of line, area and label is inked: presentation attributes, so that a picture stands alone in print;
 * on the page diagrams.css may say otherwise through the classes. Knows no shapes.
 */
import type { AreaRole, LabelRole, LineRole } from '#core/drawing/drawing.ts';

type Attributes = Readonly<Record<string, string | number>>;

export const INK = '#2b2622';
export const ACCENT = '#a8432f';
export const SHEET = '#fffdf8';
const FAINT = '#8c8072';
const GLUE = '#ecd3a4';

export const FONT = 'system-ui, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif';

export const LINES: Record<LineRole, Attributes> = {
  outline: { stroke: INK, 'stroke-width': 1.6 },
  score: { stroke: INK, 'stroke-width': 1.3, 'stroke-dasharray': '7 4' },
  crease: { stroke: FAINT, 'stroke-width': 1 },
  card: { stroke: INK, 'stroke-width': 1.2, 'stroke-dasharray': '2 3' },
  hidden: { stroke: FAINT, 'stroke-width': 1, 'stroke-dasharray': '4 3' },
  dimension: { stroke: INK, 'stroke-width': 0.8 },
  witness: { stroke: FAINT, 'stroke-width': 0.6 },
  tick: { stroke: INK, 'stroke-width': 1.4 },
  arrow: { stroke: INK, 'stroke-width': 1.3 },
  cross: { stroke: FAINT, 'stroke-width': 0.6 },
};

/** `hatch` and `cross` are patterns of the picture, named by the renderer. */
export const AREAS: Record<AreaRole, Attributes & { readonly pattern?: 'hatch' | 'cross' | 'stipple' }> = {
  paper: { fill: SHEET, stroke: INK, 'stroke-width': 1.6 },
  inside: { fill: '#f1e6d2', stroke: INK, 'stroke-width': 1.2 },
  flap: { fill: SHEET, stroke: INK, 'stroke-width': 1.2 },
  glue: { pattern: 'stipple', stroke: 'none' },
  trim: { pattern: 'hatch', stroke: INK, 'stroke-width': 1 },
  card: { fill: SHEET, stroke: INK, 'stroke-width': 1.2 },
  gap: { fill: GLUE, stroke: 'none' },
  part: { fill: SHEET, stroke: INK, 'stroke-width': 1.2 },
  left: { pattern: 'hatch', stroke: INK, 'stroke-width': 1 },
  waste: { pattern: 'cross', stroke: 'none' },
  notch: { fill: ACCENT, stroke: ACCENT, 'stroke-width': 1 },
};

export const LABELS: Record<LabelRole, Attributes> = {
  dimension: { fill: INK },
  letter: { fill: INK, 'font-weight': 700 },
  name: { fill: INK, 'font-weight': 600 },
  note: { fill: INK },
  caption: { fill: INK },
  order: { fill: INK, 'font-weight': 700 },
};

/** What a weight changes: lit lines and areas in the accent and heavier, quiet ones pale. */
export const LIT_LINE: Attributes = { stroke: ACCENT, 'stroke-width': 2.4 };
export const LIT_EDGE: Attributes = { stroke: ACCENT, 'stroke-width': 2.2 };
export const LIT_FILL = '#f4dcd3';
export const LIT_LABEL: Attributes = { fill: ACCENT, 'font-weight': 700 };
export const QUIET: Attributes = { opacity: 0.5 };
export const QUIET_LABEL: Attributes = { fill: '#6b6257' };

/** Fillings that tell areas apart without colour; 6 units square. */
export const GLUE_TINT = GLUE;
export const FAINT_INK = FAINT;
