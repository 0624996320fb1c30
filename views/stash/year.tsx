/** A year's paper: in one sentence, drawn by month and by kind, with the figures in tables behind. */
import type { FC } from 'hono/jsx';
import { yearDrawing } from '#core/drawing/year.ts';
import type { Year, YearSums } from '#core/stash/year.ts';
import { inches, millimetres, type Units } from '#shared/length.ts';
import { Picture } from '#views/diagrams/picture.tsx';

interface Props extends Year {
  readonly known: readonly number[];
  readonly units: Units;
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

export const YearPage: FC<Props> = (props) => {
  const { year, months, kinds, whole, units } = props;
  const { unit } = UNITS[units.unit];
  const byMonth = months.map((sums, index) => ({ ...inUnit(sums, units), name: MONTHS[index]!.slice(0, 1) }));
  const byKind = kinds.map(({ kind, ...sums }) => ({ ...inUnit(sums, units), name: kind }));
  return (
    <>
      <h1>Paper in {year}</h1>
      <Years {...props} />
      {kinds.length === 0 ? (
        <p class="answer">Nothing is in the ledger of this year.</p>
      ) : (
        <>
          <Answer whole={inUnit(whole, units)} unit={unit} />
          <div class="columns">
            <Picture
              id="year-months"
              grows
              drawing={yearDrawing({
                title: `Paper in ${year}, month by month`,
                words: words(whole, units),
                unit,
                bars: byMonth,
              })}
            />
            <Picture
              id="year-kinds"
              grows
              drawing={yearDrawing({
                title: `Paper in ${year}, kind by kind`,
                words: words(whole, units),
                unit,
                bars: byKind,
              })}
            />
          </div>
          <details open>
            <summary>The figures, in {unit}</summary>
            <Figures
              head="Month"
              rows={byMonth.map((row, index) => ({ ...row, name: MONTHS[index]! }))}
              whole={inUnit(whole, units)}
            />
            <Figures head="Kind" rows={byKind} whole={inUnit(whole, units)} />
          </details>
        </>
      )}
      <p class="quiet">
        Used is what batches took from the shelf less what they laid back, so their waste is in it. What came
        from offcuts is new paper saved. Spoiled are blanks and parts that were cut and lost, which are in
        what was used, and sheets and offcuts spoiled on the shelf. Months are those of Greenwich.
        {units.unit === 'in' ? ' A 12 inch sheet is one square foot.' : ''}
      </p>
    </>
  );
};

const UNITS = {
  in: { unit: 'sq ft', side: inches(12) },
  mm: { unit: 'dm²', side: millimetres(100) },
} as const;

function inUnit({ bought, used, fromOffcuts, spoiled }: YearSums, { unit }: Units): YearSums {
  const one = UNITS[unit].side ** 2;
  return { bought: bought / one, used: used / one, fromOffcuts: fromOffcuts / one, spoiled: spoiled / one };
}

const words = (whole: YearSums, units: Units): string => {
  const { bought, used, fromOffcuts, spoiled } = inUnit(whole, units);
  return `In all ${print(bought)} ${UNITS[units.unit].unit} bought, ${print(used)} used, ${print(fromOffcuts)} of it from offcuts; ${print(spoiled)} spoiled. The figures stand in tables under the pictures.`;
};

const Years: FC<Props> = ({ year, known }) => (
  <p class="row no-print">
    {known.slice(0, 12).map((one) => (
      <a href={`/year?of=${one}`} aria-current={one === year ? 'page' : undefined}>
        {one}
      </a>
    ))}
  </p>
);

const Answer: FC<{ whole: YearSums; unit: string }> = ({ whole, unit }) => (
  <p class="answer">
    <strong>
      {print(whole.used)} {unit}
    </strong>{' '}
    used, {print(whole.fromOffcuts)} of it from offcuts; {print(whole.bought)} bought, {print(whole.spoiled)}{' '}
    spoiled.
  </p>
);

const Figures: FC<{ head: string; rows: readonly (YearSums & { name: string })[]; whole: YearSums }> = ({
  head,
  rows,
  whole,
}) => (
  <div class="scroll">
    <table>
      <thead>
        <tr>
          <th>{head}</th>
          <th class="number">Bought</th>
          <th class="number">Used</th>
          <th class="number">From offcuts</th>
          <th class="number">Spoiled</th>
        </tr>
      </thead>
      <tbody>
        {[...rows, { ...whole, name: 'In all' }].map((row) => (
          <tr>
            <td>{row.name}</td>
            <td class="number">{printCell(row.bought)}</td>
            <td class="number">{printCell(row.used)}</td>
            <td class="number">{printCell(row.fromOffcuts)}</td>
            <td class="number">{printCell(row.spoiled)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);

const print = (area: number): string => area.toFixed(area >= 100 ? 0 : 1);

/** Among many empty months a figure is to be seen. */
const printCell = (area: number): string => (area === 0 ? '–' : print(area));
