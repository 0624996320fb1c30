/** What goes into a holder and what holds sets, through their pages, good and bad. */
import { beforeEach, describe, expect, test } from 'vitest';
import { type App, openApp } from '#tests/support/app.ts';

let app: App;
beforeEach(async () => {
  app = await openApp();
});

const ask = (path: string, fields: Record<string, string>) =>
  app.get(`${path}?${new URLSearchParams(fields)}`);
const page = async (path: string, fields: Record<string, string>) => (await ask(path, fields)).text();

const TIN = { width: '6', height: '4 1/2', depth: '1', play: '1/8', clearance: '1/4', setBulk: '1/16' };
const SETS = { width: '5 3/4', height: '4 3/8', setBulk: '1/16', sets: '12', play: '1/8' };

describe('what goes in', () => {
  test('the largest card and envelope, and how many sets', async () => {
    const html = await page('/holders', TIN);
    expect(html).toContain('Cards up to <strong>5⅝ × 4⅛″</strong>, 16 sets.');
    expect(html).toContain('In envelopes up to 5⅞ × 4⅜″');
  });

  test('the link asks for that card’s envelope within the holder', async () => {
    const html = await page('/holders', TIN);
    const link = /href="(\/envelopes\?[^"]+)"/.exec(html)![1]!.replaceAll('&amp;', '&');
    expect(link).toContain('boxWidth=5+7%2F8');
    expect((await app.get(link)).status).toBe(200);
  });

  test('what is not typed is as usual', async () => {
    const html = await page('/holders', { width: '6', height: '4 1/2', depth: '1' });
    expect(html).toContain('Cards up to <strong>5⅝ × 4⅛″</strong>, 16 sets.');
  });

  test.each([
    ['width', '1', 'This leaves room for no card.'],
    ['height', '0', 'more than zero'],
    ['depth', '1/32', 'Not even one set is this thin.'],
    ['depth', '', 'Type a length'],
    ['setBulk', '0', 'more than zero'],
    ['play', '-1', 'can’t be negative'],
    ['clearance', 'some', 'isn’t a length'],
  ])('%s “%s” has its problem beside it', async (field, typed, message) => {
    const answer = await ask('/holders', { ...TIN, [field]: typed });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toMatch(new RegExp(`id="${field}-note" class="problem"[^>]*>[^<]*${message}`));
    expect(html).toContain(`value="${typed}"`);
    expect(html).not.toContain('Cards up to');
  });
});

describe('what holds them', () => {
  test('the inside for so many sets', async () => {
    const html = await page('/holders/sets', SETS);
    expect(html).toContain('A box inside <strong>5⅞ × 4½″</strong>, <strong>¾″</strong> deep.');
    expect(html).toContain('For 12 sets');
  });

  test('agrees with what goes in: exactly those sets, and not one more', async () => {
    const html = await page('/holders', { ...TIN, width: '5 7/8', height: '4 1/2', depth: '3/4' });
    expect(html).toContain('12 sets.');
    expect(html).toContain('In envelopes up to 5¾ × 4⅜″');
  });

  test.each([
    ['sets', '0', 'whole number from 1'],
    ['sets', '1.5', 'whole number from 1'],
    ['width', 'x', 'isn’t a length'],
    ['setBulk', '', 'Type a length'],
  ])('%s “%s” has its problem beside it', async (field, typed, message) => {
    const answer = await ask('/holders/sets', { ...SETS, [field]: typed });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toMatch(new RegExp(`id="${field}-note" class="problem"[^>]*>[^<]*${message}`));
    expect(html).not.toContain('A box inside');
  });
});

test('both ask first', async () => {
  expect((await app.get('/holders')).status).toBe(200);
  expect((await app.get('/holders/sets')).status).toBe(200);
});
