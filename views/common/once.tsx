/** The hidden token of a form that must do its thing once. */
import type { FC } from 'hono/jsx';

export const Once: FC<{ token: string }> = ({ token }) => <input type="hidden" name="once" value={token} />;
