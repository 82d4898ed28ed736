import type { Answer, StandingInTheWay } from "../../src/explore/answer.ts";
import type { Beside } from "../../src/explore/read-source.ts";
import type { StepOutcome } from "../../src/explore/steps.ts";
import type { Reached } from "../../src/report/progress-words.ts";
import type { WhyTold } from "../../src/why/why-told.ts";

/** What the solving thread is asked; a later request supersedes all earlier ones. */
export interface SolveRequest extends Beside {
  readonly sequence: number;
  readonly source: string;
  readonly name: string;
  /** The rule whose steps are tried first. */
  readonly first?: string;
  /** Asks why nothing fits, or which rules bind, instead of for the fit. */
  readonly why?: true;
}

/** Tells the solving thread to end the search of the request with this sequence, with the best so far. */
export interface EndSearch {
  readonly end: number;
}

/** What the solving thread tells; each about the request with its sequence. */
export type SolveReport =
  | { readonly kind: "started"; readonly sequence: number }
  /** Told now and then of a search that takes long. */
  | { readonly kind: "progress"; readonly sequence: number; readonly reached: Reached }
  | { readonly kind: "answer"; readonly sequence: number; readonly answer: Answer }
  | { readonly kind: "step"; readonly sequence: number; readonly outcome: StepOutcome }
  | {
      readonly kind: "conflict";
      readonly sequence: number;
      readonly conflict: readonly StandingInTheWay[];
    }
  | { readonly kind: "all tried"; readonly sequence: number }
  /** Told of every finding, and once more when all is done. */
  | {
      readonly kind: "why";
      readonly sequence: number;
      readonly why?: WhyTold;
      readonly doing: string;
      readonly isDone: boolean;
    };
