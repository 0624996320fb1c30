/** The doors that every request passes, tried as a stranger would try them. */
import { beforeAll, describe, expect, test } from 'vitest';
import { type App, openApp } from '#tests/support/app.ts';

let app: App;
beforeAll(async () => {
  app = await openApp();
});

const card = { name: 'Square', width: '5', height: '5', bulk: '1/32' };

describe('who may call', () => {
  test('another host name is turned away, so that a rebound domain reads nothing', async () => {
    expect((await app.get('/', { Host: 'evil.example:4870' })).status).toBe(421);
    expect((await app.get('/', { Host: '127.0.0.1:9999' })).status).toBe(421);
    expect((await app.get('/')).status).toBe(200);
  });

  test('a form from another site changes nothing', async () => {
    expect((await app.post('/tools/cards', card, { Origin: 'http://evil.example' })).status).toBe(403);
    expect((await app.post('/tools/cards', card, { Origin: 'null' })).status).toBe(403);
    expect(await app.db.selectFrom('card_sizes').selectAll().execute()).toEqual([]);
  });

  test('only forms may change anything: JSON and plain text are refused', async () => {
    for (const type of ['application/json', 'text/plain']) {
      const answer = await app.app.request('http://127.0.0.1:4870/tools/cards', {
        method: 'POST',
        body: JSON.stringify(card),
        headers: { Host: '127.0.0.1:4870', Origin: 'http://127.0.0.1:4870', 'Content-Type': type },
      });
      expect(answer.status).toBe(415);
    }
    expect(await app.db.selectFrom('card_sizes').selectAll().execute()).toEqual([]);
  });

  test('a form longer than any of ours is refused', async () => {
    expect((await app.post('/tools/cards', { ...card, name: 'x'.repeat(300_000) })).status).toBe(413);
  });
});

describe('what a form may be', () => {
  const send = (type: string, body: string) =>
    app.app.request('http://127.0.0.1:4870/tools/cards/1', {
      method: 'POST',
      body,
      headers: { Host: '127.0.0.1:4870', Origin: 'http://127.0.0.1:4870', 'Content-Type': type },
    });

  test('one that arrives broken is told so', async () => {
    const parts = 'multipart/form-data; boundary=XX';
    const file =
      '--XX\r\nContent-Disposition: form-data; name="_method"; filename="a"\r\n\r\nPUT\r\n--XX--\r\n';
    for (const [type, body] of [
      ['multipart/form-data', 'name=x'],
      [parts, ''],
      [parts, '--XX\r\nContent-Disposition: form-data; name="name"\r\n\r\nhalf'],
      [parts, file],
    ] as const) {
      const answer = await send(type, body);
      expect([body, answer.status]).toEqual([body, 400]);
      expect(await answer.text()).toContain('Nothing was written');
    }
  });

  test('it may put and delete, and mean nothing else', async () => {
    for (const method of ['GET', 'TRACE', 'PATCH', 'put', 'no method', '__proto__', 'constructor']) {
      const answer = await app.post('/tools/cards', { ...card, _method: method });
      expect([method, answer.status]).toEqual([method, 400]);
    }
    expect((await app.post('/tools/cards/1', { _method: 'DELETE' })).status).toBe(404);
    expect(await app.db.selectFrom('card_sizes').selectAll().execute()).toEqual([]);
  });
});

describe('what a page may do', () => {
  test('no inline script or style, no frame, nothing from elsewhere', async () => {
    const answer = await app.get('/envelopes?width=6&height=4');
    const policy = answer.headers.get('Content-Security-Policy')!;
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toMatch(/unsafe|\*/);
    const page = await answer.text();
    expect(page).not.toMatch(/ style="| on\w+="|<style|<script(?![^>]* src="\/assets\/)/);
  });

  test('every answer says so: a page, a file, what is turned away, refused, or not there', async () => {
    const other = { Host: 'evil.example:4870' };
    const answers = [
      await app.get('/'),
      await app.get('/nowhere'),
      await app.get('/assets/AAAAAAAAAAAA/creasebook.css'),
      await app.get('/templates/envelope/template.svg?width=5+1%2F2&height=4+1%2F4'),
      await app.get('/', other),
      await app.post('/tools/cards', card, other),
      await app.post('/tools/cards', card, { Origin: 'http://evil.example' }),
      await app.post('/tools/cards', { ...card, name: 'x'.repeat(300_000) }),
      await app.post('/tools/cards', { ...card, _method: 'TRACE' }),
    ];
    expect(answers.map(({ status }) => status)).toEqual([200, 404, 404, 200, 421, 421, 403, 413, 400]);
    for (const { headers } of answers) {
      expect(headers.get('Content-Security-Policy')).toContain("default-src 'none'");
      expect(headers.get('X-Content-Type-Options')).toBe('nosniff');
      expect(headers.get('X-Frame-Options')).toBe('DENY');
      expect(headers.get('Referrer-Policy')).toBe('same-origin');
    }
  });

  test('markup and emoji in what was typed come back as text', async () => {
    const page = await (
      await app.get(`/envelopes?width=${encodeURIComponent('<script>1</script>🎴')}&height=4`)
    ).text();
    expect(page).not.toContain('<script>1');
    expect(page).toContain('&lt;script&gt;1&lt;/script&gt;🎴');
  });

  test('an address that nothing answers gives a page that helps', async () => {
    for (const path of [
      '/nowhere',
      '/tools/cards/999',
      '/tools/cards/zero',
      '/tools/notchers/-1',
      '/envelopes?project=77',
    ]) {
      const answer = await app.get(path);
      expect([path, answer.status]).toEqual([path, 404]);
      expect(await answer.text()).toContain('href="/stash"');
    }
  });
});

describe('a form sent twice', () => {
  test('does its thing once and leads to the same place', async () => {
    const form = { ...card, once: 'token-of-this-form' };
    const [first, second] = [await app.post('/tools/cards', form), await app.post('/tools/cards', form)];
    expect(first.status).toBe(303);
    expect(second.headers.get('Location')).toBe(first.headers.get('Location'));
    expect(await app.db.selectFrom('card_sizes').selectAll().execute()).toHaveLength(1);
  });

  test('a field that comes twice with two values is asked for again', async () => {
    const answer = await app.post('/tools/cards', [...Object.entries(card), ['width', '6']]);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('came twice');
    const idea = await app.post('/projects', { title: 'One' });
    const put = [
      ['_method', 'PUT'],
      ['title', 'Two'],
      ['title', 'Three'],
    ] as [string, string][];
    const changed = await app.post(idea.headers.get('Location')!, put);
    expect(changed.status).toBe(422);
    expect(await changed.text()).toContain('came twice');
  });
});
