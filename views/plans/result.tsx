/** What a plan comes to: parts, offcuts kept, waste; and once it is cut, codes to pencil and what may still go wrong. */
import type { FC } from 'hono/jsx';
import { isTyped } from '#core/batch/identity.ts';
import { areasOf } from '#core/batch/planned.ts';
import type { Part } from '#core/cutting/order.ts';
import { sizeOf } from '#core/stash/measured.ts';
import { length, printExact, printExactSize, type Units } from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import { Field } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { When } from '../common/when.tsx';
import type { PlanView } from './view.ts';
import { labelsOf, sayWaste, tally } from './words.ts';

export const Result: FC<PlanView> = (view) => {
  const { plan, units } = view;
  const labels = labelsOf(plan, view.titles);
  const placed = tally(plan.plan.used.flatMap((one) => one.rectangles.map(({ part }) => part)));
  const kept = tally(
    plan.plan.used.flatMap((one) => one.leftovers.map((left) => printExactSize(sizeOf(left), units))),
  );
  return (
    <section class="result">
      <h2>What comes of it</h2>
      <ul>
        {plan.order.parts
          .filter(({ id }) => placed.has(id))
          .map((part) => (
            <li>
              <b>{placed.get(part.id)}</b> × {labels.get(part.id)!.name},{' '}
              {printExactSize(sizeOf(part), units)} <small>({labels.get(part.id)!.sign})</small>
              {saySpot(part, units)}
            </li>
          ))}
        <li>
          {kept.size === 0
            ? 'no offcut worth keeping'
            : `offcuts kept: ${[...kept].map(([size, count]) => (count > 1 ? `${count} of ${size}` : size)).join(', ')}`}
        </li>
        <li>{sayWaste(areasOf(plan).waste)}</li>
      </ul>
    </section>
  );
};

/** `, 2″ from the left and 0″ from the top of a sheet` */
const saySpot = ({ pin }: Part, units: Units): string =>
  pin && 'x' in pin
    ? `, ${printExact(length(pin.x), units)} from the left and ${printExact(length(pin.y), units)} from the top of a sheet`
    : '';

/** Written down: what to pencil on which leftover, and the way back. */
export const AfterCut: FC<PlanView> = (view) => {
  const { plan, cut, project, offcuts, designs, units } = view;
  if (!plan.cut || !cut) return null;
  const left = cut.pieces.flatMap((piece) =>
    piece.leftovers.map((one) => ({ ...one, design: piece.piece.design })),
  );
  const count = tally(left.map((one) => `${one.offcut}`));
  const alone = left.filter((one, index) => left.findIndex(({ offcut }) => offcut === one.offcut) === index);
  return (
    <>
      <div class="done" role="status">
        <p>
          Cut and written down on <When at={plan.cut.at} />.
        </p>
        <a class="button" href={`/projects/${project.id}`}>
          On with the project
        </a>
        <form method="post" action={`/cuts/${plan.cut.id}`}>
          <input type="hidden" name="_method" value="DELETE" />
          <button type="submit" class="plain small">
            Undo the cut
          </button>
        </form>
      </div>
      {left.length === 0 ? null : (
        <section>
          <h2>Pencil on the backs</h2>
          <ul class="codes">
            {alone.map((one) => (
              <li>
                <a class="code" href={`/offcuts/${one.offcut}`}>
                  {offcuts.get(one.offcut)?.code}
                </a>{' '}
                {(count.get(`${one.offcut}`) ?? 1) > 1 ? `${count.get(`${one.offcut}`)} of ` : ''}
                {printExactSize(one, units)} of {designs.get(one.design)?.name}
                {one.place === '' ? '' : `, to ${one.place}`}
              </li>
            ))}
          </ul>
        </section>
      )}
      <Spoiled {...view} />
    </>
  );
};

const WrittenOff: FC<{ plan: number } & PlanView['plan']['spoiled'][number]> = ({
  plan,
  part,
  wrong,
  at,
}) => (
  <li>
    {part}, on <When at={at} />: {wrong}
    <form method="post" action={`/plans/${plan}/spoiled`}>
      <input type="hidden" name="_method" value="DELETE" />
      <input type="hidden" name="part" value={part} />
      <input type="hidden" name="at" value={at} />
      <button type="submit" class="plain small">
        It can be used after all
      </button>
    </form>
  </li>
);

/** Envelopes have their own record in the project; here is what else was cut. */
const Spoiled: FC<Pick<PlanView, 'plan' | 'titles' | 'entry' | 'token' | 'project'>> = ({
  plan,
  titles,
  entry,
  token,
  project,
}) => {
  const labels = labelsOf(plan, titles);
  const parts = plan.order.parts.filter((part) => isTyped(part) && wasCut(plan, part.id));
  return (
    <details class="no-print" open={entry.problems.length > 0 || plan.spoiled.length > 0}>
      <summary>A part is spoiled</summary>
      {plan.spoiled.length > 0 ? (
        <>
          <ul>
            {plan.spoiled.map((one) => (
              <WrittenOff plan={plan.id} {...one} />
            ))}
          </ul>
          <p>
            <a class="button" href={`/projects/${project.id}/plans/new?after=${plan.id}`}>
              Plan {howMany(plan.spoiled.length, 'replacement')}
            </a>
          </p>
        </>
      ) : null}
      {parts.length > 0 ? (
        <form method="post" action={`/plans/${plan.id}/spoiled`} class="fields">
          <Once token={token} />
          <div class="field">
            <label for="part">Which</label>
            <select id="part" name="part">
              {parts.map(({ id }) => (
                <option value={id}>{labels.get(id)!.name}</option>
              ))}
            </select>
          </div>
          <Field name="wrong" label="What went wrong" entry={entry} />
          <p class="field press">
            <button type="submit" class="plain">
              One is spoiled
            </button>
          </p>
        </form>
      ) : null}
      <p>
        A spoiled envelope is written off on the project’s page; its replacement can be planned from there.
      </p>
    </details>
  );
};

const wasCut = ({ plan }: PlanView['plan'], id: string): boolean =>
  plan.used.some((one) => one.rectangles.some(({ part }) => part === id));
