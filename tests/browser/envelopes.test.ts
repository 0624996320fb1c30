/**
 * The envelopes page as a maker reaches it: how many taps and keys lie between the card and the piece, the answer in
 * sight on a phone, free of barriers at both widths, whole in print, with scripts off.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { faultsAtBothWidths } from '#tests/support/axe.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { pagesOn } from '#tests/support/print-page.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

const PAGES = [
  '/',
  '/envelopes',
  '/envelopes?card=5+x+7',
  '/envelopes?card=5+x+7&copies=8',
  '/envelopes?card=30x30',
  '/envelopes?card=5+x&copies=0',
  '/envelopes?card=7x9&fold=two-piece',
];

describe.skipIf(!browserPath)('the envelopes page', () => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk();
    await walk.go('/');
    await walk.press(/demo/);
  });

  afterAll(() => walk?.end());

  test('takes two taps and twelve keys from a card to the piece it is cut from', async () => {
    let [taps, keys] = [0, 0];
    const { page } = walk;
    await walk.go('/');
    taps += 1;
    await page.locator('#card').click();
    for (const key of ['4 3/8x6 1/8'.split(''), 'Enter'].flat()) {
      keys += 1;
      await page.keyboard.press(key === ' ' ? 'Space' : key);
    }
    await page.waitForURL(/envelopes/);
    taps += 1;
    await walk.leave(page.locator('#paper button'));
    await page.waitForURL(/\/projects\/\d+/);
    expect([taps, keys]).toEqual([2, 12]);
    expect(await walk.main()).toContain('4⅜ × 6⅛″');
  });

  test('takes two taps and no key from a drawn card', async () => {
    await walk.go('/');
    await walk.leave(walk.page.locator('.cards a').first());
    await walk.leave(walk.page.locator('#paper button'));
    expect(walk.page.url()).toMatch(/\/projects\/\d+/);
  });

  test('the card in hand is in sight on a phone, wherever it stands among the others', async () => {
    await walk.go('/envelopes?width=2+3/4&height=1+7/8&bulk=1/32');
    const box = (await walk.page.locator('.in-a-row [aria-current]').boundingBox())!;
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(390);
  });

  test('prints on one page, and the parts of a set print at all', async () => {
    const { page } = walk;
    for (const path of ['/envelopes?card=5+x+7', '/envelopes?card=6+7/8x4+7/8&fold=side-seam']) {
      await walk.go(path);
      expect([await pagesOn(page, 'Letter'), await pagesOn(page, 'A4')]).toEqual([1, 1]);
    }
    await walk.go('/parts?width=5+5/8&height=3+7/8');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.set-part').first().isVisible()).toBe(true);
    expect(await page.locator('button').first().isVisible()).toBe(false);
    await page.emulateMedia({ media: null });
  });

  test('shows answer and button on a phone without scrolling, and nothing runs out at the side', async () => {
    await walk.go('/envelopes?card=5+x+7');
    const { page } = walk;
    const [headline, take] = [page.locator('h1'), page.locator('#paper button')];
    const below = async (one: typeof take) =>
      (await one.boundingBox())!.y + (await one.boundingBox())!.height;
    expect(await below(headline)).toBeLessThan(844);
    expect(await below(take)).toBeLessThan(844);
    // What is to be set and cut is read from where the phone lies: 14 px at least.
    const figures = await page.locator('.flat text.d-lit.d-dimension').evaluateAll((all) =>
      all.map((one) => {
        const svg = (one as SVGTextElement).ownerSVGElement!;
        return Number(one.getAttribute('font-size')) * (svg.clientWidth / svg.viewBox.baseVal.width);
      }),
    );
    expect(figures.length).toBeGreaterThan(0);
    expect(Math.min(...figures)).toBeGreaterThanOrEqual(14);
  });

  test('on a phone and on a desk no page overflows and axe finds nothing serious', async () => {
    const found: string[] = [];
    for (const path of PAGES) {
      await walk.go(path);
      found.push(...(await faultsAtBothWidths(walk.page)).map((fault) => `${path}: ${fault}`));
    }
    expect(found).toEqual([]);
  });

  test('prints its answer with every drawing', async () => {
    await walk.go('/envelopes?card=5+x+7');
    await walk.page.emulateMedia({ media: 'print' });
    for (const part of ['h1', '.flat svg', '#paper svg', '.folded svg']) {
      expect([part, await walk.page.locator(part).first().isVisible()]).toEqual([part, true]);
    }
    await walk.page.emulateMedia({ media: null });
  });

  test('nothing went wrong behind the pages', () => {
    expect(walk.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});

test.skipIf(!browserPath)(
  'with scripts off a half typed card is asked about, and kept',

  async () => {
    const walk = await startWalk({ scripts: false });
    await walk.go('/');
    await walk.fill({ card: '5 x' });
    await walk.press('Find its envelope');
    expect(await walk.page.locator('#card-note').innerText()).toContain('Second side');
    expect(await walk.page.locator('#card').inputValue()).toBe('5 x');
    await walk.fill({ card: '5 x 7' });
    await walk.press('Find its envelope');
    expect(await walk.page.locator('h1').innerText()).toMatch(
      /^Goes in easily\. There is no paper on the shelf yet/,
    );
    await walk.end();
  },
);
