/** One kind of ready-made envelope: how many are left, largest; using, buying and counting them; its ledger behind. */
import type { FC } from 'hono/jsx';
import type { Project } from '#core/project/journal.ts';
import type { ReadyMade, ReadyMadeMovement } from '#core/stash/ready-made.ts';
import { printSize, type Units } from '#shared/length.ts';
import { Choice, type Entry, Field } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { When } from '../common/when.tsx';

interface Props {
  readonly readyMade: ReadyMade;
  /** Newest first. */
  readonly movements: readonly ReadyMadeMovement[];
  readonly projects: readonly Project[];
  readonly entry: Entry;
  readonly units: Units;
  readonly token: string;
}

export const ReadyMadePage: FC<Props> = (props) => {
  const { readyMade, units } = props;
  return (
    <>
      <h1>{readyMade.name}</h1>
      <p class="answer">
        <strong>{readyMade.count === 0 ? 'None' : readyMade.count}</strong> left,{' '}
        {printSize(readyMade, units)}.
      </p>
      {readyMade.note === '' ? null : <p class="lead">{readyMade.note}</p>}
      {readyMade.count === 0 ? null : <Use {...props} />}
      <div class="columns">
        <HowMany {...props} name="bought" label="Bought more" to="purchases" press="Add them" />
        <HowMany
          {...props}
          name="counted"
          label="Counted"
          to="counts"
          press="That is what I count"
          value={`${readyMade.count}`}
        />
      </div>
      <p>
        <a href={`/ready-made/${readyMade.id}/edit`}>Change its name, size or note</a>
      </p>
      <details>
        <summary>What became of them</summary>
        <Ledger {...props} />
      </details>
    </>
  );
};

const Use: FC<Props> = ({ readyMade, projects, entry, token }) => (
  <form method="post" action={`/ready-made/${readyMade.id}/uses`} class="sheet">
    <Once token={`${token}-use`} />
    <div class="fields">
      <Field name="used" label="Use" kind="count" entry={entry} value="1" />
      <Choice
        name="project"
        label="For"
        entry={entry}
        value=""
        choices={[
          { value: '', label: 'nothing in the journal' },
          ...projects.map(({ id, title }) => ({ value: `${id}`, label: title })),
        ]}
      />
      <div class="field">
        <span class="label">&nbsp;</span>
        <button type="submit">Take them out</button>
      </div>
    </div>
  </form>
);

interface HowManyProps extends Props {
  readonly name: string;
  readonly label: string;
  readonly to: string;
  readonly press: string;
  readonly value?: string;
}

const HowMany: FC<HowManyProps> = ({ readyMade, entry, token, name, label, to, press, value }) => (
  <form method="post" action={`/ready-made/${readyMade.id}/${to}`} class="fields">
    <Once token={`${token}-${to}`} />
    <Field name={name} label={label} kind="count" entry={entry} value={value} />
    <div class="field">
      <span class="label">&nbsp;</span>
      <button type="submit" class="plain">
        {press}
      </button>
    </div>
  </form>
);

const Ledger: FC<Props> = ({ movements, projects }) => {
  const titles = new Map(projects.map(({ id, title }) => [id, title]));
  return (
    <ul class="list">
      {movements.map((line) => (
        <li class="spread">
          <span>
            {sayLine(line)}
            {line.project === null ? null : (
              <>
                {' '}
                for <a href={`/projects/${line.project}`}>{titles.get(line.project)}</a>
              </>
            )}
          </span>
          <span class="quiet">
            <When at={line.at} />
          </span>
        </li>
      ))}
    </ul>
  );
};

function sayLine({ kind, delta }: ReadyMadeMovement): string {
  if (kind === 'bought') return `${delta} bought`;
  if (kind === 'used') return `${-delta} used`;
  if (delta === 0) return 'counted: as noted';
  return delta > 0 ? `counted: ${delta} more than noted` : `counted: ${-delta} fewer than noted`;
}
