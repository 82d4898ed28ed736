import type { Engine, EngineOptions, Outcome } from "../program.ts";
import { mergeTwins } from "../twins.ts";
import type { NoPicks, Picks } from "./choice-program.ts";
import type { IndexedChoice } from "./indexed-choice.ts";
import { propagate } from "./propagate.ts";
import { columnsOf, type Keep } from "./to-program.ts";

/** Named as the engine where it was plain without one that nothing can be picked. */
export const WITHOUT_ENGINE = "none needed";

/** The best picks among undominated options. */
export async function solveRestricted(
  indexed: IndexedChoice,
  kept: Keep,
  engine: Engine,
  options: EngineOptions,
): Promise<Picks | NoPicks> {
  const possible = propagate(indexed, kept);
  if (possible === undefined) return { status: "infeasible", nodes: 0, engine: WITHOUT_ENGINE };

  const columns = columnsOf(indexed, possible);
  const merged = mergeTwins(columns.program);
  const outcome = await engine(merged.program, options);
  const shared = { engine: outcome.engine, ...(outcome.note === undefined ? {} : { note: outcome.note }) };
  if (outcome.status === "failed") return { status: "failed", reason: outcome.reason, ...shared };
  if (outcome.status === "unbounded")
    return {
      status: "failed",
      reason: "The engine found no least cost among finitely many choices.",
      ...shared,
    };
  if (outcome.status === "infeasible" || outcome.point === undefined)
    return {
      status: outcome.status === "infeasible" ? "infeasible" : "stopped",
      nodes: outcome.nodes,
      ...shared,
    };

  const picks = picksAt(columns.options, merged.expand(outcome.point), possible.length);
  if (picks === undefined)
    return { status: "failed", reason: "The engine did not take one option of each group.", ...shared };
  const cost = costOf(indexed, picks);
  return {
    status: "picked",
    picks,
    cost,
    bound: Math.min(cost, boundOf(outcome)),
    proven: outcome.status === "optimal",
    nodes: outcome.nodes,
    ...shared,
  };
}

const boundOf = (outcome: Outcome): number =>
  ("bound" in outcome ? outcome.bound : undefined) ?? Number.NEGATIVE_INFINITY;

/** Added up in the order of the groups, so that equal picks always have equal costs. */
const costOf = ({ groups }: IndexedChoice, picks: readonly number[]): number =>
  picks.reduce((sum, option, group) => sum + groups[group]!.costs[option]!, 0);

function picksAt(
  options: readonly (readonly [group: number, option: number])[],
  point: readonly number[],
  groups: number,
): number[] | undefined {
  const picks: number[] = new Array(groups).fill(-1);
  for (const [column, [group, option]] of options.entries()) {
    if (point[column]! < 0.5) continue;
    if (picks[group] !== -1) return undefined;
    picks[group] = option;
  }
  return picks.includes(-1) ? undefined : picks;
}
