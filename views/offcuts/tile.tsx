/** Offcuts as they stand on the shelf: drawn to one scale, each with its code, size, place and the tap that lets it go. */
import type { FC } from 'hono/jsx';
import { nameOf } from '#core/finding/named.ts';
import type { Alike } from '#core/stash/alike.ts';
import type { Offcut } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { Once } from '#views/common/once.tsx';
import { sayStanding } from '#views/stash/words.ts';
import { OffcutPicture, shelfScale } from './picture.tsx';

export interface ShelfProps {
  readonly alike: readonly Alike[];
  /** Some older ones are left out, and nothing else on the page says so. */
  readonly more?: boolean;
  /** Just taken off it, where the page had to come back without script. */
  readonly went: Offcut | undefined;
  readonly units: Units;
  /** Where the reader comes back to after a change. */
  readonly back: string;
  readonly token: string;
}

export const Shelf: FC<ShelfProps> = ({ alike, more = false, went, ...rest }) => (
  <>
    <Went went={went} {...rest} />
    {more ? (
      <p>
        Only the newest are drawn here; <a href="/stash">the stash</a> finds the others.
      </p>
    ) : null}
    <ul class="shelf">
      {alike.map((one) => (
        <Tile {...one} {...rest} scale={shelfScale(alike.map(({ offcuts: [first] }) => first))} />
      ))}
    </ul>
  </>
);

export const Went: FC<Pick<ShelfProps, 'went' | 'back' | 'token'>> = ({ went, back, token }) =>
  went === undefined ? null : (
    <div class="done">
      <a class="code" href={`/offcuts/${went.id}`}>
        {went.code}
      </a>
      <PutBack offcut={went} back={back} token={`${token}-back`} whole />
    </div>
  );

type Rest = Pick<ShelfProps, 'units' | 'back' | 'token'>;

/** More of a kind than these are only counted. */
const MOST_OF_A_KIND = 4;

/** One picture for all that are alike; each has its own code, place and buttons. */
const Tile: FC<Alike & Rest & { scale: number }> = ({ offcuts, count, scale, ...rest }) => {
  const [first, ...others] = offcuts;
  return (
    <li class="tile" id={`offcut-${first.id}`}>
      <div class="stands">
        <OffcutPicture offcut={first} units={rest.units} scale={scale} />
      </div>
      <div>
        {others.length > 0 ? <p class="alike">× {count}, all alike</p> : null}
        <AboutOffcut offcut={first} {...rest} />
        {others.slice(0, MOST_OF_A_KIND - 1).map((offcut) => (
          <div class="another" id={`offcut-${offcut.id}`}>
            <AboutOffcut offcut={offcut} {...rest} />
          </div>
        ))}
        {offcuts.length > MOST_OF_A_KIND ? (
          <p>
            <a href={alikeHref(first)}>and {offcuts.length - MOST_OF_A_KIND} more</a>
          </p>
        ) : null}
      </div>
    </li>
  );
};

/** In the dense list every code of it stands in its row. */
const alikeHref = ({ design }: Offcut): string =>
  `/stash?${new URLSearchParams({ design: nameOf(design), view: 'list' })}`;

interface AboutProps extends Rest {
  readonly offcut: Offcut;
  /** Some of it, or all, just went. */
  readonly justGone?: boolean;
  /** It has just been changed, so the next tap is most likely here. */
  readonly focus?: boolean;
  /** Why what was asked of it could not be done. */
  readonly why?: string;
}

/** What stands under the picture; the part of a tile that a tap changes. */
export const AboutOffcut: FC<AboutProps> = ({ offcut, units, justGone = false, why, ...form }) => (
  <div class={offcut.count === 0 ? 'about gone' : 'about'}>
    <p class="spread">
      <a class="code" href={`/offcuts/${offcut.id}`}>
        {offcut.code}
      </a>
      {offcut.count > 1 ? <b>× {offcut.count}</b> : null}
    </p>
    <p class="size">{printExactSize(offcut, units)}</p>
    <p class="of">{offcut.design.name}</p>
    <p class="quiet">
      {offcut.place === '' && offcut.count > 0 ? (
        <a href={`/offcuts/${offcut.id}/edit?${new URLSearchParams({ back: form.back })}`}>say where</a>
      ) : (
        offcut.place
      )}
      {sayStanding(offcut) === '' ? '' : ` · ${sayStanding(offcut)}`}
    </p>
    {why === undefined ? null : <p role="alert">{why}</p>}
    {justGone || offcut.count === 0 ? (
      <PutBack offcut={offcut} {...form} />
    ) : (
      <LetGo offcut={offcut} {...form} />
    )}
  </div>
);

interface FormProps extends Pick<AboutProps, 'offcut' | 'back' | 'token' | 'focus'> {
  /** The whole page answers, not a tile. */
  readonly whole?: boolean;
}

export const LetGo: FC<FormProps> = ({ offcut, back, token, whole = false, focus }) => (
  <form
    class="row"
    method="post"
    action={`/offcuts/${offcut.id}`}
    {...(whole ? {} : inTile(`/offcuts/${offcut.id}`))}
  >
    <input type="hidden" name="_method" value="DELETE" />
    <input type="hidden" name="back" value={back} />
    <Once token={`${token}-${offcut.id}`} />
    {offcut.count > 1 ? (
      <button type="submit" class="plain small" name="count" value="1" autofocus={focus}>
        One gone
      </button>
    ) : null}
    <button
      type="submit"
      class="plain small"
      name="count"
      value={offcut.count}
      autofocus={focus && offcut.count === 1}
    >
      {offcut.count > 1 ? 'All gone' : 'Gone'}
      <span class="hidden"> ({offcut.code})</span>
    </button>
  </form>
);

export const PutBack: FC<FormProps> = ({ offcut, back, token, whole = false, focus }) => {
  const action = `/offcuts/${offcut.id}/returns`;
  return (
    <form class="row" method="post" action={action} {...(whole ? {} : inTile(action))}>
      <input type="hidden" name="back" value={back} />
      <Once token={`${token}-${offcut.id}`} />
      <span role="status">{offcut.count === 0 ? 'Gone.' : `Gone; ${offcut.count} left.`}</span>
      <button type="submit" class="plain small" autofocus={focus}>
        Put back
      </button>
    </form>
  );
};

const inTile = (action: string) => ({ 'hx-post': action, 'hx-target': 'closest .about' });
