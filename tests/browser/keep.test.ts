/** Clearing up and keeping in a browser, with script and without: an idea deleted and brought back, measures kept. */
import { describe, expect, test } from 'vitest';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  { name: 'with script', scripts: true },
  { name: 'without script', scripts: false },
])('$name', ({ scripts }) => {
  test('an idea is deleted and brought back, made by keeping its measures, and renamed where it stands', async () => {
    const walk = await startWalk({ scripts });
    await walk.go('/projects');
    await walk.fill({ title: 'Kites' });
    await walk.press('Write it down');
    const home = walk.page.url();
    await walk.page.getByText('Delete this project').click();
    await walk.press('Delete it');
    expect(await walk.main()).toContain('Deleted on');
    await walk.go('/projects');
    expect(await walk.main()).not.toContain('Kites');
    await walk.follow('Put away');
    await walk.press(/Bring it back/);
    expect(walk.page.url()).toBe(home);
    expect(await walk.main()).not.toContain('Deleted on');

    await walk.go(`/kept/new?project=${home.split('/').at(-1)}`);
    await walk.fill({ card: '5 7/8 x 3', blank: '8 1/2', start: '9', notes: 'From the drawer.' });
    await walk.page.getByLabel('easy').check();
    await walk.press('Keep them');
    expect(await walk.main()).toContain('has to lie between');
    await walk.fill({ start: '3 1/4' });
    await walk.press('Keep them');
    expect(walk.page.url()).toBe(home);
    expect(await walk.main()).toContain('3¼');

    const change = walk.page.getByRole('link', { name: 'change title' });
    await change.click();
    await walk.page.getByLabel('Title', { exact: true }).first().fill('Lanterns');
    await walk.page.getByRole('button', { name: 'Save' }).first().click();
    await walk.page.getByRole('heading', { name: 'Lanterns' }).waitFor();
    expect(walk.page.url()).toBe(home);
    expect(walk.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
    await walk.end();
  });
});
