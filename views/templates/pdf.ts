/**
 * Templates as a PDF to print at actual size: one page for each tile, under a head with check bars and words. Knows
 * no envelope; the type comes from the caller, since views read no files.
 */
import PDFDocument from 'pdfkit';
import { textWidth } from '#core/drawing/boxes.ts';
import type { Inscription } from '#core/drawing/inscription.ts';
import type { Template } from '#core/drawing/template.ts';
import { type Tile, type Tiling, tilingOf } from '#core/drawing/tiling.ts';
import type { Polygon } from '#core/geometry/point.ts';
import { millimetres, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { drawHead } from './pdf-head.ts';
import { FAINT, FIGURES, INK, PALE, points, TINT, WIDTH } from './pdf-ink.ts';

export interface Printing {
  readonly paper: Size;
  readonly units: Units;
  /** A TrueType font, as WOFF, with the numerals of fractions. */
  readonly font: Uint8Array;
  /** Written into the file as the time when it was made. */
  readonly at: Date;
}

/** Resolves to the file's bytes. */
export function templatePdf(templates: readonly Template[], printing: Printing): Promise<Buffer> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    displayTitle: true,
    info: { Title: templates[0]!.name, Creator: 'Creasebook', CreationDate: printing.at },
  });
  doc.registerFont('words', Buffer.from(printing.font));
  askForActualSize(doc);
  const parts = templates.map((template) => ({ template, tiling: tilingOf(template, printing.paper) }));
  const total = parts.reduce((sum, { tiling }) => sum + tiling.tiles.length, 0);
  let before = 0;
  for (const { template, tiling } of parts) {
    for (const tile of tiling.tiles) drawPage(doc, { template, tiling, tile, before, total }, printing);
    before += tiling.tiles.length;
  }
  return bytesOf(doc);
}

/** One tile of a template; its tiles are the pages after the first `before` of all. */
export interface TemplatePage {
  readonly template: Template;
  readonly tiling: Tiling;
  readonly tile: Tile;
  readonly before: number;
  readonly total: number;
}

/** Viewers then leave “fit to page” off in their print dialogs. pdfkit has no option for it, only this entry. */
function askForActualSize(doc: PDFKit.PDFDocument): void {
  const { _root } = doc as unknown as {
    _root: { data: { ViewerPreferences: { data: Record<string, unknown> } } };
  };
  _root.data.ViewerPreferences.data.PrintScaling = 'None';
}

function drawPage(doc: PDFKit.PDFDocument, page: TemplatePage, printing: Printing): void {
  const { width, height } = page.tiling.page;
  doc.addPage({ size: [points(width), points(height)], margin: 0 });
  doc.font('words');
  drawHead(doc, page, printing.units);
  doc.save();
  doc.translate(points(page.tile.onPage.x), points(page.tile.onPage.y));
  drawSeams(doc, page);
  clipTo(doc, page.tile);
  doc.translate(points(0 - page.tile.x), points(0 - page.tile.y));
  drawPiece(doc, page);
  doc.restore();
}

/** Where this page's tile ends and the next goes on. */
function drawSeams(doc: PDFKit.PDFDocument, { tile, tiling }: TemplatePage): void {
  const [width, height] = [points(tile.width), points(tile.height)];
  doc.lineWidth(WIDTH.faint).strokeColor(PALE).dash(1, { space: 2 });
  if (tile.column > 0) doc.moveTo(0, 0).lineTo(0, height).stroke();
  if (tile.column < tiling.columns - 1) doc.moveTo(width, 0).lineTo(width, height).stroke();
  if (tile.row > 0) doc.moveTo(0, 0).lineTo(width, 0).stroke();
  if (tile.row < tiling.rows - 1) doc.moveTo(0, height).lineTo(width, height).stroke();
  doc.undash();
}

/** A hair beyond the tile, so that lines along its edge keep their whole width. */
function clipTo(doc: PDFKit.PDFDocument, { width, height }: Tile): void {
  const hair = WIDTH.cut;
  doc.rect(-hair, -hair, points(width) + 2 * hair, points(height) + 2 * hair).clip();
}

function drawPiece(doc: PDFKit.PDFDocument, page: TemplatePage): void {
  const { cuts, scores, glue, labels } = page.template;
  for (const spot of glue) trace(doc, spot).fill(TINT);
  doc.lineWidth(WIDTH.cut).lineJoin('miter').strokeColor(INK);
  for (const cut of cuts) trace(doc, cut).stroke();
  doc.lineWidth(WIDTH.score).dash(5, { space: 3 });
  for (const { from, to } of scores) trace(doc, [from, to], false).stroke();
  doc.undash();
  drawMarks(doc, page);
  for (const label of labels) if (isShownOn(page, label)) drawLabel(doc, label);
}

function trace(doc: PDFKit.PDFDocument, [first, ...rest]: Polygon, closed = true): PDFKit.PDFDocument {
  doc.moveTo(points(first!.x), points(first!.y));
  for (const { x, y } of rest) doc.lineTo(points(x), points(y));
  return closed ? doc.closePath() : doc;
}

const ARM = points(millimetres(3));

/** A cross on both pages that show it, with their two numbers beside it. */
function drawMarks(doc: PDFKit.PDFDocument, { tile, tiling, before }: TemplatePage): void {
  const index = tile.row * tiling.columns + tile.column;
  doc.lineWidth(WIDTH.faint).strokeColor(INK).fillColor(INK);
  for (const { at, tiles } of tiling.marks.filter((mark) => mark.tiles.includes(index))) {
    const [x, y] = [points(at.x), points(at.y)];
    doc
      .moveTo(x - ARM, y)
      .lineTo(x + ARM, y)
      .stroke();
    doc
      .moveTo(x, y - ARM)
      .lineTo(x, y + ARM)
      .stroke();
    const pages = tiles.map((one) => one + before + 1).join('–');
    doc.fontSize(7).text(pages, x + 2, y + 2, { lineBreak: false, features: FIGURES });
  }
}

/** On the first tile that holds all of it; what none holds whole is left to the page's head. */
const isShownOn = ({ tile, tiling }: TemplatePage, label: Inscription): boolean =>
  tiling.tiles.find((one) => holds(one, label)) === tile;

function holds(tile: Tile, { at, text, size, turn }: Inscription): boolean {
  const [half, level] = [textWidth(text, size) / 2, Math.cos((turn * Math.PI) / 180) ** 2];
  const across = half * Math.sqrt(level) + size / 2;
  const down = half * Math.sqrt(1 - level) + size / 2;
  return (
    at.x - across >= tile.x &&
    at.x + across <= tile.x + tile.width &&
    at.y - down >= tile.y &&
    at.y + down <= tile.y + tile.height
  );
}

function drawLabel(doc: PDFKit.PDFDocument, { at, text, size, turn }: Inscription): void {
  const set = { lineBreak: false, features: FIGURES };
  doc.save().translate(points(at.x), points(at.y)).rotate(turn);
  doc.fontSize(points(size)).fillColor(FAINT);
  doc.text(text, -doc.widthOfString(text, set) / 2, 0, { ...set, baseline: 'middle' });
  doc.restore();
}

function bytesOf(doc: PDFKit.PDFDocument): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
    doc.end();
  });
}
