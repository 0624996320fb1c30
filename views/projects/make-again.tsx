/** The button that begins another project with what worked in this one, or gives it to one that has made nothing yet. */
import type { FC } from 'hono/jsx';
import { Once } from '../common/once.tsx';

interface Props {
  /** The one that worked. */
  readonly project: number;
  /** One that is there already and is to be made so; a new one without. */
  readonly into?: number | undefined;
  readonly token: string;
}

export const MakeAgain: FC<Props> = ({ project, into, token }) => (
  <form method="post" action={`/projects/${project}/again`}>
    <Once token={token} />
    {into === undefined ? null : <input type="hidden" name="into" value={`${into}`} />}
    <button type="submit">Make it again</button>
  </form>
);
