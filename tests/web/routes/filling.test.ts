/** What comes out of one piece, as a browser asks for it: the answer, the ways to ask otherwise, what is refused. */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { Planner } from '#core/cutting/planner.ts';
import type { CardSize } from '#core/project/journal.ts';
import { inches } from '#shared/length.ts';
import { addCardSize } from '#stores/card-sizes.ts';
import { binOffcut } from '#stores/movements.ts';
import { addOffcut } from '#stores/offcuts.ts';
import { editSettings } from '#stores/settings.ts';
import { type App, DIRECT, openApp } from '#tests/support/app.ts';
import { CARD, type Cast, FIRST, fillShelf, later, scrap, size } from '#tests/support/cast.ts';
import { rowCounts } from '#tests/support/shelf.ts';

let app: App;
let cast: Cast;
let note: CardSize;
let tag: CardSize;

const open = async (planner?: Planner): Promise<void> => {
  app = await openApp(planner);
  cast = await fillShelf(app.db);
  note = await addCardSize(app.db, { name: 'Desk note', ...CARD });
  tag = await addCardSize(app.db, { name: 'Gift tag', ...size(3, 2), bulk: inches(1 / 32) });
};

beforeEach(() => open());

const page = async (path: string): Promise<string> => (await app.get(path)).text();
const words = (html: string): string =>
  html
    .replace(/<svg.*?<\/svg>/gs, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/ ([.,:;?])/g, '$1');
const asking = (fields: Record<string, string>, of = `offcut=${cast.corner.id}`): Promise<Response> =>
  app.get(`/filling?${of}&${new URLSearchParams({ goal: 'area', ...fields })}`);
const answer = async (fields: Record<string, string>, of?: string): Promise<string> =>
  words(await (await asking(fields, of)).text());
const part = (fields: Record<string, string>, row = 0): Record<string, string> =>
  Object.fromEntries(Object.entries(fields).map(([field, value]) => [`parts.${row}.${field}`, value]));

describe('what comes out of a piece', () => {
  test('is answered at once for her envelopes, and reached from an offcut and a design', async () => {
    const offcut = `/filling?offcut=${cast.corner.id}`;
    expect(await page(`/offcuts/${cast.corner.id}`)).toContain(`href="${offcut}"`);
    expect(await page(`/designs/${cast.fern.id}`)).toContain(`href="/filling?design=${cast.fern.id}"`);
    const rows = await rowCounts(app.db);
    const shown = await page(offcut);
    expect(words(shown)).toContain('One Desk note envelope; nothing is waste.');
    expect(shown).toMatch(new RegExp(`name="envelope.${note.id}" checked`));
    expect(shown).toMatch(/<title id="filled-title">\w+ · 8½ × 8½″<\/title>/);
    expect(words(shown)).toContain('No way of cutting gives more.');
    expect(await rowCounts(app.db)).toEqual(rows);
  });

  test('leads on to the very envelope whose blank it is', async () => {
    const shown = await page(`/filling?offcut=${cast.corner.id}`);
    const onward = /href="(\/envelopes\?[^"]*)"[^>]*>Start from it/.exec(shown)![1]!.replaceAll('&amp;', '&');
    expect(onward).toContain(`design=${cast.fern.id}`);
    const blank = /Desk note envelope, ([^ ]+) × ([^ ]+″)/.exec(words(shown))!;
    const envelope = await app.get(onward);
    expect(envelope.status).toBe(200);
    expect(words(await envelope.text())).toContain(`${blank[1]}″`);
  });

  test('is counted, measured or wished for: 12 × 12 in gives 24 tags of 3 × 2, or 3 mats of 5 × 7 and tags', async () => {
    const sheet = `design=${cast.fern.id}`;
    const tags = { [`card.${tag.id}`]: 'on' };
    expect(await answer({ ...tags, goal: 'count' }, sheet)).toContain('24 Gift tags; nothing is waste.');
    const mats = part({ name: 'Mat', width: '5', height: '7', most: '3', wish: '9' });
    const both = await answer({ ...tags, ...mats, goal: 'wish', [`card.${tag.id}.wish`]: '1' }, sheet);
    expect(both).toMatch(/\w+ Gift tags and three Mats;|Three Mats/);
    expect(await answer({ ...tags, ...mats, goal: 'count' }, sheet)).toContain('24 Gift tags');
  });

  test('keeps to how many are wanted, names what is left, and says what is waste', async () => {
    await editSettings(app.db, { keepAtLeast: inches(1) });
    const shown = await answer(part({ name: 'Strip', width: '8 1/4', height: '3', most: '2' }));
    expect(shown).toContain('Two Strips; 2.1 % is waste.');
    expect(shown).toContain('8½ × 2½″ is left for the shelf.');
  });

  test('turns a part only where its print may lie any way', async () => {
    const lying = `offcut=${cast.lying.id}`;
    const tall = { name: 'Bookmark', width: '2', height: '9' };
    expect(await answer(part(tall), lying)).toContain('Two Bookmarks; nothing is waste.');
    const upright = await answer(part({ ...tall, print: 'upright' }), lying);
    expect(upright).toContain('Nothing of that comes out of it.');
    expect(upright).toContain('Too large for it: Bookmark.');
  });

  test('fills beside a border, and says what only the border is in the way of', async () => {
    const shown = await answer(
      {
        ...part({ name: 'Base', width: '8 1/2', height: '5 1/2' }),
        ...part({ name: 'Poster', width: '12', height: '11' }, 1),
      },
      `design=${cast.hem.id}`,
    );
    expect(shown).toContain('Two Bases;');
    expect(shown).toContain('Nothing carries the border: it stays in one length.');
    expect(shown).toContain('Too large beside its border: Poster.');
  });

  test('names parts without a name by their size', async () => {
    const one = part({ width: '8', height: '4' });
    expect(await answer(one)).toContain('2 × piece of 8 × 4″ (A)');
    const two = { ...one, ...part({ width: '8 1/2', height: '1/2', most: '1' }, 4) };
    expect(await answer(two)).toMatch(/Two pieces of 8 × 4″ and one piece of 8½ × ½″;/);
  });

  test('says which of her cards are too large for the piece, and asks for parts alone where all are', async () => {
    const strip = (await addOffcut(app.db, {
      design: cast.fern.id,
      offcut: scrap(12, 2.5),
      count: 1,
      at: FIRST,
    }))!;
    const strips = await page(`/filling?offcut=${strip.id}`);
    expect(words(strips)).toContain('Too large for it: Desk note.');
    await app.db.deleteFrom('card_sizes').where('id', '=', tag.id).execute();
    const bare = await app.get(`/filling?offcut=${strip.id}`);
    expect(bare.status).toBe(200);
    expect((await bare.text()).match(/name="parts\.\d+\.width"/g)).toHaveLength(3);
  });

  test('says when the trimmer is too short for any cut', async () => {
    await editSettings(app.db, { longestCut: inches(8) });
    const shown = await answer(part({ name: 'Mat', width: '4', height: '4' }));
    expect(shown).toContain('Your trimmer cuts 8″ at most');
  });

  test('is told of an offcut that is gone, too', async () => {
    await binOffcut(app.db, cast.corner.id, { at: later(5) });
    const shown = words(await page(`/filling?offcut=${cast.corner.id}`));
    expect(shown).toContain('None of it is on the shelf any more.');
    expect(shown).toContain('One Desk note envelope;');
  });
});

describe('the form', () => {
  test('keeps what was typed and always has a row to spare', async () => {
    const three = [0, 1, 2].map((row) => part({ name: `P${row}`, width: '1', height: `${row + 1}` }, row));
    const shown = await (await asking(Object.assign({}, ...three))).text();
    expect(shown).toMatch(/name="parts\.2\.height"[^>]*value="3"/);
    expect(shown).toMatch(/name="parts\.3\.height"[^>]*value=""/);
    expect(shown).toContain(`<input type="hidden" name="offcut" value="${cast.corner.id}"/>`);
  });

  test.each([
    [
      'a nonsense length',
      part({ name: 'Mat', width: 'wide', height: '2' }),
      'parts.0.width',
      'isn’t a length',
    ],
    ['half a size', part({ width: '2' }), 'parts.0.height', 'Type a length'],
    ['a row with a name alone', part({ name: 'Mat' }, 2), 'parts.2.width', 'Type a length'],
    ['copies of 0', part({ width: '2', height: '2', most: '0' }), 'parts.0.most', 'from 1 to 500'],
    ['copies of 10 000', part({ width: '2', height: '2', most: '10000' }), 'parts.0.most', 'from 1 to 500'],
    [
      'a wish of 10',
      { ...part({ width: '2', height: '2', wish: '10' }), goal: 'wish' },
      'parts.0.wish',
      'from 1 to 9',
    ],
  ])('says beside its field what is wrong with %s', async (_, fields, field, message) => {
    const refused = await asking(fields);
    expect(refused.status).toBe(422);
    const shown = await refused.text();
    expect(shown).toMatch(new RegExp(`id="${field}-note"[^>]*role="alert"[^>]*>[^<]*${message}`));
    expect(shown).not.toContain('class="answer"');
    for (const [name, value] of Object.entries(fields)) {
      if (name !== 'goal') expect(shown).toMatch(new RegExp(`name="${name}"[^>]*value="${value}"`));
    }
  });

  test('leaves wishes alone as long as they are not asked for', async () => {
    const shown = await asking(part({ width: '2', height: '2', wish: 'dearly' }));
    expect(shown.status).toBe(200);
  });

  test.each([
    ['nothing', {}],
    ['a card that is not hers', { 'card.999': 'on' }],
    ['a kind that there is not', { 'hat.1': 'on' }],
  ])('asks for something when it is to be filled with %s', async (_, fields) => {
    const refused = await asking(fields);
    expect(refused.status).toBe(422);
    expect(words(await refused.text())).toContain('Tick something, or type the size of a part.');
  });

  test.each(['', '?offcut=999', '?design=999', '?offcut=x', '?offcut=1&offcut=2', '?design=-1'])(
    'lies nowhere for /filling%s',
    async (query) => {
      expect((await app.get(`/filling${query}`)).status).toBe(404);
    },
  );

  test('refuses a goal that there is not', async () => {
    const refused = await asking({ goal: 'glory' });
    expect(refused.status).toBe(422);
    expect(words(await refused.text())).toContain('Choose one of');
  });
});

describe('when the planners have too much to do', () => {
  const path = (): string => `/filling?offcut=${cast.corner.id}`;

  test('that is said, and the choice stands', async () => {
    await open({ ...DIRECT, fill: () => 'busy' });
    const busy = await app.get(path());
    expect(busy.status).toBe(503);
    const shown = await busy.text();
    expect(words(shown)).toContain('Ask again in a moment.');
    expect(shown).toMatch(new RegExp(`name="envelope.${note.id}" checked`));
  });

  test('a turn that does not come is given up', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const stop = vi.fn();
    await open({ ...DIRECT, fill: () => ({ fill: new Promise(() => {}), stop }) });
    const waiting = app.get(path());
    await vi.waitFor(async () => {
      await vi.advanceTimersByTimeAsync(1000);
      expect(stop).toHaveBeenCalled();
    });
    vi.useRealTimers();
    expect((await waiting).status).toBe(503);
  });

  test('a planner that breaks down is our fault', async () => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => {});
    await open({ ...DIRECT, fill: () => ({ fill: Promise.reject(new Error('torn')), stop: () => {} }) });
    expect((await app.get(path())).status).toBe(500);
    expect(log).toHaveBeenCalled();
    log.mockRestore();
  });

  test('what is not proved is said with what could be', async () => {
    for (const [goal, proof] of [
      ['count', 'At most 13 pieces could come out.'],
      ['area', /At most \d+(\.\d)? % of it could be used\./],
      ['wish', 'These come to 12 in wishes; at most 13 could come out.'],
    ] as const) {
      await open({
        ...DIRECT,
        fill: (asked) => {
          const found = DIRECT.fill(asked);
          if (found === 'busy') return found;
          const fill = found.fill.then((one) => ({
            ...one,
            proved: false,
            bound: goal === 'area' ? one.value * 1.01 : one.value + 1,
          }));
          return { ...found, fill };
        },
      });
      expect(
        await answer(
          { goal, ...part({ name: 'Tag', width: '2', height: '3', most: '12' }) },
          `design=${cast.fern.id}`,
        ),
      ).toMatch(proof);
    }
  });
});
