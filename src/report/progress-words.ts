import type { Progress } from "../../solver/program.ts";
import { counted } from "./words.ts";

/** What is being looked for, and how far that has come. */
export interface Reached {
  /** What is being done: "Best fit", "Next best fit 2 of 5". */
  readonly phase: string;
  readonly elapsedMs: number;
  /** Linear programs solved in this phase; absent in a phase of one. */
  readonly solved?: number;
  /** Questions asked in this phase that may have taken no program at all. */
  readonly asked?: number;
  /** Of the program that is being solved, where one is. */
  readonly progress?: Progress;
}

/**
 * One line: the phase, the seconds, and of a single program its nodes, what the best gives up so far and what none can
 * be below. Of several, each has figures of its own that say nothing of the whole, so they are counted.
 */
export function progressWords({ phase, elapsedMs, solved, asked, progress }: Reached): string {
  const parts = [`${Math.round(elapsedMs / 1000)} s`];
  if (asked !== undefined) return `${phase}: ${[...parts, `${asked} tried`].join(", ")}`;
  if (solved !== undefined) parts.push(`${counted(solved, "program")} solved`);
  if (progress && progress.nodes > 0) parts.push(counted(progress.nodes, "node"));
  if (progress && solved === undefined) {
    parts.push(progress.best === undefined ? "none found yet" : `best so far ${cost(progress.best)}`);
    if (progress.bound !== undefined) parts.push(`none below ${cost(progress.bound)}`);
  }
  return `${phase}: ${parts.join(", ")}`;
}

/** To the digits in which a fit tells what it gives up. */
export const cost = (value: number): string => value.toFixed(3);
