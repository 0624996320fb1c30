/** What a tool's values rest on: each measured pocket as a dot, when the tool seems to have changed, the table behind. */
import type { FC } from 'hono/jsx';
import { type DotRow, dotPlot } from '#core/drawing/dot-plot.ts';
import type { Evidence, LearnedTool } from '#core/project/learning.ts';
import { changeIn, readingOf, type ToolChange, type ToolReading } from '#core/project/tool-change.ts';
import { inches, type Length, length, printExact, printExactSize, type Units } from '#shared/length.ts';
import { printDay } from '../common/when.tsx';
import { listed } from '../common/words.ts';
import { Picture } from '../diagrams/picture.tsx';
import { sayValue } from './source.ts';

interface Props {
  readonly learned: LearnedTool;
  readonly units: Units;
}

const NAMES = { inset: 'Inset', zeroOffset: 'Zero offset' } as const;
/** The newest of them stand in figures. */
const TABLED_AT_MOST = 60;
/** The newest of them are drawn, and asked whether the tool changed. */
const DRAWN_AT_MOST = 24;

export const Pockets: FC<Props> = ({ learned, units }) => {
  const shown = learned.observations.slice(-DRAWN_AT_MOST);
  const change = changeIn(shown);
  const counts = learned.observations.length - learned.calibration.outliers.length;
  return (
    <>
      {change && <Changed change={change} tool={learned.tool.id} units={units} />}
      <p>
        {counts} of {learned.observations.length} measured pockets agree within ¹⁄₁₆″.
      </p>
      {(['inset', 'zeroOffset'] as const).map((name) => (
        <Plot name={name} learned={learned} shown={shown} change={change} units={units} />
      ))}
      <details>
        <summary>Each pocket in figures</summary>
        <div class="scroll">
          <Table learned={learned} units={units} />
        </div>
      </details>
    </>
  );
};

const Changed: FC<{ change: ToolChange; tool: number; units: Units }> = ({ change, tool, units }) => (
  <div class="caution">
    <p>
      Since {printDay(change.after)} the tool seems to set differently: inset{' '}
      {sayValue(change.was.inset, units)} before, {sayValue(change.is.inset, units)} since; zero offset{' '}
      {sayValue(change.was.zeroOffset, units)} before, {sayValue(change.is.zeroOffset, units)} since.
    </p>
    <form action={`/tools/notchers/${tool}/reset`} method="post">
      <input type="hidden" name="after" value={change.after} />
      <button type="submit" class="small">
        Learn from the pockets since then
      </button>
    </form>
  </div>
);

const Plot: FC<
  Props & { name: keyof ToolReading; shown: readonly Evidence[]; change: ToolChange | undefined }
> = ({ name, learned, shown, change, units }) => {
  const off = new Set(learned.calibration.outliers.map((index) => learned.observations[index]));
  const rows = shown.map(
    (one): DotRow => ({
      name: shortDay(one.at),
      dots: [{ at: readingOf(one)[name], counts: !off.has(one) }],
    }),
  );
  const used = learned.notcher[name];
  const [from, to] = endsOf([
    ...shown.filter((one) => !off.has(one)).map((one) => readingOf(one)[name]),
    used,
  ]);
  const drawing = dotPlot(
    {
      title: `${NAMES[name]}, pocket by pocket`,
      words: `${NAMES[name]} by each measured pocket, the oldest on top; the one used is ${sayValue(used, units)}.`,
      rows,
      marks: [{ at: used, text: `${NAMES[name].toLowerCase()} used ${sayValue(used, units)}` }],
      ...{ from, to, key: ['counted', 'not counted'] },
      across: change && { before: change.first, text: 'seems changed from here on' },
    },
    units,
  );
  return <Picture drawing={drawing} id={`plot-${name}`} grows />;
};

/** Around what counts, an eighth at the least to either side of its middle. */
function endsOf(values: readonly Length[]): [Length, Length] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(inches(1 / 32), inches(1 / 8) - (most - least) / 2);
  return [length(Math.floor(least - room)), length(Math.ceil(most + room))];
}

const SHORT = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: '2-digit' });
const shortDay = (at: string): string => SHORT.format(new Date(at));

const Table: FC<Props> = ({ learned: { observations, calibration }, units }) => (
  <table>
    {observations.length > TABLED_AT_MOST ? <caption>The newest {TABLED_AT_MOST} of them</caption> : null}
    <thead>
      <tr>
        <th scope="col">Envelope</th>
        <th scope="col">Square, start</th>
        <th scope="col">Pocket</th>
        <th scope="col">Inset</th>
        <th scope="col">Zero offset</th>
      </tr>
    </thead>
    <tbody>
      {observations.map((one, index) => {
        if (index < observations.length - TABLED_AT_MOST) return null;
        const problem = calibration.problems.find(({ field }) => field === `observations.${index}`);
        return (
          <tr>
            <th scope="row">
              <a href={`/projects/${one.project.id}`}>{one.project.title}</a>, envelope {one.number}
              {one.alike.length > 0 &&
                `. Noted for envelopes ${listed(one.alike.map(String))} too; it counts once.`}
              {problem && (
                <>
                  {' '}
                  <strong>Doesn’t agree, so it isn’t counted.</strong> {problem.message}
                </>
              )}
            </th>
            <td>
              {printExact(one.square, units)}, {printExact(one.start, units)}
            </td>
            <td>{printExactSize(one.pocket, units)}</td>
            <td>{sayValue(readingOf(one).inset, units)}</td>
            <td>{sayValue(readingOf(one).zeroOffset, units)}</td>
          </tr>
        );
      })}
    </tbody>
  </table>
);
