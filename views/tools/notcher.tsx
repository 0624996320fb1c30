/** One notching tool: its values large, what they rest on, and the form to change it. Works nothing out. */
import type { FC } from 'hono/jsx';
import type { LearnedTool, Tool } from '#core/project/learning.ts';
import { inches, typedLength, type Units } from '#shared/length.ts';
import type { Standing } from '#shared/put-away.ts';
import { AwayNote, PutAway } from '../common/away.tsx';
import { Choice, type Entry, Field, FormProblems } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { Pockets } from './pockets.tsx';
import { saySource, sayValue } from './source.ts';

interface Props {
  readonly units: Units;
  readonly learned: LearnedTool | undefined;
  readonly standing: Standing | undefined;
  readonly entry: Entry;
  readonly token: string;
}

export const NotcherPage: FC<Props> = (props) => (
  <>
    <h1>{props.learned?.tool.name ?? 'A new tool'}</h1>
    <AwayNote standing={props.standing} />
    {props.learned && <Values learned={props.learned} units={props.units} />}
    <div class="columns">
      <ToolForm {...props} />
      {props.learned && <Observations learned={props.learned} units={props.units} />}
    </div>
    {props.learned?.tool.chosen ? null : <PutAway standing={props.standing} />}
  </>
);

const Values: FC<{ learned: LearnedTool; units: Units }> = ({ learned, units }) => (
  <dl class="measures">
    <div>
      <dt>Inset</dt>
      <dd>{sayValue(learned.notcher.inset, units)}</dd>
      <dt>{saySource(learned.inset)}</dt>
    </div>
    <div>
      <dt>Zero offset</dt>
      <dd>{sayValue(learned.notcher.zeroOffset, units)}</dd>
      <dt>{saySource(learned.zeroOffset)}</dt>
    </div>
  </dl>
);

const FIELDS = ['name', 'kind', 'graduation', 'largestSheet', 'turning', 'inset', 'zeroOffset'];

const ToolForm: FC<Props> = ({ learned, units, entry, token }) => {
  const tool = learned?.tool;
  return (
    <form action={tool ? `/tools/notchers/${tool.id}` : '/tools/notchers'} method="post" class="sheet">
      <Once token={token} />
      <FormProblems entry={entry} fields={FIELDS} />
      <Field name="name" label="Name" entry={entry} value={tool?.name} />
      <Choice
        name="kind"
        label="It is"
        entry={entry}
        value={tool?.kind ?? 'notcher'}
        choices={[
          { value: 'notcher', label: 'a notching and scoring tool' },
          { value: 'ruler', label: 'a ruler and a scoring tool' },
        ]}
      />
      <div class="fields">
        <Field
          name="graduation"
          label="Finest mark"
          kind="length"
          entry={entry}
          value={typedLength(tool?.graduation ?? inches(1 / 8), units)}
          hint="on its ruler"
        />
        <Field
          name="largestSheet"
          label="Largest sheet"
          kind="length"
          entry={entry}
          value={typedLength(tool?.largestSheet ?? inches(12), units)}
          hint="longest side it takes"
        />
      </div>
      <Choice
        name="turning"
        label="Between notches you turn the sheet"
        entry={entry}
        value={tool?.turning ?? 'anticlockwise'}
        choices={[
          { value: 'anticlockwise', label: 'anticlockwise' },
          { value: 'clockwise', label: 'clockwise' },
        ]}
      />
      <Pins tool={tool} units={units} entry={entry} />
      <button type="submit">Save</button>
    </form>
  );
};

/** What she sets herself is learned no more. */
const Pins: FC<Pick<Props, 'units' | 'entry'> & { tool: Tool | undefined }> = ({ tool, units, entry }) => (
  <div class="fields">
    <Field
      name="inset"
      label="Set the inset yourself"
      kind="length"
      entry={entry}
      value={tool?.pinnedInset == null ? '' : typedLength(tool.pinnedInset, units)}
      hint="empty: learned from pockets you measure"
    />
    <Field
      name="zeroOffset"
      label="Set the zero offset"
      kind="length"
      entry={entry}
      value={tool?.pinnedZeroOffset == null ? '' : typedLength(tool.pinnedZeroOffset, units)}
      hint="added to what the ruler reads; may be −"
    />
  </div>
);

const Observations: FC<{ learned: LearnedTool; units: Units }> = ({ learned, units }) => {
  const { observations, tool } = learned;
  return (
    <section>
      <h2>What it rests on</h2>
      {observations.length === 0 ? (
        <p class="quiet">
          Nothing yet. Measure the pocket of one envelope you made, both ways, and write it down in its
          project.
        </p>
      ) : (
        <Pockets learned={learned} units={units} />
      )}
      {(observations.length > 0 || tool.pinnedInset !== null || tool.pinnedZeroOffset !== null) && (
        <details>
          <summary>The tool was changed or repaired</summary>
          <form action={`/tools/notchers/${tool.id}/reset`} method="post">
            <p>What was measured until now stays in the journal, but counts no more for this tool.</p>
            <button type="submit" class="plain small">
              Learn it afresh from now on
            </button>
          </form>
        </details>
      )}
    </section>
  );
};
