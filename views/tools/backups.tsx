/** The backups of the book: how old the newest is, what is in each, to take away, and how one is put back. Knows no files. */
import type { FC } from 'hono/jsx';
import { When } from '../common/when.tsx';
import { howMany, listed } from '../common/words.ts';

interface Backup {
  readonly name: string;
  readonly at: string;
  readonly kind: 'daily' | 'before-update' | 'before-restore' | 'asked-for';
  readonly bytes: number;
  readonly holds:
    | { readonly projects: number; readonly designs: number; readonly offcuts: number }
    | undefined;
}

/** Newest first; `at` is now. */
export const BackupsPage: FC<{ backups: readonly Backup[]; at: string }> = ({ backups, at }) => (
  <>
    <h1>Backups</h1>
    <p class="lead">{sayNewest(backups, at)}</p>
    {backups.length > 0 && <List backups={backups} at={at} />}
    <section>
      <h2>To put one back</h2>
      <p>
        Stop Creasebook, then type <code>npm run backup -- restore FILE</code> with the file’s name after its
        folder backups/. The book as it is now is kept among the backups.
      </p>
    </section>
  </>
);

const List: FC<{ backups: readonly Backup[]; at: string }> = ({ backups, at }) => (
  <ul class="list">
    {backups.map((backup) => (
      <li>
        <a class="big" href={`/backups/${backup.name}`}>
          <When at={backup.at} />
        </a>{' '}
        {sayAge(backup.at, at)}, {WHY[backup.kind]}
        <p>
          {sayHolds(backup)}; {(backup.bytes / 1e6).toFixed(1)} MB
          <br />
          <code>{backup.name}</code>
        </p>
      </li>
    ))}
  </ul>
);

const WHY: Record<Backup['kind'], string> = {
  daily: 'the daily one',
  'before-update': 'before an update of Creasebook',
  'before-restore': 'before something was put back',
  'asked-for': 'asked for',
};

const sayNewest = (backups: readonly Backup[], at: string): string =>
  backups[0]
    ? `The newest is from ${sayAge(backups[0].at, at)}. They lie in the folder backups/ beside the book: copy that folder somewhere else too.`
    : 'There is none yet. The first is made a moment after Creasebook starts, and then one every day.';

const DAY_MS = 86_400_000;

function sayAge(then: string, now: string): string {
  const days = Math.round((Date.parse(now.slice(0, 10)) - Date.parse(then.slice(0, 10))) / DAY_MS);
  if (days <= 0) return 'today';
  return days === 1 ? 'yesterday' : `${days} days ago`;
}

function sayHolds({ holds }: Backup): string {
  if (!holds) return 'It can’t be read';
  const { projects, designs, offcuts } = holds;
  return listed([howMany(projects, 'project'), howMany(designs, 'design'), howMany(offcuts, 'offcut')]);
}
