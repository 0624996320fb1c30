/** Other ways to ask: keep this offcut, open no sheet of that, another design, looked for longer; each is a new plan. */
import type { FC } from 'hono/jsx';
import { Once } from '../common/once.tsx';
import type { PlanView } from './view.ts';
import { sayPieceRef } from './words.ts';

export const Otherwise: FC<PlanView> = (view) => {
  const { plan, onShelf, token } = view;
  const used = [...new Set(plan.plan.used.map((one) => one.piece))];
  return (
    <section class="no-print">
      <h2>Rather otherwise?</h2>
      <div class="row otherwise">
        {used.map((id) => {
          const { ref } = plan.pieces.find((piece) => piece.id === id)!;
          const words = sayPieceRef(ref, view);
          return (
            <Again plan={plan.id} token={token} name="keep" value={id}>
              {ref.offcut === null ? `Open no ${words}` : `Keep ${words}`}
            </Again>
          );
        })}
        {plan.plan.proved || plan.plan.unplaced.length > 0 ? null : (
          <Again plan={plan.id} token={token} name="longer" value="on">
            Look longer, 15 seconds
          </Again>
        )}
        <a class="button plain small" href={`/projects/${plan.project}/plans/new`}>
          Change what is cut
        </a>
      </div>
      {plan.batch.blanks.some(({ copies }) => copies > 0) ? (
        <form method="post" action={`/plans/${plan.id}/again`} class="row">
          <Once token={token} />
          <label for="design">Envelopes and what matches them from</label>
          <select id="design" name="design">
            {onShelf.map(({ id, name, pad }) => (
              <option
                value={id}
                selected={plan.batch.paper.of === 'design' && plan.batch.paper.design === id}
              >
                {name} ({pad.name})
              </option>
            ))}
          </select>
          <button type="submit" class="plain small">
            Plan that
          </button>
        </form>
      ) : null}
    </section>
  );
};

const Again: FC<{ plan: number; token: string; name: string; value: string; children?: unknown }> = ({
  plan,
  token,
  name,
  value,
  children,
}) => (
  <form method="post" action={`/plans/${plan}/again`}>
    <Once token={token} />
    <button type="submit" name={name} value={value} class="plain small">
      {children as string}
    </button>
  </form>
);
