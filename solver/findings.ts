import type { Reply } from "./engine-lane.ts";
import { violations } from "./feasibility.ts";
import { further } from "./further.ts";
import type { Outcome, Program, Progress, Stopped } from "./program.ts";

/** What engines have found of one program, whether they got to an end or not. */
export interface Findings {
  /** Takes in a word from an engine under way, and gives what is known since then. */
  readonly hear: (word: Progress, engine: string) => Progress;
  /** Takes in how an engine ended. */
  readonly read: (reply: Reply, engine: string) => void;
  /** The outcome of a solve that is stopped here: the best point that the program allows, and the engine that found it. */
  readonly stopped: () => Stopped;
  /**
   * What is wrong with an outcome that claims to be certain, by the program itself and by what was found before, in
   * words to follow "the solver"; undefined where nothing is.
   */
  readonly faultOf: (outcome: Outcome) => string | undefined;
}

/** Engines work to about 1e-7 of a cost; their bounds are theirs, and their points are rounded afterwards. */
const COST_TOLERANCE = 1e-6;

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
  const faultOf = (outcome: Outcome): string | undefined => {
    if (outcome.status === "infeasible" && point !== undefined)
      return "said that nothing is possible, though something was found";
    if (outcome.status !== "optimal") return undefined;
    const { cost } = outcome;
    if (!isAllowed(program, outcome.point)) return "gave an answer that breaks the program's own rows";
    const slack = COST_TOLERANCE * Math.max(1, Math.abs(cost));
    if (Math.abs(costAt(program, outcome.point) - cost) > slack)
      return "told a cost that its answer does not have";
    if (known.best !== undefined && cost > known.best + slack)
      return "called an answer the best, though a better one was found";
    if (known.bound !== undefined && cost < known.bound - slack)
      return "gave an answer that is better than it was said that any can be";
    return undefined;
  };
  return { hear, read, stopped, faultOf };
}

/** By arithmetic that shares nothing with the engines. */
const isAllowed = (program: Program, point: readonly number[]): boolean =>
  violations(program, point).length === 0;

const costAt = ({ columns }: Program, point: readonly number[]): number =>
  columns.reduce((sum, { cost }, column) => sum + cost * point[column]!, 0);
