/** The page for an address that holds nothing and for a request that failed: says so, and where to go on. */
import type { FC } from 'hono/jsx';

export const Oops: FC<{ heading: string; message: string }> = ({ heading, message }) => (
  <section>
    <h1>{heading}</h1>
    <p class="lead">{message}</p>
    <ul>
      <li>
        <a href="/">The table</a>: your cards, to start an envelope from
      </li>
      <li>
        <a href="/stash">The stash</a>: pads, designs and offcuts
      </li>
      <li>
        <a href="/projects">The journal</a>: everything you made
      </li>
    </ul>
  </section>
);
