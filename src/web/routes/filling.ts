/** "What can I get out of this one?": one piece filled with the maker's cards, their envelopes and parts typed in. */
import { Hono } from 'hono';
import { type Child, jsx } from 'hono/jsx';
import {
  type Amount,
  filledWith,
  fillPart,
  type Offers,
  offersFrom,
  ownSizes,
  type Wanted,
  whyNot,
} from '#core/batch/filling.ts';
import { toPiece } from '#core/batch/to-order.ts';
import type { Fill } from '#core/cutting/one-piece/fill.ts';
import { type Piece, pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import type { Problem } from '#shared/checked.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { type FillingTyped, fillingForm } from '#shared/schemas/filling.ts';
import { partsIn } from '#shared/schemas/plan.ts';
import { listCardSizes } from '#stores/card-sizes.ts';
import { readDesign } from '#stores/designs.ts';
import { readOffcut } from '#stores/offcuts.ts';
import { FillAnswer, TooBusy } from '#views/filling/answer.tsx';
import { FillingPage } from '#views/filling/page.tsx';
import { settingIn } from '../gather/envelope-asked.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readQuery, type Typed, tellRounding } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { reply } from '../http/reply.ts';

export const filling = new Hono<Env>();

/** How long is looked for a fill, and how long a reader waits for her turn. */
const FILL_MS = 1000;
const PATIENCE_MS = 8000;

filling.get('/', async (c) => {
  const query = readQuery(c);
  const piece = await pieceAsked(c, query);
  if (!piece) return notFound(c);
  const offers = await offersOf(c, piece);
  const fresh = query.goal === undefined;
  const typed = fresh ? { ...query, ...atFirst(offers) } : query;
  const asked = check(fillingForm(c.get('units')), typed);
  if (!asked.ok) return show(c, { piece, offers, typed, problems: asked.problems });
  const goods = goodsOf(asked.value, offers, c.get('units'));
  if (goods.length === 0) return show(c, { piece, offers, typed, problems: fresh ? [] : [NOTHING_ASKED] });
  const { goal } = asked.value;
  const fill = await fillFor(c, piece, goods, goal);
  if (fill === 'busy') return show(c, { piece, offers, typed, answer: jsx(TooBusy, {}), status: 503 });
  const answer = jsx(FillAnswer, {
    ...{ piece, goal, filled: filledWith(fill, piece, goods), units: c.get('units') },
    leftOut: goods.flatMap((wanted) => {
      const why = whyNot(wanted, piece);
      return why ? [{ wanted, why }] : [];
    }),
    longestCut: c.get('settings').longestCut,
  });
  return show(c, { piece, offers, typed, answer });
});

const NOTHING_ASKED: Problem = { field: '', message: 'Tick something, or type the size of a part.' };

/** `offcut=7`, or a sheet of `design=3`. */
async function pieceAsked(c: Request, { offcut, design }: Typed): Promise<Piece | undefined> {
  const id = Number(/^[1-9]\d{0,14}$/.exec(offcut ?? design ?? '')?.[0]);
  if (Number.isNaN(id)) return undefined;
  if (offcut === undefined) {
    const found = await readDesign(c.get('db'), id);
    return found && pieceOfSheet(found);
  }
  const found = await readOffcut(c.get('db'), id);
  return found && pieceOfOffcut(found);
}

async function offersOf(c: Request, piece: Piece): Promise<Offers> {
  const { notcher, limits } = await settingIn(c);
  const cards = await listCardSizes(c.get('db'));
  return offersFrom(piece, ownSizes(cards, { notcher, limits, fit: c.get('settings').wantedFit }));
}

/** Before she chooses: all the envelopes that come out of it, or else all the cards. */
function atFirst({ offers }: Offers): Typed {
  const envelopes = offers.filter(({ of }) => of === 'envelope');
  const ticked = envelopes.length > 0 ? envelopes : offers;
  return { goal: 'area', ...Object.fromEntries(ticked.map(({ id }) => [id, 'on'])) };
}

interface Good extends Wanted, Amount {}

/** A part without a name goes by its size; a tick on what does not come out of the piece is as good as none. */
function goodsOf({ own, parts }: FillingTyped, { offers }: Offers, units: Units): Good[] {
  const ticked = own.flatMap(({ of, card, most, wish }) => {
    const offer = offers.find(({ id }) => id === `${of}.${card}`);
    return offer ? [{ ...offer, wish, ...(most !== undefined && { most }) }] : [];
  });
  const typed = parts.map(({ name, print, most, ...part }, index) => ({
    ...part,
    id: `part ${index}`,
    of: 'part' as const,
    name: name || `piece of ${printExactSize(part, units)}`,
    upright: print === 'upright',
    ...(most !== undefined && { most }),
  }));
  return [...ticked, ...typed];
}

/** `busy` too where her turn does not come. */
async function fillFor(
  c: Request,
  piece: Piece,
  goods: readonly Good[],
  goal: FillingTyped['goal'],
): Promise<Fill | 'busy'> {
  const { longestCut, keepAtLeast } = c.get('settings');
  const asked = c.get('services').planner.fill({
    piece: { ...toPiece(piece), copies: 1 },
    parts: goods.map((one) => fillPart(one, one)),
    options: { goal, timeMs: FILL_MS, longestCut, keepAtLeast },
  });
  if (asked === 'busy') return asked;
  const fill = await patiently(asked.fill);
  if (fill === 'busy') asked.stop();
  return fill;
}

function patiently<T>(answer: Promise<T>): Promise<T | 'busy'> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<'busy'>((resolve) => {
    timer = setTimeout(resolve, PATIENCE_MS, 'busy');
  });
  return Promise.race([answer, tooLong]).finally(() => clearTimeout(timer));
}

interface Shown {
  readonly piece: Piece;
  readonly offers: Offers;
  readonly typed: Typed;
  readonly problems?: readonly Problem[];
  readonly answer?: Child;
  readonly status?: 503;
}

function show(
  c: Request,
  { piece, offers, typed, problems = [], answer = null, status }: Shown,
): Response | Promise<Response> {
  const units = c.get('units');
  const lengths = partsIn(typed).flatMap((row) => [`parts.${row}.width`, `parts.${row}.height`]);
  const entry = tellRounding(entryOf(typed, problems), lengths, units);
  return reply(c, {
    title: `What comes out of ${piece.offcut?.code ?? piece.design.name}?`,
    section: 'stash',
    body: jsx(FillingPage, { piece, offers, entry, units, answer }),
    status: status ?? (problems.length > 0 ? 422 : 200),
  });
}
