/** Decides whether a request gets the whole page, a fragment of it, or a redirect. Knows no resource. */

import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import type { Child } from 'hono/jsx';
import { jsx } from 'hono/jsx';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { Layout, type Section, titleOf } from '#views/layout.tsx';
import { assetHrefs } from './assets.ts';
import type { Request } from './env.ts';

interface Page {
  readonly title: string;
  readonly section?: Section;
  readonly body: Child;
  /** What a fragment request gets, when that is less than the body. */
  readonly fragment?: Child;
  readonly status?: ContentfulStatusCode;
  /** The fragment is another page to its reader, so the window is named after it. */
  readonly titled?: boolean;
  /** Without script the page asks for itself again after so many seconds. */
  readonly refresh?: number;
  /** What stands in the search box; only on the page that answers it. */
  readonly sought?: string;
}

export function reply(c: Request, page: Page): Response | Promise<Response> {
  c.header('Vary', 'HX-Request');
  c.header('Cache-Control', 'no-store');
  const status = page.status ?? 200;
  const { section, sought, refresh } = page;
  const title = status === 422 ? `Not yet right: ${page.title}` : page.title;
  if (wantsFragment(c)) {
    const named = page.titled ? text(jsx('title', null, titleOf(title))) : '';
    return c.html(named + text(page.fragment ?? page.body), status);
  }
  const props = { title, section, sought, refresh, saved: wasSaved(c), assets: assetHrefs };
  return c.html(`<!doctype html>${text(jsx(Layout, props, page.body as string))}`, status);
}

/** After a change: the browser is sent to what was changed, so that a reload repeats nothing. */
export const goTo = (c: Request, location: string): Response => c.redirect(location, 303);

/** The same after something typed was kept: the page there says so, once. */
export function goToSaved(c: Request, location: string): Response {
  setCookie(c, SAVED, '1', { httpOnly: true, sameSite: 'Strict', path: '/', maxAge: 20 });
  return goTo(c, location);
}

const SAVED = 'saved';

function wasSaved(c: Request): boolean {
  const saved = getCookie(c, SAVED) !== undefined;
  if (saved) deleteCookie(c, SAVED, { path: '/' });
  return saved;
}

export const wantsFragment = (c: Request): boolean =>
  c.req.header('HX-Request') === 'true' && c.req.header('HX-History-Restore-Request') !== 'true';

const text = (child: Child): string => String(child ?? '');
