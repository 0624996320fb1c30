/** A plan's figures, one tap behind its answer: what is placed, proved, kept and wasted. Works nothing out. */
import type { FC } from 'hono/jsx';
import { areasOf, type Proof, proofOf } from '#core/batch/planned.ts';
import { settingsOfSteps } from '#core/cutting/steps.ts';
import { When } from '../common/when.tsx';
import type { PlanView } from './view.ts';
import { percent } from './words.ts';

export const Figures: FC<PlanView> = (view) => {
  const { plan } = view;
  const areas = areasOf(plan);
  const proof = proofOf(plan);
  return (
    <details>
      <summary>Figures and proof</summary>
      <table>
        <tbody>
          {plan.trial ? null : <Proved {...proof} placed={plan.plan.placed} />}
          <Row name="Paper used for parts">{percent(areas.used === 0 ? 0 : areas.parts / areas.used)}</Row>
          <Row name="Kept as offcuts">{percent(areas.used === 0 ? 0 : areas.kept / areas.used)}</Row>
          <Row name="Waste">{percent(areas.waste)}</Row>
          <Row name="Settings of the fence">{settingsOfSteps(plan.plan.steps).length}</Row>
          <Row name="Looked for">{(plan.plan.timeMs / 1000).toFixed(1)} s</Row>
          <Row name="Asked">
            <When at={plan.askedAt} />
          </Row>
        </tbody>
      </table>
    </details>
  );
};

const Proved: FC<Proof & { placed: number }> = ({ placed, unplaced, leastUnplaced, ...sheets }) => (
  <>
    <Row name="Parts placed">
      {placed} of {placed + unplaced}; no plan from this paper leaves out fewer than {leastUnplaced}
    </Row>
    <Row name="New sheets">
      {sheets.newSheets}; no plan from this paper that places as many does with fewer than{' '}
      {sheets.leastSheets}
    </Row>
    <Row name="Proved">
      {sheets.proved
        ? 'yes: both goals meet what no plan can beat'
        : 'no: a better one may be there, or not; nobody knows yet'}
    </Row>
  </>
);

const Row: FC<{ name: string; children?: unknown }> = ({ name, children }) => (
  <tr>
    <th scope="row">{name}</th>
    <td>{children as string}</td>
  </tr>
);
