/** Which paper of the project before is used up, and what is asked for in its place. */
import type { FC } from 'hono/jsx';
import type { PaperGone } from '#core/batch/again-from.ts';

export const PapersGone: FC<{ gone: readonly PaperGone[] }> = ({ gone }) =>
  gone.length === 0 ? null : (
    <p class="caution">
      {gone
        .map(
          ({ name, instead }) =>
            `${name} is used up: any ${instead.of === 'kind' ? `${instead.kind} paper` : 'paper'} instead.`,
        )
        .join(' ')}{' '}
      Choose another below if you like.
    </p>
  );
