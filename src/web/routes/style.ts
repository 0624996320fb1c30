/** The living page of the design language, for whoever works on it. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { StylePage } from '#views/style/page.tsx';
import { colours } from '../http/assets.ts';
import type { Env } from '../http/env.ts';
import { reply } from '../http/reply.ts';

export const style = new Hono<Env>();

style.get('/', (c) => reply(c, { title: 'How Creasebook looks', body: jsx(StylePage, { colours }) }));
