import type { Highs, Model } from "highs";
import { zeroMeets } from "./constant-rows.ts";
import { lpNames } from "./lp-names.ts";
import { programToLpText } from "./lp-text.ts";
import { mergedTerms } from "./merged-terms.ts";
import type { Engine, EngineOptions, Outcome, Program } from "./program.ts";
import { programFault } from "./program-fault.ts";

export const HIGHS = "HiGHS";

/** HiGHS stops by default within a ten-thousandth of the optimum; here the optimum itself is asked for. */
const EXACT = { mip_rel_gap: 0, mip_abs_gap: 1e-9, mip_feasibility_tolerance: 1e-7 };

/**
 * Solves a program with HiGHS, which reads it as LP text. The WebAssembly module is loaded at the first call and
 * kept. The solve itself blocks the thread.
 */
export const highsEngine: Engine = async (program, options = {}) => {
  const fault = programFault(program);
  if (fault !== undefined) return failed(fault);
  // Readers drop rows without columns, or refuse them.
  if (program.rows.some((row) => mergedTerms(row.terms).length === 0 && !zeroMeets(row.relation, row.bound)))
    return { status: "infeasible", nodes: 0, engine: HIGHS };
  if (program.columns.length === 0)
    return { status: "optimal", point: [], cost: 0, bound: 0, nodes: 0, engine: HIGHS };
  try {
    return solve(await loadHighs(), program, options);
  } catch (error) {
    return failed(`The engine stopped with an error: ${error instanceof Error ? error.message : error}`);
  }
};

let module: Promise<Highs> | undefined;

/** Loads the WebAssembly module ahead of the first program. */
export function loadHighs(): Promise<Highs> {
  module ??= import("highs").then(({ default: load }) => load());
  return module;
}

function solve(highs: Highs, program: Program, options: EngineOptions): Outcome {
  const status = highs.constants.modelStatus;
  return highs.withModel({ format: "lp", data: programToLpText(program) }, (model): Outcome => {
    model.options.set({ output_flag: false, ...EXACT });
    if (options.timeLimitMs !== undefined) model.options.set("time_limit", options.timeLimitMs / 1000);
    model.run();
    const anyWhole = program.columns.some(({ whole }) => whole);
    const nodes = anyWhole ? Math.max(1, Number(model.info.get("mip_node_count"))) : 1;
    const ended = model.getModelStatus();

    if (ended === status.optimal || ended === status.empty) {
      const { point, cost } = pointOf(program, model);
      const bound = anyWhole ? Math.min(cost, Number(model.info.get("mip_dual_bound"))) : cost;
      return { status: "optimal", point, cost, bound, nodes, engine: HIGHS };
    }
    if (ended === status.infeasible) return { status: "infeasible", nodes, engine: HIGHS };
    if (ended === status.unbounded) return { status: "unbounded", nodes, engine: HIGHS };
    if (ended === status.unboundedOrInfeasible) return unboundedOr(highs, program, options, nodes);
    if (ended === status.timeLimit || ended === status.interrupted || ended === status.iterationLimit) {
      const feasible = highs.constants.solutionStatus.feasible;
      const bound = anyWhole ? Number(model.info.get("mip_dual_bound")) : Number.NaN;
      return {
        status: "stopped",
        nodes,
        engine: HIGHS,
        ...(Number(model.info.get("primal_solution_status")) === feasible ? pointOf(program, model) : {}),
        ...(Number.isFinite(bound) ? { bound } : {}),
      };
    }
    return failed(`The engine ended with its status ${ended}.`);
  });
}

/** Without a cost nothing is unbounded, so what is left is whether there is a point at all. */
function unboundedOr(highs: Highs, program: Program, options: EngineOptions, nodes: number): Outcome {
  const costless = program.columns.map((column) => ({ ...column, cost: 0 }));
  const outcome = solve(highs, { ...program, columns: costless }, options);
  return outcome.status === "optimal" ? { status: "unbounded", nodes, engine: HIGHS } : outcome;
}

/**
 * Values by name, because a reader numbers the columns in the order in which the text mentions them. The engine's
 * tolerance may leave one a hair below zero.
 */
function pointOf(program: Program, model: Model): { point: number[]; cost: number } {
  const { colValue } = model.getSolution();
  const point = lpNames(program).columns.map((name, column) => {
    const value = colValue[model.getColByName(name)];
    if (value === undefined) throw new Error(`no value for the column ${name}`);
    return Math.max(0, program.columns[column]!.whole ? Math.round(value) : value);
  });
  const cost = program.columns.reduce((sum, column, index) => sum + column.cost * point[index]!, 0);
  return { point, cost };
}

const failed = (reason: string): Outcome => ({ status: "failed", reason, engine: HIGHS });
