/** What one measured pocket says about the tool: its values before and after, and what they rest on. */
import type { FC } from 'hono/jsx';
import type { Envelope, Project } from '#core/project/journal.ts';
import type { LearnedTool, Source } from '#core/project/learning.ts';
import { inches, type Length, length, printLength, printSize, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { finely } from '../common/finely.ts';
import { saySource } from '../tools/source.ts';

export interface RecordView {
  readonly project: Project;
  readonly envelope: Envelope;
  readonly pocket: Size;
  /** The tool without this envelope's project, and with it. */
  readonly before: LearnedTool;
  readonly after: LearnedTool;
  /** Why this pocket does not count, when it does not. */
  readonly problem: string | undefined;
  readonly units: Units;
}

export const OutcomeRecord: FC<RecordView> = (view) => {
  const { project, envelope, pocket, before, after, problem, units } = view;
  const { tool } = after;
  return (
    <article>
      <p class="quiet">
        <a href={`/projects/${project.id}`}>{project.title}</a> · envelope {envelope.number}, pocket measured{' '}
        {printSize(pocket, units)}
      </p>
      {problem ? (
        <>
          <h1>This pocket does not fit what is known of {tool.name}.</h1>
          <p class="caution">{problem}</p>
          <p>
            <a class="button" href={`/projects/${project.id}/outcomes/new?envelope=${envelope.number}`}>
              Put the record right
            </a>
          </p>
        </>
      ) : (
        <h1>{headline(before, after, tool.name)}</h1>
      )}
      <dl class="measures">
        <Value
          name="Inset"
          means="how far the pocket’s corner lies in from the edge"
          before={before.notcher.inset}
          after={after.notcher.inset}
          source={after.inset}
          units={units}
        />
        <Value
          name="Zero offset"
          means="what is added to the ruler’s reading"
          before={before.notcher.zeroOffset}
          after={after.notcher.zeroOffset}
          source={after.zeroOffset}
          units={units}
        />
      </dl>
      <p>{restsOn(after, units)}</p>
      <p>
        {after.inset.from === 'pinned' || after.zeroOffset.from === 'pinned'
          ? 'A pinned value stays until you let it go on the page of your tools.'
          : 'The next recipe is worked out with these. Recipes already in the journal stay as they are.'}
      </p>
      <p class="row">
        <a class="button" href={`/projects/${project.id}`}>
          Back to the project
        </a>
        <a href="/tools">See, pin or reset it among the tools</a>
      </p>
    </article>
  );
};

interface ValueProps {
  readonly name: string;
  readonly means: string;
  readonly before: Length;
  readonly after: Length;
  readonly source: Source;
  readonly units: Units;
}

const Value: FC<ValueProps> = ({ name, means, before, after, source, units }) => (
  <div>
    <dt>{name}</dt>
    <dd>
      {finely(after, units)}
      <small>{means}</small>
      <small>
        {before === after ? 'the same' : `${finely(before, units)}`} before this project; now{' '}
        {saySource(source)}
      </small>
    </dd>
  </div>
);

const headline = (before: LearnedTool, after: LearnedTool, name: string): string =>
  before.notcher.inset === after.notcher.inset && before.notcher.zeroOffset === after.notcher.zeroOffset
    ? `${name} sets as it did before.`
    : `${name} is known better now.`;

const READ_TO = inches(1 / 32);

/** What agreement says and what it doesn't: pockets that agree may all be read with the same ruler, to its marks. */
function restsOn({ observations, calibration }: LearnedTool, units: Units): string {
  const counted = observations.length - calibration.outliers.length;
  if (counted === 0) return 'So far it rests on nothing measured: the usual values stand.';
  const read = `A pocket is read to about ${sayReading(units)}, so take the values as true to about that`;
  if (counted === 1)
    return `It rests on this one pocket. ${read}; measure one more, and they check each other.`;
  const spread = length(Math.max(calibration.spread.inset, calibration.spread.zeroOffset));
  return spread > READ_TO
    ? `It rests on ${counted} measured pockets, which differ by up to ${finely(spread, units)} from their middle: take the values as true to about that.`
    : `It rests on ${counted} measured pockets, and they agree with each other. ${read}.`;
}

const sayReading = ({ unit }: Units): string =>
  unit === 'in' ? printLength(READ_TO, { unit, step: 32 }) : '1 mm';
