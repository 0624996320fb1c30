/** The doors every request passes: who may call, what may be posted, what a page may load. Knows no resource. */
import type { Hono, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { csrf } from 'hono/csrf';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import type { Env } from './env.ts';

const LARGEST_FORM = 256 * 1024;

export function guard(app: Hono<Env>, hosts: readonly string[]): void {
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        connectSrc: ["'self'"],
        fontSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
      strictTransportSecurity: false,
      referrerPolicy: 'same-origin',
      xFrameOptions: 'DENY',
    }),
  );
  app.use(async (c, next) => {
    const host = c.req.header('host') ?? new URL(c.req.url).host;
    if (!hosts.includes(host.toLowerCase())) {
      throw new HTTPException(421, { message: 'Creasebook answers only on its own address.' });
    }
    await next();
  });
  app.use(csrf());
  app.use(onlyForms);
  app.use(bodyLimit({ maxSize: LARGEST_FORM, onError: tooLarge }));
  app.use(namedMethod(app));
}

/** Cross-site checks cover forms only, so nothing else may change anything. */
const onlyForms: MiddlewareHandler<Env> = async (c, next) => {
  const changes = !['GET', 'HEAD', 'OPTIONS'].includes(c.req.method);
  const type = c.req.header('content-type') ?? '';
  const form = /^(application\/x-www-form-urlencoded|multipart\/form-data)\b/i.test(type);
  if (changes && !form)
    throw new HTTPException(415, { message: 'Creasebook takes changes from its own forms only.' });
  await next();
};

/** A form without script can only post: `_method` says what it means. What can't be read as a form stops here. */
const namedMethod =
  (app: Hono<Env>): MiddlewareHandler<Env> =>
  async (c, next) => {
    if (['GET', 'HEAD', 'OPTIONS'].includes(c.req.method)) return next();
    const form = await c.req.formData().catch(() => unreadable());
    const method = form.get('_method');
    if (c.req.method !== 'POST' || method === null || method === '') return next();
    if (method !== 'PUT' && method !== 'DELETE') return unreadable();
    form.delete('_method');
    const headers = new Headers(c.req.raw.headers);
    for (const name of ['content-type', 'content-length', 'transfer-encoding']) headers.delete(name);
    return app.fetch(new Request(c.req.url, { method, headers, body: form }), c.env);
  };

const unreadable = (): never => {
  throw new HTTPException(400, {
    message: 'That form came in pieces. Nothing was written: go back and send it once more.',
  });
};

const tooLarge = (): never => {
  throw new HTTPException(413, {
    message: 'That is more than a form here can hold. Shorten the longest text.',
  });
};
