/** A day in words, as the maker's own clock has it. Knows nothing of what happened on it. */
import type { FC } from 'hono/jsx';

const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });

export const printDay = (at: string): string => DAY.format(new Date(at));

export const When: FC<{ at: string }> = ({ at }) => <time datetime={at}>{printDay(at)}</time>;
