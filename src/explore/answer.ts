import type { Engine } from "../../solver/program.ts";
import { duringAll, unlessEnded } from "../fit/allowance.ts";
import { breakDown } from "../fit/refusal.ts";
import { type FitResult, RefusedFit, type SolveOptions } from "../fit/solve.ts";
import type { Garment } from "../garment/garment.ts";
import { type Asked, fitAsked } from "../grading/fit-asked.ts";

/** A rule that stands in the way of every fit, by its path in the file joined by dots. */
export interface StandingInTheWay {
  readonly rule: string;
  readonly words: string;
}

/** What came of looking for a garment's fit, as plain data that can be passed between threads. */
export type Answer =
  | { readonly kind: "result"; readonly result: FitResult }
  /** A fault of the program: nothing of it may be shown as a fit. */
  | { readonly kind: "failed"; readonly reason: string };

export interface AnswerLimits extends Pick<SolveOptions, "onRivals" | "kept"> {
  readonly rivals: number;
  readonly timeLimitMs: number;
}

/** The best fit with its rivals; never throws. */
export async function answerFor(asked: Asked, engine: Engine, limits: AnswerLimits): Promise<Answer> {
  try {
    return { kind: "result", result: await fitAsked(asked, engine, limits) };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return {
      kind: "failed",
      reason:
        error instanceof RefusedFit
          ? `an answer was found, but it does not keep the garment's own rules, so it is not shown: ${reason}`
          : reason,
    };
  }
}

/** Nobody waits longer before a screen. */
const longestMs = 60_000;

/** The rules that fail to meet, for a garment that nothing fits; none where that takes too long. This may take seconds. */
export async function conflictOf(garment: Garment, engine: Engine): Promise<readonly StandingInTheWay[]> {
  const found = await unlessEnded(() => duringAll(longestMs, () => breakDown(garment, engine)));
  return (found?.rules ?? []).map(({ rule, words }) => ({ rule, words }));
}
