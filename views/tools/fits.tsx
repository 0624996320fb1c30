/** Where the maker's own fits begin: in one sentence, as a picture of what she felt, and the form to set them herself. */
import type { FC } from 'hono/jsx';
import { dotPlot } from '#core/drawing/dot-plot.ts';
import { type FeltFit, fitAt, LIMIT_NAMES, type LimitName, SPEAKS_FOR } from '#core/project/fit-limits.ts';
import type { FitHabits, HerFits } from '#core/project/fits.ts';
import {
  add,
  inches,
  type Length,
  length,
  printExact,
  printLength,
  roundToStep,
  typedLength,
  type Units,
} from '#shared/length.ts';
import { FITS } from '#shared/outcome.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';
import { Picture } from '../diagrams/picture.tsx';
import { sayValue } from './source.ts';

interface Props {
  readonly fits: HerFits;
  readonly habits: FitHabits;
  readonly units: Units;
  readonly entry: Entry;
}

export const FitsPage: FC<Props> = (props) => {
  const { fits, units } = props;
  return (
    <>
      <p class="quiet">
        <a href="/tools">Tools and units</a>
      </p>
      <h1>How a card sits, by your own hands</h1>
      <p class="big">{sayFits(fits, units)}</p>
      <div class="columns">
        <section>
          <h2>What it rests on</h2>
          {fits.felt.length === 0 ? (
            <p>Nothing yet: write down how a card sits, in its project, once the envelope is made.</p>
          ) : (
            <Felt {...props} />
          )}
        </section>
        <LimitsForm {...props} />
      </div>
    </>
  );
};

/** `For you a card is tight under about ¹⁄₁₆″ to spare, …` */
export function sayFits({ limits, sources, felt }: HerFits, units: Units): string {
  const [snug, easy, loose] = LIMIT_NAMES.map((name) => sayLimit(limits[name], units));
  const usual = LIMIT_NAMES.every((name) => sources[name] === 'default');
  const whose = usual ? 'As is usual, a card' : 'For you a card';
  const still = usual && felt.length > 0 ? ' What you felt so far agrees.' : '';
  return `${whose} is tight under about ${snug} to spare, snug from there, easy from ${easy} and loose over ${loose}.${still}`;
}

/** As a ruler shows it, to a 64th: no hand feels finer. */
const sayLimit = (one: Length, units: Units): string =>
  units.unit === 'in'
    ? printExact(roundToStep(one, inches(1 / 64), 'nearest'), units)
    : printLength(one, units).replace('≈', '');

/** Those that still speak for the limits. */
const drawn = (felt: readonly FeltFit[]): readonly FeltFit[] => felt.slice(-SPEAKS_FOR);

const Felt: FC<Props> = ({ fits, units }) => {
  const felt = drawn(fits.felt);
  const agree = felt.filter((one) => fitAt(one.clearance, fits.limits) === one.felt).length;
  const drawing = dotPlot(
    {
      title: 'How cards sat, by the room they had',
      words: `The newest ${felt.length} fits felt, each at the clearance that decides it: ${agree} lie where the limits put them.`,
      rows: FITS.toReversed().map((fit) => ({
        name: fit.replace("'", '’'),
        dots: felt
          .filter((one) => one.felt === fit)
          .map((one) => ({ at: decides(one), counts: fitAt(one.clearance, fits.limits) === fit })),
      })),
      marks: LIMIT_NAMES.map((name) => ({ at: fits.limits[name], text: markOf(name, fits, units) })),
      from: inches(-1 / 8),
      to: add(fits.limits.loose, inches(1 / 4)),
      key: ['as the limits say', 'felt otherwise'],
    },
    units,
  );
  return (
    <>
      <Picture drawing={drawing} id="fits" grows />
      <p>
        Each dot is an envelope, by its room to spare: the tighter way, or the wider where it was loose.{' '}
        {agree} of {felt.length} sat as these limits say.
      </p>
      <details>
        <summary>The same in figures</summary>
        <LimitsTable fits={fits} units={units} />
        <FeltTable felt={felt} units={units} />
      </details>
    </>
  );
};

const decides = ({ clearance, felt }: FeltFit) =>
  length(Math[felt === 'loose' ? 'max' : 'min'](clearance.width, clearance.height));

const markOf = (name: LimitName, { limits }: HerFits, units: Units): string =>
  `${name} ${name === 'loose' ? 'over' : 'from'} ${sayLimit(limits[name], units)}`;

const LimitsTable: FC<Pick<Props, 'fits' | 'units'>> = ({ fits, units }) => (
  <table>
    <thead>
      <tr>
        <th scope="col">Limit</th>
        <th scope="col">Now</th>
        <th scope="col">Learned</th>
        <th scope="col">Near it, agree</th>
      </tr>
    </thead>
    <tbody>
      {LIMIT_NAMES.map((name) => (
        <tr>
          <th scope="row">{name === 'loose' ? 'loose over' : `${name} from`}</th>
          <td>
            {sayValue(fits.limits[name], units)} ({SOURCES[fits.sources[name]]})
          </td>
          <td>{sayValue(fits.learned.limits[name], units)}</td>
          <td>
            {fits.learned.evidence[name].near}, {fits.learned.evidence[name].agree}
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);

const SOURCES = { default: 'usual', learned: 'learned', pinned: 'set by you' };

const FeltTable: FC<{ felt: readonly FeltFit[]; units: Units }> = ({ felt, units }) => (
  <table>
    <thead>
      <tr>
        <th scope="col">Felt, newest first</th>
        <th scope="col">Room across</th>
        <th scope="col">Room up</th>
      </tr>
    </thead>
    <tbody>
      {felt.toReversed().map((one) => (
        <tr>
          <th scope="row">{one.felt.replace("'", '’')}</th>
          <td>{printExact(one.clearance.width, units)}</td>
          <td>{printExact(one.clearance.height, units)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const LimitsForm: FC<Props> = ({ fits, habits, units, entry }) => (
  <section>
    <form action="/tools/fits" method="post" class="sheet">
      <h2>Set them yourself</h2>
      <p class="quiet">Room to spare after the card and its bulk. Empty: learned from what you feel.</p>
      <FormProblems entry={entry} fields={[...LIMIT_NAMES]} />
      <div class="fields">
        {LIMIT_NAMES.map((name) => (
          <Field
            name={name}
            label={name === 'loose' ? 'Loose over' : `${name === 'snug' ? 'Snug' : 'Easy'} from`}
            kind="length"
            entry={entry}
            value={habits.pins[name] === null ? '' : typedLength(habits.pins[name], units)}
            hint={`learned: ${sayValue(fits.learned.limits[name], units)}`}
          />
        ))}
      </div>
      <button type="submit">Save</button>
    </form>
    {(fits.felt.length > 0 || LIMIT_NAMES.some((name) => habits.pins[name] !== null)) && (
      <details>
        <summary>Start afresh</summary>
        <form action="/tools/fits/reset" method="post">
          <p>What you felt until now stays in the journal, but moves these limits no more.</p>
          <button type="submit" class="plain small">
            Learn them afresh from now on
          </button>
        </form>
      </details>
    )}
  </section>
);
