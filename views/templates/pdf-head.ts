/** The head of each printed page: two bars to check the size by, and in words what the page is and how to use it. */
import { MARGIN, OVERLAP } from '#core/drawing/tiling.ts';
import { inches, millimetres, printLength, type Units } from '#shared/length.ts';
import type { TemplatePage } from './pdf.ts';
import { FAINT, FIGURES, INK, points, WIDTH } from './pdf-ink.ts';

/** Bars at the left, words at the right; below the bars how to join the pages, where there are several. */
export function drawHead(doc: PDFKit.PDFDocument, page: TemplatePage, units: Units): void {
  drawBar(doc, points(millimetres(5)), points(millimetres(100)), '100 mm');
  drawBar(doc, points(millimetres(13)), BARS, '4 in');
  drawWords(doc, page);
  if (page.tiling.tiles.length > 1) {
    drawMap(doc, page);
    drawJoining(doc, page, units);
  }
}

const EDGE = points(MARGIN);
const BARS = points(inches(4));
const GAP = points(millimetres(6));
const TICK = points(millimetres(1.5));
const BELOW_BARS = EDGE + points(millimetres(16.5));
const TYPE = 8;
const TITLE = 11;
const LINE = 10;

/** Measured from the middle of one tick to the middle of the other. */
function drawBar(doc: PDFKit.PDFDocument, down: number, length: number, name: string): void {
  const y = EDGE + down;
  doc.lineWidth(WIDTH.bar).strokeColor(INK).fillColor(INK);
  doc
    .moveTo(EDGE, y)
    .lineTo(EDGE + length, y)
    .stroke();
  for (const end of [EDGE, EDGE + length]) {
    doc
      .moveTo(end, y - TICK)
      .lineTo(end, y + TICK)
      .stroke();
  }
  const centred = { width: length, align: 'center', baseline: 'bottom', features: FIGURES } as const;
  doc.fontSize(TYPE).text(name, EDGE, y - TICK, centred);
}

function drawWords(doc: PDFKit.PDFDocument, { template, tiling, tile, before, total }: TemplatePage): void {
  const left = EDGE + BARS + GAP;
  const width = points(tiling.page.width) - EDGE - left;
  const number = before + tile.row * tiling.columns + tile.column + 1;
  const title = total === 1 ? template.name : `${template.name} · page ${number} of ${total}`;
  const set = { features: FIGURES, lineBreak: false };
  doc.fillColor(INK).fontSize(TITLE).text(title, left, EDGE, set);
  paragraph(doc, [template.words, ...SAYINGS].join(' '), { left, top: EDGE + TITLE + 4, width });
}

const SAYINGS = [
  'Print at actual size (100\u00a0%, not “fit to page”) and measure both bars before you cut.',
  'Cut the solid lines, score the dashed ones in order, glue where it is grey.',
  'Cut on a mat along a steel ruler, fingers away from the blade.',
];

function paragraph(
  doc: PDFKit.PDFDocument,
  text: string,
  { left, top, width }: { left: number; top: number; width: number },
): void {
  doc.fillColor(INK).fontSize(TYPE);
  const lineGap = LINE - doc.currentLineHeight(true);
  doc.text(text, left, top, { width, features: FIGURES, lineGap });
}

const MAP_HEIGHT = points(millimetres(7));

const cellOf = ({ tiling }: TemplatePage): number => MAP_HEIGHT / Math.max(2, tiling.rows);

/** The pages as they lie, this one filled. */
function drawMap(doc: PDFKit.PDFDocument, page: TemplatePage): void {
  const [cell, { tile, tiling }] = [cellOf(page), page];
  const left = EDGE + BARS - tiling.columns * cell;
  doc.lineWidth(WIDTH.faint).strokeColor(INK);
  for (const { column, row } of tiling.tiles) {
    const drawn = doc.rect(left + column * cell, BELOW_BARS + row * cell, cell, cell);
    if (column === tile.column && row === tile.row) drawn.fillAndStroke(FAINT, INK);
    else drawn.stroke();
  }
}

function drawJoining(doc: PDFKit.PDFDocument, page: TemplatePage, units: Units): void {
  const width = BARS - page.tiling.columns * cellOf(page) - GAP;
  const text = `Pages overlap by ${printLength(OVERLAP, units)}. Trim the later one along its dotted edge, lay it on the earlier one so that the crosses meet, and tape.`;
  paragraph(doc, text, { left: EDGE, top: BELOW_BARS, width });
}
