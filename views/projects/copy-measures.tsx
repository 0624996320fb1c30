/** The working measures as text: a button that copies it where a script can, and the text itself to be selected. */
import type { FC } from 'hono/jsx';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import type { Units } from '#shared/length.ts';
import { measuresText } from './measures-text.ts';

interface Props {
  readonly title: string;
  readonly working: WorkingMeasures;
  readonly units: Units;
}

export const CopyMeasures: FC<Props> = ({ title, working, units }) => (
  <>
    <button type="button" class="plain" data-copies="measures-text" hidden>
      Copy the measures
    </button>
    <details class="as-text no-print">
      <summary>As text</summary>
      <pre id="measures-text">{measuresText(title, working, units)}</pre>
    </details>
  </>
);
