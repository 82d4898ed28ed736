import type { Outcome, Program } from "./program.ts";

/** Which engine a worker runs; handed over when it starts. */
export interface WorkerRole {
  readonly engine: "simplex" | "highs";
}

/** One program to solve. */
export interface Question {
  readonly id: number;
  readonly program: Program;
  /** Limit from the moment the worker begins with this program. */
  readonly patienceMs?: number;
  /** By the clock that all threads share (Date.now), because a question waits while earlier ones are solved. */
  readonly deadline?: number;
}

export interface Answer {
  readonly id: number;
  readonly outcome: Outcome;
}

/** What a worker says: `ready` once, when it can begin; then one answer for each question, in their order. */
export type WorkerMessage = "ready" | Answer;
