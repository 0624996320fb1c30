/** Says why something on the shelf could not be done, because it has changed since; nothing was written. */
import type { FC } from 'hono/jsx';

export const Refused: FC<{ why: string; back: string }> = ({ why, back }) => (
  <section>
    <h1>The shelf has changed.</h1>
    <p class="lead">{why}</p>
    <p>Nothing was written.</p>
    <p>
      <a class="button" href={back}>
        Back to where you were
      </a>
    </p>
  </section>
);
