/** The places beside an answer: links that swap what is shown under it, and lead there without script as well. Knows no content. */
import type { FC, PropsWithChildren } from 'hono/jsx';
import { asking, type Query } from './query.ts';

const PLACES = ['measures', 'paper', 'look', 'post'] as const;

/** The last of them is reached from the row of alternatives. */
export type Place = (typeof PLACES)[number] | 'others';

const NAMES: Record<(typeof PLACES)[number], string> = {
  measures: 'Measures',
  paper: 'Paper',
  look: 'Look',
  post: 'Post and set',
};

/** The place that an address names, among those there are. */
export const placeNamed = (name: string | undefined, places: readonly Place[]): Place =>
  places.find((one) => one === name) ?? 'measures';

interface Props {
  readonly query: Query;
  readonly places: readonly Place[];
  readonly shown: Place;
}

export const Places: FC<Props> = ({ query, places, shown }) => (
  <nav class="places no-print" aria-label="About this envelope">
    {PLACES.filter((one) => places.includes(one)).map((one) => (
      <ToPlace
        query={{ ...query, from: '', show: one === 'measures' ? '' : one }}
        id={`to-${one}`}
        current={one === shown}
      >
        {NAMES[one]}
      </ToPlace>
    ))}
  </nav>
);

type ToPlaceProps = PropsWithChildren<{ query: Query; id?: string; current?: boolean }>;

export const ToPlace: FC<ToPlaceProps> = ({ query, id, current, children }) => (
  <a
    id={id}
    href={`${asking(query)}#more`}
    aria-current={current ? 'true' : undefined}
    hx-get={asking(query)}
    hx-target="#more"
    hx-swap="outerHTML"
    hx-push-url="true"
  >
    {children}
  </a>
);

/** Carried along as she types; out of band when another place was gone to. */
export const ShownField: FC<{ shown: string; outOfBand?: boolean }> = ({ shown, outOfBand }) => (
  <input type="hidden" id="show" name="show" value={shown} hx-swap-oob={outOfBand ? 'true' : undefined} />
);
