/** A day in words, as the maker's own clock has it. Knows nothing of what happened on it. */
import type { FC } from 'hono/jsx';

const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });

const MONTH = new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric' });

export const printDay = (at: string): string => DAY.format(new Date(at));

/** The day as a form has it, `2026-03-01`; and the moment that stands for a day that is over, its noon. */
export const typedDay = (at: string): string => new Intl.DateTimeFormat('sv-SE').format(new Date(at));

export const noonOf = (day: string): string => new Date(`${day}T12:00:00`).toISOString();

/** `March 2026` */
export const printMonth = (at: string): string => MONTH.format(new Date(at));

export const When: FC<{ at: string }> = ({ at }) => <time datetime={at}>{printDay(at)}</time>;
