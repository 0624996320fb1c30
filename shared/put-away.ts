/** What may leave the lists and come back: the words for it and the rows that keep it in the book. Knows no database. */

export const AWAY_KINDS = ['projects', 'pads', 'designs', 'cards', 'tools', 'series'] as const;

export type AwayKind = (typeof AWAY_KINDS)[number];

export interface AwayRef {
  readonly kind: AwayKind;
  readonly id: number;
}

/** Other rows by which a thing is named. */
export type NamedBy = 'ledger' | 'designs' | 'offcuts' | 'envelopes' | 'plans' | 'projects' | 'outcomes';

/** One thing, and whether it is away since `at`. What nothing else names is *deleted*, anything else *put away*. */
export interface Standing extends AwayRef {
  readonly name: string;
  readonly at: string | null;
  readonly namedBy: readonly NamedBy[];
}

export const isDeletable = ({ namedBy }: Pick<Standing, 'namedBy'>): boolean => namedBy.length === 0;
