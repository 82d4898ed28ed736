import type { Fits } from "../../fit/solve.ts";
import { cost } from "../../report/progress-words.ts";
import type { Ending } from "./solve-watch.ts";

/** A fit without rivals leaves out what is said of them. */
type Unfinished = Pick<Fits, "fit" | "proven" | "bound"> & Partial<Pick<Fits, "rivalsProven">>;

/** What is said of a fit whose search was ended early: by whom, and how much better the best may be. */
export function endedEarly(result: Unfinished, ending: Ending, timeLimitMs: number): readonly string[] {
  const who = whoEnded(ending, timeLimitMs);
  if (!result.proven) return [`${who}; this is the best so far. ${improvement(result)}`];
  if (result.rivalsProven === false)
    return [`${who}; the best fit is proven, but not all of the next best were found or proven.`];
  return [];
}

/** At most how much less the best gives up, as a sentence. */
const improvement = ({ fit, bound }: Unfinished): string =>
  Number.isFinite(bound)
    ? `It may be improved by at most ${cost(Math.max(0, fit.cost - bound))}.`
    : "How much it may be improved is not known.";

/** Why there is nothing to show. */
export const endedWithout = (ending: Ending, timeLimitMs: number): string =>
  `${whoEnded(ending, timeLimitMs)} before a fit was found.${ending === "knitter" ? "" : " A longer one: --time-limit SECONDS"}`;

/** Said where it is certain that nothing fits, and no more than that. */
export const conflictCutShort = "Which rules stand in the way was not found out before this was stopped.";

/** Who ended a search, as words that a sentence can go on from. */
export const whoEnded = (ending: Ending, timeLimitMs: number): string =>
  ending === "knitter"
    ? "Stopped by you"
    : `Stopped at the time limit of ${Number((timeLimitMs / 1000).toFixed(2))} s`;
