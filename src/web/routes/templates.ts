/** True-size templates as files: of an envelope asked for, of a project’s, and of the parts of a set. */
import { readFileSync } from 'node:fs';
import { Hono } from 'hono';
import { envelopeTemplates, partTemplate, type Template } from '#core/drawing/template.ts';
import { PAPERS, type PaperName } from '#core/drawing/tiling.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { workingMeasures } from '#core/project/working-measures.ts';
import { toInches, toMillimetres, type Units } from '#shared/length.ts';
import { envelopeForm } from '#shared/schemas/envelope.ts';
import { readSoFar } from '#stores/journal.ts';
import { templateSvg } from '#views/templates/svg.tsx';
import { findEnvelope } from '../gather/envelope-asked.ts';
import type { Env, Request } from '../http/env.ts';
import { readQuery } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { rowIn } from '../http/url.ts';
import { showEnvelopes } from './envelopes.ts';
import { partsAsked, showParts } from './parts.ts';

export const templates = new Hono<Env>();

/** Asked like the envelopes page, which also says what is wrong with the question. */
templates.get('/envelope/:file', async (c) => {
  const typed = readQuery(c);
  const found = await findEnvelope(c, envelopeForm, typed);
  if (!found.ok) return showEnvelopes(c, { typed, problems: found.problems });
  return sendEnvelope(c, found.value.fitting.recipe, 'envelope');
});

templates.get('/projects/:id/:file', async (c) => {
  const soFar = await rowIn(c, readSoFar);
  const working = soFar && workingMeasures(soFar);
  return working ? sendEnvelope(c, working.recipe, `project-${soFar.project.id}-envelope`) : notFound(c);
});

/** Asked like the page of the part, which also says what is wrong with the question. */
templates.get('/parts/:kind/:file', async (c) => {
  const asked = await partsAsked(c);
  if (!asked) return notFound(c);
  if (!asked.made.ok) return showParts(c, asked);
  const cut = asked.made.value.filter(({ material }) => material !== 'ribbon');
  if (cut.length === 0) return notFound(c);
  return sendTemplates(
    c,
    cut.map((part) => partTemplate(part, c.get('units'))),
    asked.kind,
  );
});

const sendEnvelope = (c: Request, recipe: Recipe, name: string): Promise<Response> =>
  sendTemplates(c, envelopeTemplates(recipe, c.get('units')), `${name}-${sizeWord(recipe, c.get('units'))}`);

/** `template.svg`, or a PDF named after the paper in the printer; anything else isn't here. */
async function sendTemplates(c: Request, made: readonly Template[], name: string): Promise<Response> {
  const file = c.req.param('file');
  if (file === 'template.svg') {
    return download(c, templateSvg(made), { type: 'image/svg+xml; charset=utf-8', name: `${name}.svg` });
  }
  const paper = Object.keys(PAPERS).find((one): one is PaperName => file === `${one}.pdf`);
  if (!paper) return notFound(c);
  const at = c.get('services').now();
  const { templatePdf } = await import('#views/templates/pdf.ts');
  const pdf = await templatePdf(made, { paper: PAPERS[paper], units: c.get('units'), font: FONT, at });
  return download(c, new Uint8Array(pdf), { type: 'application/pdf', name: `${name}-${paper}.pdf` });
}

/** WOFF, since pdfkit's font reader fails on parts of a WOFF2 font. */
const FONT = readFileSync(new URL('../../../views/assets/fonts/sans-400.woff', import.meta.url));

const download = (
  c: Request,
  body: string | Uint8Array<ArrayBuffer>,
  { type, name }: { type: string; name: string },
): Response =>
  c.body(body, 200, {
    'Content-Type': type,
    'Content-Disposition': `attachment; filename="${name}"`,
    'Cache-Control': 'no-store',
  });

/** The card's size for a file's name: `5.875x3in`, `149x76mm`. */
function sizeWord({ card }: Recipe, { unit }: Units): string {
  const inUnit = unit === 'in' ? toInches : toMillimetres;
  const decimals = unit === 'in' ? 3 : 0;
  const [width, height] = [card.width, card.height].map((side) => Number(inUnit(side).toFixed(decimals)));
  return `${width}x${height}${unit}`;
}
