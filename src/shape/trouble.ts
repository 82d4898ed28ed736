import type { Code } from "../diagnostics/codes.ts";

/** Why a shape can't be made of its measurements, in a knitter's words. */
export interface ShapeTrouble {
  readonly code: Code;
  readonly message: string;
  readonly found: string;
  readonly expected: string;
  /** Keys of the shape at which it may be told, the likeliest first. */
  readonly blame: readonly string[];
}

/** Carries a trouble out of the sums in which it is met; `makeShape` catches it, so that it never leaves this folder. */
export class ShapeStop extends Error {
  constructor(readonly trouble: ShapeTrouble) {
    super(trouble.message);
  }
}
