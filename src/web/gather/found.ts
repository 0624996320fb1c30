/** What the search box and its filters ask, and what is found for it, read once. Knows no page. */
import { readQuery } from '#core/finding/read-query.ts';
import { type Facet, FIND_KINDS, longFacets, SIZE_WORDS } from '#core/finding/vocabulary.ts';
import { type FindQuery, findQuery } from '#shared/schemas/find.ts';
import { find, measuresOf } from '#stores/find.ts';
import { glimpseOffcuts } from '#stores/offcuts.ts';
import type { FindView } from '#views/find/view.ts';
import type { Request } from '../http/env.ts';
import { check, type Typed } from '../http/form.ts';

/** Of each kind on the page of all kinds, and at once on the page of one. */
const SHOWN = 5;
const SHOWN_OF_ONE = 24;

/** `shown`: how many of each kind, where all kinds are asked for. */
export async function readFound(c: Request, typed: Typed, shown = SHOWN): Promise<FindView> {
  const read = check(findQuery, typed);
  const query: FindQuery = read.ok ? read.value : { q: '' };
  const db = c.get('db');
  const asked = readQuery(query.q, c.get('units'));
  const kind = FIND_KINDS.find((one) => one === query.kind);
  const limit = SHOWN_OF_ONE + (query.more ?? 0);
  const groups = await find(db, asked, {
    ...{ facets: facetsOf(query), tag: query.tag, limit },
    ...(kind && { kinds: [kind] }),
  });
  const onPage = groups.flatMap(({ finds }) => finds.slice(0, kind ? limit : shown));
  const offcuts = onPage.flatMap((one) => (one.kind === 'offcut' ? [one.belongs] : []));
  const isMeasured = asked.readings.some(({ measures }) => measures.length > 0);
  return {
    ...{ query, asked, kind, groups },
    shown: kind ? limit : shown,
    measures: isMeasured
      ? await measuresOf(
          db,
          onPage.map(({ id }) => id),
        )
      : new Map(),
    offcuts: await glimpseOffcuts(db, offcuts),
    units: c.get('units'),
  };
}

const facetsOf = ({ size, fold, fit, paper, month }: FindQuery): Facet[] => [
  ...SIZE_WORDS.filter(({ name }) => name === size).flatMap(longFacets),
  ...(fold ? [{ name: 'fold', value: fold } as const] : []),
  ...(fit ? [{ name: 'fit', value: fit } as const] : []),
  ...(paper ? [{ name: 'paper', value: paper } as const] : []),
  ...(month ? [{ name: 'month', value: month } as const] : []),
];
