/** The shopping list, and a year's page: what they say of a small shelf. */
import { beforeAll, expect, test } from 'vitest';
import { takePiece } from '#stores/cuts.ts';
import { countSheets } from '#stores/movements.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later, SQUARE_8, THANKS } from '#tests/support/cast.ts';

let app: App;
let cast: Cast;
beforeAll(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
  const piece = { design: cast.white.id, offcut: null };
  const taking = { wanted: SQUARE_8, copies: 1, at: later(1) };
  for (const title of ['Supper', 'Thanks']) {
    await takePiece(app.db, { piece, ...taking, project: { ...THANKS, title } });
  }
  await countSheets(app.db, cast.white.id, { sheets: 3, at: later(2) });
});

const read = async (path: string): Promise<string> => {
  const answer = await app.get(path);
  expect(answer.status).toBe(200);
  return answer.text();
};

test('says what is low, what it was used for, where it came from and how long it lasts', async () => {
  const html = await read('/stash/shopping');
  const text = /<pre[^>]*>([^<]*)/.exec(html)![1]!;
  expect(text).toContain('White card\n  cardstock · 8½ × 11″ · 216 g/m²; 3 sheets left.');
  expect(text).toContain('From: a birthday');
  expect(text).toContain('Used for: Thanks, Supper.');
  expect(text).toContain('About 3 more batches at your pace: about 1 sheet for each.');
  expect(html).toMatch(/<button[^>]*data-copies="shopping-text"[^>]*hidden/);
});

test('names the parts that a plan found no paper for', async () => {
  const part = {
    'parts.0.name': 'Poster',
    'parts.0.width': '11',
    'parts.0.height': '8',
    'parts.0.copies': '20',
  };
  const asked = { do: 'plan', blanks: '0', paper: `design-${cast.white.id}`, ...part };
  expect((await app.post('/projects/2/plans', asked)).status).toBe(303);
  await app.get('/plans/1');
  const html = await read('/stash/shopping');
  expect(html).toContain('Paper for Thanks');
  expect(html).toMatch(/7 × Poster, 11 × 8″ each, found no room on the shelf\./);
});

test('a year is drawn and stands in tables', async () => {
  const html = await read('/year?of=2026');
  expect(html).toContain('Paper in 2026, month by month');
  expect(html.match(/<th>Month<\/th>/g)).toHaveLength(1);
  expect(html).toMatch(/<td>March<\/td><td class="number">\d/);
  expect(await read('/year?of=1999')).toContain('Nothing is in the ledger of this year.');
});
