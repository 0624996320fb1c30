/** What to buy: paper that runs low, and parts that planned projects lack paper for. Types only. */
import type { Size } from '#shared/size.ts';

export interface MissingPart extends Size {
  readonly project: number;
  readonly title: string;
  readonly part: string;
  readonly copies: number;
}
