/**
 * What each part and piece of an order stands for, kept beside the name by which planner and plan know it. Knows types
 * and how to ask them; names are minted in batch.ts and to-order.ts, and read back nowhere but for plans kept earlier.
 */
import type { Order, Part, Piece } from '#core/cutting/order.ts';
import type { PieceRef } from '#core/stash/stash.ts';

/** A blank of a project's envelope; `piece` counts from 0: a fold of two pieces has two for each envelope. */
export interface BlankOf {
  readonly project: number;
  readonly piece: number;
}

/** A part that was typed in: its place among those of the batch, from 0. */
export interface TypedPart {
  readonly typed: number;
}

export interface OrderedPart extends Part {
  readonly of: BlankOf | TypedPart;
}

export interface BatchOrder extends Order {
  readonly parts: readonly OrderedPart[];
}

export interface OfferedPiece extends Piece {
  /** What it is on the shelf. */
  readonly ref: PieceRef;
}

export const isTyped = (part: OrderedPart): part is OrderedPart & { readonly of: TypedPart } =>
  'typed' in part.of;

export const isBlank = (part: OrderedPart): part is OrderedPart & { readonly of: BlankOf } =>
  'project' in part.of;
