import type { Outcome, Program, Progress } from "./program.ts";

/** Which engine a worker runs; handed over when it starts. */
export interface WorkerRole {
  readonly engine: "simplex" | "highs";
}

/** One program to solve. */
export interface Question {
  readonly id: number;
  readonly program: Program;
  /** Limit from the moment the worker begins with this program. */
  readonly patienceMs: number | undefined;
  /** By the clock that all threads share (Date.now), because a question waits while earlier ones are solved. */
  readonly deadline: number | undefined;
  /** One number in shared memory: not 0 once the solve is to stop with what there is. */
  readonly stop: Int32Array<SharedArrayBuffer>;
}

/** How far the solve of a question has come. */
interface Word {
  readonly id: number;
  readonly progress: Progress;
}

interface Answer {
  readonly id: number;
  readonly outcome: Outcome;
}

/**
 * What a worker says: `ready` once, when it can begin; then one answer for each question, in their order, with any
 * number of words before it where it takes long.
 */
export type WorkerMessage = "ready" | Word | Answer;
