/** A paper's weight in every grade, its thickness as a range, and what a piece of it weighs. Converts nothing itself. */
import type { FC } from 'hono/jsx';
import { massOfCut } from '#core/paper/mass.ts';
import { thicknessOf, VOLUMES } from '#core/paper/thickness.ts';
import { BASIC_SHEETS, GRADES, gramsPerSquareMetre, inPounds, type PaperWeight } from '#core/paper/weight.ts';
import { type Length, printSize, toInches, toMillimetres, type Units } from '#shared/length.ts';
import { printMass } from '#shared/mass.ts';
import { massUnit } from '#shared/schemas/post.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';

interface Asked {
  readonly weight: PaperWeight;
  readonly width?: Length | undefined;
  readonly height?: Length | undefined;
  readonly copies: number;
}

interface Props {
  readonly units: Units;
  readonly entry: Entry;
  readonly asked: Asked | undefined;
}

export const PaperPage: FC<Props> = ({ units, entry, asked }) => (
  <>
    <h1>Paper</h1>
    <form action="/paper" method="get" class="sheet">
      <FormProblems entry={entry} fields={['weight', 'width', 'height', 'copies']} />
      <Field
        name="weight"
        label="What the label says"
        entry={entry}
        autofocus={!entry.typed.weight}
        hint="80 lb cover, 65# text, 216 g/m²"
      />
      <div class="fields">
        <Field
          name="width"
          label="A piece’s width"
          kind="length"
          entry={entry}
          hint="if you want its weight"
        />
        <Field name="height" label="Its height" kind="length" entry={entry} />
        <Field name="copies" label="How many" kind="count" entry={entry} value="1" />
      </div>
      <button type="submit">See</button>
    </form>
    {asked ? <Answer {...asked} units={units} /> : null}
    <p>
      <a href="/paper/card">What does a whole card weigh, and how thick is it?</a>
    </p>
  </>
);

const Answer: FC<Asked & { units: Units }> = ({ weight, width, height, copies, units }) => (
  <section class="found">
    <p class="answer">
      <strong>{Math.round(gramsPerSquareMetre(weight) * 10) / 10} g/m²</strong>
      {weight.unit === 'lb' ? `, ${weight.amount} lb ${weight.grade}` : ''}.
    </p>
    {width !== undefined && height !== undefined ? (
      <p class="lead">
        {copies === 1 ? '' : `${copies} pieces of `}
        {printSize({ width, height }, units)} weigh{copies === 1 ? 's' : ''}{' '}
        <strong>{printMass(massOfCut({ width, height }, weight, copies), massUnit(units))}</strong>.
      </p>
    ) : null}
    <div class="columns">
      <Grades weight={weight} />
      <Thickness weight={weight} units={units} />
    </div>
  </section>
);

const Grades: FC<{ weight: PaperWeight }> = ({ weight }) => (
  <table>
    <caption>The same paper, by grade</caption>
    <thead>
      <tr>
        <th scope="col">Grade</th>
        <th scope="col" class="number">
          Pounds
        </th>
        <th scope="col">500 sheets of</th>
      </tr>
    </thead>
    <tbody>
      {GRADES.map((grade) => (
        <tr>
          <th scope="row">{SAY_GRADE[grade]}</th>
          <td class="number">{inPounds(weight, grade).amount.toFixed(1)}</td>
          <td>
            {BASIC_SHEETS[grade][0]} × {BASIC_SHEETS[grade][1]}″
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);

const SAY_GRADE = {
  bond: 'bond, writing, ledger',
  text: 'text, book, offset',
  cover: 'cover',
  index: 'index',
  tag: 'tag',
  bristol: 'bristol',
} as const;

const Thickness: FC<{ weight: PaperWeight; units: Units }> = ({ weight, units }) => (
  <table>
    <caption>One sheet’s thickness, about</caption>
    <tbody>
      {(['smooth', 'uncoated', 'bulky'] as const).map((finish) => {
        const { least, most } = thicknessOf({ weight, volume: VOLUMES[finish] });
        return (
          <tr>
            <th scope="row">{SAY_FINISH[finish]}</th>
            <td>{sayRange(least, most, units)}</td>
          </tr>
        );
      })}
    </tbody>
    <tfoot>
      <tr>
        <td colspan={2} class="quiet">
          Better: measure ten sheets together and divide by ten.
        </td>
      </tr>
    </tfoot>
  </table>
);

const SAY_FINISH = {
  smooth: 'smooth, coated',
  uncoated: 'uncoated craft stock',
  bulky: 'bulky, soft',
} as const;

/** To a thousandth of an inch or a hundredth of a millimetre, as calipers show it. */
export const sayRange = (least: Length, most: Length, { unit }: Units): string => {
  const [from, to] = [least, most].map((one) =>
    unit === 'in' ? toInches(one).toFixed(3) : toMillimetres(one).toFixed(2),
  );
  const shown = from === to ? from : `${from} to ${to}`;
  return unit === 'in' ? `${shown}″` : `${shown} mm`;
};
