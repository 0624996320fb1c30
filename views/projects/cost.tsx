/** What a project cost in paper: in all, per set, and paper by paper; then how that is reckoned. */
import type { FC } from 'hono/jsx';
import type { Project } from '#core/project/journal.ts';
import type { BatchCost } from '#core/stash/cost.ts';
import type { Pad } from '#core/stash/stash.ts';
import { printMoney } from '#shared/money.ts';
import { howMany } from '#views/common/words.ts';

interface Props {
  readonly project: Project;
  readonly cost: BatchCost;
  readonly currency: string;
}

/** Beside the paper of a project. */
export const CostLink: FC<{ project: number }> = ({ project }) => (
  <p class="no-print">
    <a href={`/projects/${project}/cost`}>What it cost in paper</a>
  </p>
);

export const CostPage: FC<Props> = (props) => (
  <>
    <p>
      <a href={`/projects/${props.project.id}`}>{props.project.title}</a>
    </p>
    <h1>What it cost in paper</h1>
    <Answer {...props} />
    {props.cost.designs.length === 0 ? null : <Papers {...props} />}
    <Unpriced {...props} />
    <p class="quiet">
      Each piece costs its share of its sheet’s price, by area. What went back to the shelf takes its share
      along to whoever uses it; what was waste, and what is thrown out later of those leftovers, stays with
      this project. Paper cut together with other projects is shared by the area of their parts. Ready-made
      envelopes have no price here.
    </p>
  </>
);

const Answer: FC<Props> = ({ project, cost, currency }) => {
  if (cost.designs.length === 0) return <p class="answer">No paper from the shelf went into it.</p>;
  if (cost.rounded.length === 0) return <p class="answer">None of its paper has a price yet.</p>;
  return (
    <p class="answer">
      <strong>{printMoney(cost.total, currency)}</strong>
      {project.quantity > 1
        ? `, about ${printMoney(cost.perSet, currency)} for each of ${project.quantity} sets`
        : ''}
    </p>
  );
};

const Papers: FC<Props> = ({ cost, currency }) => (
  <div class="scroll">
    <table>
      <thead>
        <tr>
          <th>Paper</th>
          <th class="number">Sheets’ worth</th>
          <th class="number">Cost</th>
        </tr>
      </thead>
      <tbody>
        {cost.designs.map(({ design, sheets }, index) => (
          <tr>
            <td>
              <a href={`/designs/${design.id}`}>{design.name}</a> <span class="quiet">{design.pad.name}</span>
            </td>
            <td class="number">{sheets.toFixed(2)}</td>
            <td class="number">{price(cost.rounded[index], currency)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);

const price = (hundredths: number | undefined, currency: string): string =>
  hundredths === undefined ? 'no price' : printMoney(hundredths, currency);

const Unpriced: FC<Props> = ({ cost }) => {
  const pads = new Map<number, Pad>(
    cost.designs.filter((one) => one.cost === null).map(({ design: { pad } }) => [pad.id, pad]),
  );
  return pads.size === 0 ? null : (
    <p>
      {howMany(pads.size, 'pad')} without a price:{' '}
      {[...pads.values()].map((pad, index) => (
        <>
          {index > 0 ? ', ' : ''}
          <a href={`/pads/${pad.id}/edit`}>{pad.name}</a>
        </>
      ))}
      .
    </p>
  );
};
