/** That this card was made before, with what worked then, said before anything is worked out anew. */
import type { FC } from 'hono/jsx';
import type { MadeBefore } from '#core/project/made-before.ts';
import { didWork } from '#core/project/working-measures.ts';
import type { Units } from '#shared/length.ts';
import { printMonth } from '../common/when.tsx';
import { MakeAgain } from './make-again.tsx';
import { sayMeasures } from './words.ts';

interface Props {
  readonly before: MadeBefore | undefined;
  /** The project that the paper is for, where there is one. */
  readonly into?: number | undefined;
  readonly units: Units;
  readonly token: string;
}

export const MadeBeforeNote: FC<Props> = ({ before, into, units, token }) => {
  if (!before) return null;
  const { project, working, at } = before;
  const worked = didWork(working);
  return (
    <aside class={worked ? 'made-before no-print' : 'made-before failed no-print'} aria-label="Made before">
      <p>
        {worked ? 'You made this' : 'You tried this, and it didn’t work'}:{' '}
        <strong>{sayMeasures(working, units)}</strong>, in {printMonth(at)}:{' '}
        <a href={`/projects/${project.id}`}>{project.title}</a>.
      </p>
      {worked ? <MakeAgain project={project.id} into={into} token={token} /> : null}
    </aside>
  );
};
