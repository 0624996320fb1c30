/** The envelopes page and taking paper from it, through the app as a browser asks it. */
import { beforeEach, describe, expect, test } from 'vitest';
import { inches } from '#shared/length.ts';
import { addCardSize } from '#stores/card-sizes.ts';
import { readProjectInFull } from '#stores/journal.ts';
import { binOffcut } from '#stores/movements.ts';
import { addOffcut, listOffcuts } from '#stores/offcuts.ts';
import { addReadyMade } from '#stores/ready-made.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, FIRST, fillShelf, scrap, size } from '#tests/support/cast.ts';
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

/** What is told first and largest, without its markup. */
const headline = (html: string): string => /<h1[^>]*>(.*?)<\/h1>/s.exec(html)![1]!.replace(/<[^>]*>/g, '');

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
  test('says first how the card sits and which paper to take, with the button for it', async () => {
    const html = await page(ASKED);
    expect(headline(html)).toBe(`Goes in easily. Take ${cast.corner.code}, tray 1.`);
    expect(html.match(/role="img"/g)!.length).toBeGreaterThanOrEqual(4);
    const named = html.slice(html.indexOf('id="paper"'), html.indexOf('class="sheet flat"'));
    expect(named).toContain('Take it');
    expect(named).toContain(`name="offcut" value="${cast.corner.id}"`);
  });

  test('has the measures on the drawing, where they are used', async () => {
    const html = await page(ASKED);
    const drawing = html.slice(html.indexOf('id="flat-0-title"'));
    // Plane geometry, an inset of 7/16 in: (6⅛ + 3¼)/√2 + ⅞ = 7.504, and 3¼/√2 + 7/16 = 2.736, to the next eighth.
    expect(drawing.slice(0, drawing.indexOf('</svg>'))).toMatch(/>2¾″<[\s\S]*>7½″</);
    expect(headline(html)).not.toContain('″');
  });

  test('names the sheet to open where no offcut will do', async () => {
    await binOffcut(app.db, cast.corner.id, { at: FIRST });
    expect(headline(await page('card=5x7'))).toMatch(/^Goes in easily\. Open a sheet of (Fern|Hare|Hem)\.$/);
  });

  test('says for a batch what one piece gives, or where to begin', async () => {
    // Two squares of 7½ in come out of no sheet of 12 in, so three take three sheets.
    expect(headline(await page(`${ASKED}&copies=3&design=${cast.fern.id}`))).toBe(
      `Goes in easily. Plan the batch, beginning with ${cast.corner.code}, tray 1.`,
    );
    expect(headline(await page(`${ASKED}&copies=3&design=${cast.hare.id}`))).toBe(
      'Goes in easily. Open 3 sheets of Hare: they give all 3.',
    );
    expect(headline(await page(`card=2+1/2x2&copies=2&design=${cast.hare.id}`))).toMatch(
      /: it gives all 2\.$/,
    );
  });

  test('says what to look for where there is no paper at all', async () => {
    const empty = await openApp();
    const html = await (await empty.get(`/envelopes?${ASKED}`)).text();
    expect(headline(html)).toBe(
      'Goes in easily. There is no paper on the shelf yet: it takes a square of 7½″.',
    );
  });

  test('prints one pocket alike wherever it stands', async () => {
    const html = await page(ASKED);
    const table = /Pocket, inside<\/th><td>≈?([^<]*) × ([^<]*)″</.exec(html)!;
    for (const side of [table[1], table[2]]) {
      const drawn = html.match(new RegExp(`<text[^>]*>≈?${side}″<`, 'g')) ?? [];
      // On the flat sheet, and on the folded envelope's front and back.
      expect([side, drawn.length]).toEqual([side, 3]);
    }
  });

  test('follows as she types: the fragment holds the answer and the notes, not the frame', async () => {
    const answer = await app.get(`/envelopes?${ASKED}`, { 'HX-Request': 'true' });
    const html = await answer.text();
    expect(answer.headers.get('Vary')).toContain('HX-Request');
    expect(html).toMatch(/^<section id="answer"/);
    expect(html).toContain('<p id="told" hx-swap-oob="innerHTML">Goes in easily. Take');
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
    expect(headline(html)).toMatch(/Sits snugly|Goes in easily/);
    expect(html).not.toContain('larger than you allow');
    // On a start that reads eighths the diagonal's pocket is 3.09 in (tight) or 3.27 in (too high): (p − m)√2.
    expect(html).toContain('One strip lying flat');
  });

  test('a print that must lie straight brings a straight fold', async () => {
    expect(await page(`${ASKED}&front=across`)).not.toContain('The square on the tool');
    expect(await page(`${ASKED}&front=diagonal`)).toContain('The square on the tool');
  });

  test('a strip that lies there comes before a square that opens a sheet', async () => {
    await binOffcut(app.db, cast.corner.id, { at: FIRST });
    await addOffcut(app.db, { design: cast.fern.id, offcut: scrap(7.25, 8), count: 1, at: FIRST });
    const html = await page(ASKED);
    expect(html).toContain('One strip lying flat');
    expect(html).toMatch(/Or <a[^>]*>from one square<\/a>, from a new sheet of/);
  });

  test('measures from a chart are tried beside the nearest better start', async () => {
    const html = await page('width=5+1/2&height=3+1/2&square=7+5/8&start=3+1/4&chart=yes');
    // Plane geometry, an inset of 7/16 in: 3¼ leaves (7⅝ − 3¼ − 7/16)√2 − 5½ = 0.07 in along the card, 3⅛ leaves 0.25.
    expect(headline(html)).toMatch(/^Goes in only tight\./);
    expect(html).toContain('Start 3⅛″ instead');
  });

  test('nothing large enough says what would do and what comes nearest', async () => {
    const html = await page(`card=5+7/8x3&fold=diagonal&design=${cast.white.id}&square=8+3/4&start=3`);
    expect(headline(html)).toMatch(/Nothing left of White will do; a square of 8¾″ would\.$/);
    expect(html).toMatch(/comes nearest: [^<]*″/);
    expect(html).not.toContain('Take it');
  });

  test('what comes nearest is said with the border’s part in it', async () => {
    const html = await page(`width=9&height=5&square=11&start=4&design=${cast.hem.id}`);
    expect(html).toContain('Hem (12 × 12″, only 10½″ of it above its border) comes nearest: ½″ up and down');
  });

  test('names the paper that is left out with the reason, and what was bought with its own', async () => {
    // A square of 11 in lies on 12 × 12, but not on the 10½ in beside the border of Hem, nor on 8½ × 11 in.
    const html = await page('width=9&height=5&square=11&start=4&show=paper');
    expect(html).toMatch(/Left out: .*sheets of Hem.*\(too small beside the border\)/);
    expect(html).toMatch(/sheets of White \(too small\)/);
    expect(html).toContain('3 offcuts (too small)');
    expect(html).toContain('<strong>Fern</strong>');
    await addReadyMade(app.db, {
      envelope: { name: 'A2', ...size(4.375, 5.75), note: '' },
      ...{ count: 12, at: FIRST },
    });
    expect(await page('width=9&height=5&show=paper')).toContain(
      'Bought envelopes left out: A2 (the card won’t go in).',
    );
  });

  test('an upright print can lean four ways, a border comes to one of four corners', async () => {
    for (const design of [cast.hare, cast.hem]) {
      const html = await page(`${ASKED}&design=${design.id}&show=look`);
      expect(html.match(/<a href="[^"]*look=/g)).toHaveLength(4);
    }
  });
});

describe('the places beside the answer', () => {
  const live = (query: string) =>
    app
      .get(`/envelopes?${query}`, { 'HX-Request': 'true', 'HX-Target': 'div#more' })
      .then((one) => one.text());

  test('are links that lead there without script, one lit', async () => {
    const html = await page(ASKED);
    for (const name of ['paper', 'look', 'post'])
      expect(html).toMatch(new RegExp(`href="/envelopes\\?[^"]*show=${name}#more"`));
    expect(html.match(/<nav class="places[\s\S]*?<\/nav>/)![0].match(/aria-current="true"/g)).toHaveLength(1);
    expect(html).not.toContain('id="shelf"');
    expect(await page(`${ASKED}&show=paper`)).toContain('id="shelf"');
    expect(await page(`${ASKED}&show=post`)).toContain('Can it be posted?');
  });

  test('swap alone where scripts run, and what is typed next stays there', async () => {
    const html = await live(`${ASKED}&show=paper`);
    expect(html).toMatch(/^<div id="more"/);
    expect(html).toContain('<input type="hidden" id="show" name="show" value="paper" hx-swap-oob="true"/>');
    expect(await page(`${ASKED}&show=paper`)).toContain('id="show" name="show" value="paper"');
  });

  test('an address that names none, or one there is not, is answered with the measures', async () => {
    for (const query of [`${ASKED}&show=moon`, 'card=30x30&show=paper'])
      expect(await page(query)).toContain('data-shown="measures"');
  });

  test('other paper is turned over three pieces at a time, every one once', async () => {
    for (let one = 0; one < 8; one += 1)
      await addOffcut(app.db, { design: cast.fern.id, offcut: scrap(8 + one / 4, 9), count: 1, at: FIRST });
    const seen: string[] = [];
    let next: string | undefined = `/envelopes?${ASKED}&show=paper`;
    while (next) {
      const html: string = await (await app.get(next)).text();
      const part = html.slice(html.indexOf('id="shelf"'));
      seen.push(...[...part.matchAll(/id="piece-([^"]+)-title"/g)].map(([, id]) => id!));
      next = /href="([^"]*)#more"[^>]*>[^<]* more pieces? would do/.exec(part)?.[1]?.replaceAll('&amp;', '&');
    }
    // Eight more offcuts and the sheets of four designs, beside the corner that the headline names.
    expect([seen.length, new Set(seen).size]).toEqual([12, 12]);
  });

  test('all drawings and measures are there for paper, whatever is shown', async () => {
    for (const show of ['measures', 'paper', 'look', 'post', 'others']) {
      const html = await page(`${ASKED}&show=${show}`);
      expect([show, html.includes('id="flat-0-title"'), html.includes('id="folded-back-title"')]).toEqual([
        show,
        true,
        true,
      ]);
      expect(html).toContain('class="every"');
    }
  });
});

test('a refused form begins with what is wrong, where the cursor goes, and links to the fields', async () => {
  const html = await page('card=5x4&bulk=lots&copies=0');
  const summary = /<ul class="problems"[^>]*>[\s\S]*?<\/ul>/.exec(html)![0];
  expect(summary).toMatch(/tabindex="-1" autofocus/);
  expect(summary).toMatch(/href="#bulk"[\s\S]*href="#copies"/);
});

describe('what was typed off the grid', () => {
  test('is rounded to it, and she is told', async () => {
    const html = await page('card=6+1/3+x+3');
    // A third of an inch is 8.466… mm; 25 nm is the grid: 6⅓ in = 160.866 675 mm to the nearest.
    expect(html).toMatch(/id="card-note"[^>]*>read as 160\.866675 mm x 3</);
    expect(await page('card=6.4+x+3')).not.toContain('read as');
  });
});

describe('bad input', () => {
  test.each([
    ['card=5+x', 'card', 'Second side'],
    ['card=5', 'card', 'one side only'],
    ['card=0x3', 'card', 'more than zero'],
    ['card=lots+x+3', 'card', 'isn’t a length'],
    ['card=148+x+105', 'card', 'Type 148 x 105 mm if'],
    ['card=5x4&card=6x4', 'card', 'came twice'],
    ['width=&height=3', 'card', 'First side: Type a length'],
    ['width=lots&height=3', 'card', 'isn’t a length'],
    ['width=5&height=99999', 'card', 'Second side'],
    ['width=5&height=4&copies=0', 'copies', 'whole number'],
    ['width=5&height=4&copies=10000', 'copies', 'whole number'],
    ['width=5&height=4&square=8', 'start', 'first notch'],
    ['width=5&height=4&square=8&start=9', 'start', 'has to lie between'],
    ['width=5&height=4&square=8&start=x', 'start', 'isn’t a length'],
    ['width=5&height=4&cShape=straight&cDepth=99+in', 'cDepth', 'within'],
    ['width=5&height=4&cShape=rounded&cMore=9+in', 'cMore', 'radius'],
    ['width=5&height=4&dShape=tapered&dDepth=2&dMore=4', 'dMore', 'takes more than there is'],
    ['width=5&width=6&height=4', 'card', 'came twice'],
  ])('%s: a message beside %s', async (query, field, message) => {
    const answer = await app.get(`/envelopes?${query}`);
    const html = await answer.text();
    expect(answer.status).toBe(422);
    const note = new RegExp(`id="${field}-note" class="problem"[^>]*>([^<]*)<`).exec(html);
    expect(note?.[1]).toContain(message);
  });

  test('what was typed is still in its field', async () => {
    expect(await page('card=5+by+lots')).toMatch(/name="card"[^>]*value="5 by lots"/);
    expect(await page('width=lots&height=3')).toMatch(/name="card"[^>]*value="lots x 3"/);
  });
});

describe('an impossible answer', () => {
  // Plane geometry: a square round a pocket of 30 in and more is longer than (30 + 30)/√2 = 42.4 in.
  test('says first that the card is too large for the tool, and what she can do', async () => {
    const html = await page('card=30x30');
    expect(headline(html)).toBe('This envelope is too large for your tool.');
    expect(html).toMatch(/takes a square of 43[^;]*; your tool takes up to 12″/);
    expect(html).toContain('add a ruler and a scoring tool');
    const [smaller] = /\/envelopes\?width=[^"]*(?="[^>]*>[^<]*<\/a> is the largest that goes)/.exec(html)!;
    expect(headline(await (await app.get(smaller.replaceAll('&amp;', '&'))).text())).toMatch(
      /^Goes in easily/,
    );
    expect(html).not.toContain('Take it');
  });

  test('offers the fold that goes where another one was chosen', async () => {
    const html = await page('card=7x9&fold=diagonal');
    expect(headline(html)).toBe('This envelope is too large for your tool.');
    expect(html).toMatch(/<a href="[^"]*fold=two-piece[^"]*">Make it from two pieces</);
  });

  test('offers the start that goes where her own measures leave the card outside', async () => {
    const html = await page('card=5+1/2x3+1/2&square=7+5/8&start=3+1/2&chart=yes');
    expect(headline(html)).toBe('The card won’t go in.');
    expect(html).toMatch(/Use start 3⅛″ instead|Take an envelope that it goes into/);
  });
});

describe('one field for both sides', () => {
  test.each(['5+7/8+x+3', '5+7/8x3', '5.875+by+3', '149.225+x+76.2+mm'])(
    'reads %s as the links have it',
    async (card) => {
      expect(headline(await page(`card=${card}`))).toBe(headline(await page(ASKED)));
    },
  );

  test('A6 is a card of 105 × 148 mm', async () => {
    const html = await page('card=A6');
    // ISO 216.
    expect(html).toMatch(/name="width" value="105 mm"/);
    expect(html).toMatch(/name="height" value="148 mm"/);
  });

  test('shows in it what an older address asked', async () => {
    expect(await page(ASKED)).toMatch(/name="card"[^>]*value="5 7\/8 x 3"/);
    expect(await page('width=148+mm&height=105+mm')).toMatch(/name="card"[^>]*value="148 x 105 mm"/);
  });

  test.each(['5', '5+', '5+x', '5+x+', '4+3/', '5x7+1/', 'A', '148+x+105+m', 'half', ''])(
    'half typed, “%s” is no mistake while she types',
    async (card) => {
      const answer = await app.get(`/envelopes?card=${card}&copies=1&bulk=1/32`, { 'HX-Request': 'true' });
      expect(answer.status).toBe(200);
      expect(await answer.text()).not.toContain('class="problem"');
    },
  );

  test('half typed, the last answer stays and so does the address', async () => {
    const answer = await app.get('/envelopes?card=5+x', { 'HX-Request': 'true' });
    expect(answer.headers.get('HX-Replace-Url')).toBe('false');
    const html = await answer.text();
    expect(html).not.toContain('id="answer"');
    expect(html).toMatch(/id="card-note" class="hint unfinished"/);
  });

  test('the unit is asked about as she types, beside the field', async () => {
    const html = await (await app.get('/envelopes?card=148+x+105', { 'HX-Request': 'true' })).text();
    expect(html).toMatch(/id="card-note" class="hint unfinished"[^>]*>148 x 105 inches\? Type 148 x 105 mm/);
  });

  test.each(['lots', '5+x+lots', '5x7x9'])('“%s” is a mistake at once', async (card) => {
    const answer = await app.get(`/envelopes?card=${card}`, { 'HX-Request': 'true' });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toMatch(/id="card-note" class="problem"/);
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
