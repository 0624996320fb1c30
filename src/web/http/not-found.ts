/** The answer for a row that isn't there, and for every address that nothing answers. */
import { jsx } from 'hono/jsx';
import { Oops } from '#views/errors/oops.tsx';
import type { Request } from './env.ts';
import { reply } from './reply.ts';

export const notFound = (c: Request): Response | Promise<Response> =>
  reply(c, {
    title: 'Not here',
    status: 404,
    body: jsx(Oops, {
      heading: 'Nothing lies here.',
      message: 'It may have been renamed, undone or binned. What you have is on one of these pages:',
    }),
  });
