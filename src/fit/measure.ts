import type { Candidate } from "./candidates.ts";
import type { Look } from "./looks.ts";

/**
 * An amount that a rule over several placements, or a trade-off, reads beside the cost: it is added up over the looks
 * and layouts that are chosen. Of layouts alike in every measure only the cheapest are kept.
 */
export interface Measure {
  readonly name: string;
  readonly ofLook: (look: Look) => number;
  readonly ofLayout: (candidate: Omit<Candidate, "amounts">) => number;
  /**
   * What of a look a layout's amount depends on beside its footing, where there is such a thing: looks that differ in
   * it have layouts of their own, whose footing's `counted` is one of those looks.
   */
  readonly lookPart?: (look: Look) => string;
  /** What one unit of it adds to a layout's cost, where it adds anything. */
  readonly costEach?: number;
}
