import type { Motif, Quantity } from "./motif.ts";

export interface GrowingQuantity extends Quantity {
  /** Most by which it may change from one repeat to the next. */
  readonly change: number;
}

/** The quantity of a motif that may change from repeat to repeat. */
export const growingQuantity = (motif: Motif): GrowingQuantity | undefined =>
  motif.quantities.find((quantity): quantity is GrowingQuantity => quantity.change !== undefined);
