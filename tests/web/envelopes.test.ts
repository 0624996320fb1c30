/** The envelopes page and taking paper from it, through the app as a browser asks it. */
import { beforeEach, describe, expect, test } from 'vitest';
import { inches } from '#shared/length.ts';
import { addCardSize } from '#stores/card-sizes.ts';
import { readProjectInFull } from '#stores/journal.ts';
import { binOffcut } from '#stores/movements.ts';
import { addOffcut, listOffcuts } from '#stores/offcuts.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, FIRST, fillShelf, scrap } from '#tests/support/cast.ts';
import { rowCounts, shelf } from '#tests/support/shelf.ts';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const ASKED = 'width=5+7/8&height=3';

async function page(query: string): Promise<string> {
  return (await app.get(`/envelopes?${query}`)).text();
}

const taking = (rest: Record<string, string> = {}) => ({
  width: '5 7/8',
  height: '3',
  bulk: '1/32',
  square: '7 1/2',
  start: '2 3/4',
  copies: '1',
  design: `${cast.fern.id}`,
  offcut: `${cast.corner.id}`,
  ...rest,
});

describe('the answer', () => {
  test('is one sentence with square and start, drawings, and the piece it can come from', async () => {
    const html = await page(ASKED);
    // Plane geometry, an inset of 7/16 in: (6⅛ + 3¼)/√2 + ⅞ = 7.504, and 3¼/√2 + 7/16 = 2.736, to the next eighth.
    expect(html).toContain('Square <strong>7½″</strong>, first notch at <strong>2¾″</strong>');
    expect(html).toContain('goes in easily');
    expect(html.match(/role="img"/g)!.length).toBeGreaterThanOrEqual(4);
    expect(html).toContain('Take it');
  });

  test('follows as she types: the fragment holds the answer and the notes, not the frame', async () => {
    const answer = await app.get(`/envelopes?${ASKED}`, { 'HX-Request': 'true' });
    const html = await answer.text();
    expect(answer.headers.get('Vary')).toContain('HX-Request');
    expect(html).toMatch(/^<section id="answer"/);
    expect(html).toContain('hx-swap-oob="true"');
    expect(html).not.toContain('<html');
  });

  test('going back in history gets the whole page', async () => {
    const answer = await app.get(`/envelopes?${ASKED}`, {
      'HX-Request': 'true',
      'HX-History-Restore-Request': 'true',
    });
    expect(await answer.text()).toContain('<html');
  });

  test('a limit on the outer size is kept by whichever fold can, without force', async () => {
    const html = await page(`${ASKED}&boxHeight=3+1/4`);
    expect(html).toMatch(/sits snugly|goes in easily/);
    expect(html).not.toContain('larger than you allow');
    // On a start that reads eighths the diagonal's pocket is 3.09 in (tight) or 3.27 in (too high): (p − m)√2.
    expect(html).toContain('One strip, ');
  });

  test('a print that must lie straight brings a straight fold', async () => {
    expect(await page(`${ASKED}&front=across`)).not.toContain('Square <strong>');
    expect(await page(`${ASKED}&front=diagonal`)).toContain('Square <strong>');
  });

  test('a strip that lies there comes before a square that opens a sheet', async () => {
    await binOffcut(app.db, cast.corner.id, { at: FIRST });
    await addOffcut(app.db, { design: cast.fern.id, offcut: scrap(7.25, 8), count: 1, at: FIRST });
    const html = await page(ASKED);
    expect(html).toContain('One strip, ');
    expect(html).toMatch(/Or <a[^>]*>Square [^<]*<\/a>, from a new sheet of/);
  });

  test('measures from a chart are tried beside the nearest better start', async () => {
    const html = await page('width=5+1/2&height=3+1/2&square=7+5/8&start=3+1/4&chart=yes');
    // Plane geometry, an inset of 7/16 in: 3¼ leaves (7⅝ − 3¼ − 7/16)√2 − 5½ = 0.07 in along the card, 3⅛ leaves 0.25.
    expect(html).toContain('goes in only tight');
    expect(html).toContain('Start 3⅛″ instead');
  });

  test('nothing large enough says what is missing and which smaller envelope would do', async () => {
    const html = await page('width=14&height=13');
    expect(html).toContain('Nothing on the shelf will do');
    expect(html).toContain('No paper on the shelf is large enough.');
    expect(html).toMatch(/comes nearest: [^<]*″/);
  });

  test('an upright print can lean four ways, a border comes to one of four corners', async () => {
    for (const design of [cast.hare, cast.hem]) {
      const html = await page(`${ASKED}&design=${design.id}`);
      expect(html.match(/<a href="[^"]*look=/g)).toHaveLength(4);
    }
  });
});

describe('what was typed off the grid', () => {
  test('is rounded to it, and she is told', async () => {
    const html = await page('width=6+1/3&height=3');
    // A third of an inch is 8.466… mm; 25 nm is the grid: 6⅓ in = 160.866 675 mm to the nearest.
    expect(html).toMatch(/id="width-note"[^>]*>read as 160\.866675 mm</);
    expect(await page('width=6.4&height=3')).not.toContain('read as');
  });
});

describe('bad input', () => {
  test.each([
    ['width=&height=3', 'width', 'Type a length'],
    ['width=0&height=3', 'width', 'more than zero'],
    ['width=-2&height=3', 'width', 'negative'],
    ['width=lots&height=3', 'width', 'isn’t a length'],
    ['width=5&height=99999', 'height', 'more than'],
    ['width=5&height=4&copies=0', 'copies', 'whole number'],
    ['width=5&height=4&copies=10000', 'copies', 'whole number'],
    ['width=5&height=4&square=8', 'start', 'first notch'],
    ['width=5&height=4&square=8&start=9', 'start', 'has to lie between'],
    ['width=5&height=4&square=8&start=x', 'start', 'isn’t a length'],
    ['width=5&height=4&cShape=straight&cDepth=99+in', 'cDepth', 'within'],
    ['width=5&width=6&height=4', 'width', 'came twice'],
  ])('%s: a message beside %s', async (query, field, message) => {
    const answer = await app.get(`/envelopes?${query}`);
    const html = await answer.text();
    expect(answer.status).toBe(422);
    const note = new RegExp(`id="${field}-note" class="problem"[^>]*>([^<]*)<`).exec(html);
    expect(note?.[1]).toContain(message);
  });

  test('a card larger than any paper and any tool is answered with warnings, not a fault', async () => {
    const html = await page('width=30&height=20');
    expect(html).toContain('larger than your tool takes');
  });
});

test('a fold that this tool can’t give this card is answered with one that can', async () => {
  const tool = { name: 'Bent', graduation: '1/8', largestSheet: '12', zeroOffset: '1' };
  expect((await app.post('/tools/notchers/1', tool)).status).toBe(303);
  for (const chosen of ['fold=diagonal', 'square=8&start=3', 'fold=diagonal&square=8&start=1/64']) {
    const answer = await app.get(`/envelopes?width=5+7/8&height=1/64&bulk=0&${chosen}`);
    expect([chosen, answer.status < 500]).toEqual([chosen, true]);
  }
});

describe('taking', () => {
  test('uses the piece, keeps its leftovers and opens the project with the recipe', async () => {
    const answer = await app.post('/cuts', taking());
    expect(answer.status).toBe(303);
    const id = Number(answer.headers.get('Location')!.split('/').pop());
    const full = (await readProjectInFull(app.db, id))!;
    expect(full.project.recipe!.blank.width).toBe(inches(7.5));
    expect(full.project.recipe!.starts[0]).toBe(inches(2.75));
    expect(full.envelopes).toHaveLength(1);
    // 8½ × 8½ less a square of 7½: both strips are under the keeping size.
    expect((await listOffcuts(app.db)).map(({ code }) => code)).not.toContain(cast.corner.code);
  });

  test('leftovers worth keeping lie on the shelf with a code', async () => {
    await app.post('/cuts', taking({ design: `${cast.hare.id}`, offcut: '' }));
    const left = (await listOffcuts(app.db)).filter(
      ({ design, id }) => design.id === cast.hare.id && id !== cast.lying.id,
    );
    // 12 × 12 less a square of 7½ leaves 4½ × 12 and 4½ × 7½ whichever cut comes first.
    expect(left.map(({ width, height }) => [width, height].sort((x, y) => x - y))).toEqual(
      expect.arrayContaining([
        [inches(4.5), inches(12)],
        [inches(4.5), inches(7.5)],
      ]),
    );
  });

  test('the second of two tabs is told, and nothing is written', async () => {
    await app.post('/cuts', taking());
    const before = [await rowCounts(app.db), await shelf(app.db)];
    const second = await app.post('/cuts', taking());
    expect(second.status).toBe(422);
    expect(await second.text()).toContain('isn’t there any more');
    expect([await rowCounts(app.db), await shelf(app.db)]).toEqual(before);
  });

  test('unknown paper or project is a page that helps', async () => {
    expect((await app.post('/cuts', taking({ design: '999' }))).status).toBe(404);
    expect((await app.post('/cuts', taking({ project: '999' }))).status).toBe(404);
  });

  test('an envelope of two pieces is planned, not taken from one', async () => {
    const two = { ...taking(), square: '', start: '', fold: 'two-piece' };
    const refused = await app.post('/cuts', two);
    expect(refused.status).toBe(422);
    expect(await refused.text()).toContain('takes two pieces');
    const begun = await app.post('/envelopes', two);
    const id = Number(/\/projects\/(\d+)\/plans\/new/.exec(begun.headers.get('Location')!)![1]);
    expect((await readProjectInFull(app.db, id))!.project.recipe!.fold).toBe('two-piece');
  });

  test('a form with nothing in it is asked again', async () => {
    expect((await app.post('/cuts', {})).status).toBe(422);
  });
});

describe('the other way round', () => {
  test('a piece answers with the largest card and those of her own that go in', async () => {
    await addCardSize(app.db, {
      name: 'Small',
      width: inches(2.5),
      height: inches(3.5),
      bulk: inches(1 / 32),
    });
    await addCardSize(app.db, { name: 'Large', width: inches(7), height: inches(5), bulk: inches(1 / 32) });
    const html = await (await app.get('/holding?width=5.5&height=9')).text();
    expect(html).toContain('A card up to');
    expect(html).toContain('Small');
    expect(html).not.toContain('Large');
  });

  test('a bad size is told beside its field', async () => {
    expect((await app.get('/holding?width=x&height=9')).status).toBe(422);
  });
});
