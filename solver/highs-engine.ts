import type { CallbackData, Highs, HighsCallbackMap, Model } from "highs";
import { zeroMeets } from "./constant-rows.ts";
import { HIGHS } from "./engine-names.ts";
import { further } from "./further.ts";
import { lpNames } from "./lp-names.ts";
import { programToLpText } from "./lp-text.ts";
import { mergedTerms } from "./merged-terms.ts";
import { pointOf } from "./point.ts";
import type { Engine, EngineOptions, Outcome, Program, Progress } from "./program.ts";
import { programFault } from "./program-fault.ts";

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
    const highs = await loadHighs();
    if (options.signal?.aborted === true) return { status: "stopped", nodes: 0, engine: HIGHS };
    return solve(highs, program, options);
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
    model.run(callbacks(highs, program, model, options));
    const anyWhole = program.columns.some(({ whole }) => whole);
    const nodes = anyWhole ? Math.max(1, Number(model.info.get("mip_node_count"))) : 1;
    const ended = model.getModelStatus();

    if (ended === status.optimal || ended === status.empty) {
      const { point, cost } = pointIn(program, model);
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
        ...(Number(model.info.get("primal_solution_status")) === feasible ? pointIn(program, model) : {}),
        ...(Number.isFinite(bound) ? { bound } : {}),
      };
    }
    return failed(`The engine ended with its status ${ended}.`);
  });
}

/** What HiGHS is to tell on its way, and where it asks whether to go on; nothing where nobody wants to know. */
function callbacks(
  highs: Highs,
  program: Program,
  model: Model,
  { onProgress, signal }: EngineOptions,
): HighsCallbackMap {
  if (onProgress === undefined && signal === undefined) return {};
  const kind = highs.constants.callbackType;
  const columns = columnNumbers(program, model);
  let known: Progress = { nodes: 0 };
  const tell = (word: Progress): void => {
    known = further(known, word);
    onProgress?.(known);
  };
  const ask = (event: { readonly data: CallbackData; readonly interrupt: () => void }): undefined => {
    tell(progressOf(event.data));
    if (signal?.aborted === true) event.interrupt();
  };
  return {
    [kind.simplexInterrupt]: ask,
    [kind.ipmInterrupt]: ask,
    [kind.mipInterrupt]: ask,
    [kind.mipImprovingSolution]: ({ data }) => {
      if (data.mip_solution === undefined) return;
      const { point, cost } = pointAt(program, columns, data.mip_solution);
      tell({ ...progressOf(data), best: cost, point });
    },
  };
}

/**
 * An LP within the search says nothing of nodes and bounds, and HiGHS says what it does not know as infinite. What the
 * best costs comes with its point, since the figure alone is told ahead of it and is not rounded.
 */
const progressOf = ({ mip_node_count, mip_dual_bound }: CallbackData): Progress => ({
  nodes: Number(mip_node_count ?? 0),
  ...(Number.isFinite(mip_dual_bound) ? { bound: mip_dual_bound! } : {}),
});

/** Without a cost nothing is unbounded, so what is left is whether there is a point at all. */
function unboundedOr(highs: Highs, program: Program, options: EngineOptions, nodes: number): Outcome {
  const costless = program.columns.map((column) => ({ ...column, cost: 0 }));
  const outcome = solve(highs, { ...program, columns: costless }, options);
  return outcome.status === "optimal" ? { status: "unbounded", nodes, engine: HIGHS } : outcome;
}

const pointIn = (program: Program, model: Model) =>
  pointAt(program, columnNumbers(program, model), model.getSolution().colValue);

/** By name, because a reader numbers the columns in the order in which the text mentions them. */
const columnNumbers = (program: Program, model: Model): readonly number[] =>
  lpNames(program).columns.map((name) => model.getColByName(name));

const pointAt = (program: Program, columns: readonly number[], values: ArrayLike<number>) =>
  pointOf(program, (column) => {
    const value = values[columns[column]!];
    if (value === undefined) throw new Error(`no value for the column ${program.columns[column]!.name}`);
    return value;
  });

const failed = (reason: string): Outcome => ({ status: "failed", reason, engine: HIGHS });
