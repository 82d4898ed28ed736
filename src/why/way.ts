import type { Change } from "../explore/edit.ts";
import type { Garment } from "../garment/garment.ts";

/** One change of the file, and what reading the file would give after it. */
export interface Giving {
  readonly change: Change;
  readonly give: (garment: Garment) => Garment;
}

/** A way for one rule to give way, further with every step; what fits after some steps fits after more of them. */
export interface Way {
  /** The rule, by its path joined by dots. */
  readonly rule: string;
  /** The furthest that is looked at. */
  readonly mostSteps: number;
  /** How far that is, in words: "up to 24 rows". */
  readonly followed: string;
  readonly costPerStep: number;
  /** All that may be given up in so many steps. */
  readonly widely: (garment: Garment, steps: number) => Garment;
  /** The changes that give up no more than the last of so many steps does; one of them is the least. */
  readonly barely: (steps: number) => readonly Giving[];
  /** What is left where no step of it is enough. */
  readonly otherwise?: Way;
}
