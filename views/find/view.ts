/** What the page of all that is found is given. Types only. */
import type { FoundKind } from '#core/finding/rank.ts';
import type { Asked } from '#core/finding/read-query.ts';
import type { FindKind } from '#core/finding/vocabulary.ts';
import type { Length, Units } from '#shared/length.ts';
import type { FindQuery } from '#shared/schemas/find.ts';
import type { Size } from '#shared/size.ts';

interface Measure {
  readonly field: string;
  readonly length: Length;
  readonly other: Length | null;
}

export interface FindView {
  readonly query: FindQuery;
  readonly asked: Asked;
  /** The only kind that is looked for, where there is one. */
  readonly kind: FindKind | undefined;
  readonly groups: readonly FoundKind[];
  /** So many of each kind stand on the page. */
  readonly shown: number;
  /** Of those on the page, where a measure was asked for. */
  readonly measures: ReadonlyMap<number, readonly Measure[]>;
  /** Of the offcuts on the page. */
  readonly offcuts: ReadonlyMap<number, Size & { readonly place: string }>;
  readonly units: Units;
}
