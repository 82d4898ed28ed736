import { best, type NoPicks, rivals as nextBest } from "../../solver/choice.ts";
import type { Engine } from "../../solver/program.ts";
import type { Garment } from "../garment/garment.ts";
import { WorkEnded, within } from "./allowance.ts";
import type { Fit } from "./fit.ts";
import type { Kept } from "./kept.ts";
import { fitFrom, prepare } from "./prepare.ts";
import { timeLeft } from "./time-left.ts";

export { RefusedFit } from "./refused-fit.ts";

/** What came of looking for a fit. */
export type FitResult = Fits | DoesNotFit | Stopped;

export interface Fits {
  readonly status: "fits";
  readonly fit: Fit;
  /** Whether it is certain that nothing costs less. */
  readonly proven: boolean;
  /** Whether it is one of several sizes that share something, and the best for all of them together. */
  readonly amongSizes?: boolean;
  readonly bound: number;
  readonly rivals: readonly Fit[];
  /** Whether each rival is certain to be the next best. */
  readonly rivalsProven: boolean;
  /** Nodes for the best fit alone, and for its rivals too. */
  readonly bestNodes: number;
  readonly nodes: number;
  readonly notes: readonly string[];
}

interface DoesNotFit {
  readonly status: "does not fit";
  readonly nodes: number;
  readonly notes: readonly string[];
}

/** A limit was reached before there was anything to show. */
interface Stopped {
  readonly status: "stopped";
  readonly reason: string;
  readonly nodes: number;
  readonly notes: readonly string[];
}

export interface SolveOptions {
  /** How many of the next best fits to look for; 5 unless stated. */
  readonly rivals?: number;
  readonly timeLimitMs?: number;
  /** Told once the best fit is found, and after each rival, how many of them there are. */
  readonly onRivals?: (found: number, wanted: number) => void;
  /** What was worked out for an earlier state of the garment. */
  readonly kept?: Kept;
}

const usualRivals = 5;

/**
 * The best fit of a garment and its rivals, each proven by the engine and each checked by code that shares nothing
 * with the formulation.
 *
 * @throws RefusedFit where the check refuses what the engine answered
 */
export async function fitGarment(
  garment: Garment,
  engine: Engine,
  options: SolveOptions = {},
): Promise<FitResult> {
  const wanted = options.rivals ?? usualRivals;
  const limits = timeLeft(options.timeLimitMs);
  let prepared: ReturnType<typeof prepare>;
  try {
    prepared = within(options.timeLimitMs, () =>
      prepare(garment, { fits: wanted + 1, ...(options.kept && { kept: options.kept }) }),
    );
  } catch (error) {
    if (error instanceof WorkEnded) return { status: "stopped", reason: error.message, nodes: 0, notes: [] };
    throw error;
  }
  if (!prepared) return { status: "does not fit", nodes: 0, notes: [] };
  const { program } = prepared;
  const first = await best(program, engine, limits());
  if (first.status !== "picked") return withoutFit(first);
  const fit = fitFrom(prepared, first);
  const next = await nextBest(program, first, wanted, engine, {
    ...limits(),
    onFound: (found) => options.onRivals?.(found, wanted),
  });
  return {
    status: "fits",
    fit,
    proven: first.proven,
    bound: first.bound,
    rivals: next.list.map((picks) => fitFrom(prepared, picks)),
    rivalsProven: next.proven,
    bestNodes: first.nodes,
    nodes: first.nodes + next.nodes,
    notes: [...new Set([first.note, next.note].filter((note) => note !== undefined))],
  };
}

function withoutFit(answer: NoPicks): DoesNotFit | Stopped {
  const notes = answer.note === undefined ? [] : [answer.note];
  if (answer.status === "infeasible") return { status: "does not fit", nodes: answer.nodes, notes };
  return {
    status: "stopped",
    reason: answer.status === "failed" ? answer.reason : "the time allowed was up before a fit was found",
    nodes: answer.status === "failed" ? 0 : answer.nodes,
    notes,
  };
}
