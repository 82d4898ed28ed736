import type { Reply } from "./engine-lane.ts";
import { violations } from "./feasibility.ts";
import { further } from "./further.ts";
import type { Program, Progress, Stopped } from "./program.ts";

/** What engines have found of one program, whether they got to an end or not. */
export interface Findings {
  /** Takes in a word from an engine under way, and gives what is known since then. */
  readonly hear: (word: Progress, engine: string) => Progress;
  /** Takes in how an engine ended. */
  readonly read: (reply: Reply, engine: string) => void;
  /** The outcome of a solve that is stopped here: the best point that the program allows, and the engine that found it. */
  readonly stopped: () => Stopped;
}

export function createFindings(program: Program): Findings {
  let known: Progress = { nodes: 0 };
  let point: readonly number[] | undefined;
  let asked = "none";
  let foundBy: string | undefined;

  /** A point that breaks the program is worth nothing, nor is its cost. */
  const hear = ({ point: given, best, ...rest }: Progress, engine: string): Progress => {
    asked = engine;
    const isPoint = given !== undefined && best !== undefined && isAllowed(program, given);
    known = further(known, isPoint ? { ...rest, best, point: given } : rest);
    if (known.point !== undefined) [point, foundBy] = [known.point, engine];
    return known;
  };
  const read = (reply: Reply, engine: string): void => {
    asked = engine;
    if (reply.kind !== "answered" || reply.outcome.status !== "stopped") return;
    const { nodes, bound, cost: best, point: given } = reply.outcome;
    const found = best !== undefined && given !== undefined && { best, point: given };
    hear({ nodes, ...(bound !== undefined && { bound }), ...found }, reply.outcome.engine);
  };
  const stopped = (): Stopped => ({
    status: "stopped",
    nodes: known.nodes,
    engine: foundBy ?? asked,
    ...(point !== undefined && known.best !== undefined && { point, cost: known.best }),
    ...(known.bound !== undefined && { bound: known.bound }),
  });
  return { hear, read, stopped };
}

/** Whether a program allows a point, by arithmetic that shares nothing with the engines. */
export const isAllowed = (program: Program, point: readonly number[]): boolean =>
  violations(program, point).length === 0;
