/** The other way round: from a piece of paper to the cards that an envelope folded from it would hold. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { cardsHeld, largestCard } from '#core/envelope/holds.ts';
import type { Length } from '#shared/length.ts';
import { WANTED_FITS, type WantedFit } from '#shared/outcome.ts';
import { holdingForm } from '#shared/schemas/holding.ts';
import { listCardSizes } from '#stores/card-sizes.ts';
import { Held, HoldingPage } from '#views/envelopes/holding.tsx';
import { settingIn } from '../gather/envelope-asked.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readQuery, tellRounding } from '../http/form.ts';
import { reply } from '../http/reply.ts';

export const holding = new Hono<Env>();

holding.get('/', async (c) => {
  const typed = readQuery(c);
  const units = c.get('units');
  const { wantedFit } = c.get('settings');
  const asked = typed.width || typed.height ? check(holdingForm(units, wantedFit), typed) : undefined;
  const problems = asked && !asked.ok ? asked.problems : [];
  const entry = tellRounding(entryOf(typed, problems), ['width', 'height'], units);
  const held = asked?.ok && (await heldBy(c, asked.value));
  const answer = held ? jsx(Held, { units, ...held }) : null;
  const fit = WANTED_FITS.find((one) => one === typed.fit) ?? wantedFit;
  const body = jsx(HoldingPage, { units, entry, fit, answer });
  return reply(c, {
    title: 'What would it hold?',
    section: 'envelopes',
    body,
    status: asked?.ok === false ? 422 : 200,
  });
});

async function heldBy(c: Request, asked: { width: Length; height: Length; fit: WantedFit }) {
  const db = c.get('db');
  const { notcher, limits } = await settingIn(c);
  const piece = { width: asked.width, height: asked.height };
  const question = { piece, notcher, limits, fit: asked.fit };
  return {
    piece,
    largest: largestCard(question),
    cards: cardsHeld(await listCardSizes(db), question),
  };
}
