import { best } from "../../solver/choice.ts";
import type { Engine } from "../../solver/program.ts";
import { describeBreaches } from "../fit/check.ts";
import type { Fit } from "../fit/fit.ts";
import { formulate } from "../fit/formulate.ts";
import { RefusedFit, type SolveOptions } from "../fit/solve.ts";
import { assembleRefit } from "./assemble.ts";
import { checkRefit } from "./check/check-refit.ts";
import { openChoices } from "./choices.ts";
import { type CordBalance, cordBalances } from "./cord-balance.ts";
import { plannedWhereAsGood } from "./planned-picks.ts";
import { type Measured, measureProgress, type Progress, type Unusable } from "./progress.ts";
import { undertake } from "./undertaking.ts";

export type { CordBalance } from "./cord-balance.ts";
export { type Measured, measureProgress, type Progress, type Reading, type Unusable } from "./progress.ts";

/** Where a knitter stands and what was measured there. */
export interface RefitRequest {
  readonly piece: string;
  /** Rows knitted. */
  readonly row: number;
  readonly measured: Measured;
}

export interface RefitOptions extends Pick<SolveOptions, "timeLimitMs"> {
  /** The fit that the cords were made for; the one that is fitted anew unless stated. */
  readonly cordsMadeFor?: Fit;
}

export type RefitResult = Refitted | CannotRefit | RefitStopped | Unusable;

/** The rest of a piece fitted anew. */
export interface Refitted {
  readonly status: "refitted";
  readonly progress: Progress;
  /**
   * The piece from its cast-on edge, knitted rows first: only this piece, in the garment with the gauge as measured.
   * It can be fitted anew again further up.
   */
  readonly fit: Fit;
  /** Whether it is certain that nothing costs less. */
  readonly proven: boolean;
  readonly bound: number;
  readonly cords: readonly CordBalance[];
  readonly nodes: number;
  readonly notes: readonly string[];
}

export interface CannotRefit {
  readonly status: "does not fit";
  readonly progress: Progress;
  readonly nodes: number;
  readonly notes: readonly string[];
}

/** A limit was reached before there was anything to show. */
export interface RefitStopped {
  readonly status: "stopped";
  readonly progress: Progress;
  readonly reason: string;
  readonly nodes: number;
  readonly notes: readonly string[];
}

/**
 * Fits what is left of a piece anew by the gauge that is measured on it. What is knitted stays; a repeat that is begun
 * is finished as it was begun; what follows is the best that the garment's rules leave, as for a fit.
 *
 * @throws RefusedFit where the check refuses what the engine answered
 */
export async function refit(
  fit: Fit,
  { piece, row, measured }: RefitRequest,
  engine: Engine,
  options: RefitOptions = {},
): Promise<RefitResult> {
  const progress = measureProgress(fit, piece, row, measured);
  if (progress.status === "unusable") return progress;
  const undertaking = undertake(fit, piece, row, progress.gauge);
  const choices = openChoices(undertaking);
  if ([...choices.looks, ...choices.layouts].some((ones) => ones.length === 0))
    return { status: "does not fit", progress, nodes: 0, notes: [] };
  const program = formulate(choices, choices.footingUnder);
  const limits = options.timeLimitMs === undefined ? {} : { timeLimitMs: options.timeLimitMs };
  const answer = await best(program, engine, limits);
  const notes = answer.note === undefined ? [] : [answer.note];
  switch (answer.status) {
    case "picked":
      break;
    case "infeasible":
      return { status: "does not fit", progress, nodes: answer.nodes, notes };
    case "stopped":
      return { status: "stopped", progress, reason: timeIsUp, nodes: answer.nodes, notes };
    case "failed":
      return { status: "stopped", progress, reason: answer.reason, nodes: 0, notes };
  }
  const picks = plannedWhereAsGood(undertaking, choices, program, answer);
  const refitted = assembleRefit(
    fit.garment,
    undertaking,
    choices.looks.map((ofMotif, motif) => ofMotif[picks[motif]!]!),
    choices.layouts.map((ofPlacement, index) => ofPlacement[picks[choices.looks.length + index]!]!),
  );
  const breaches = checkRefit(fit, refitted, row, answer.cost);
  if (breaches.length > 0) throw new RefusedFit(describeBreaches(breaches));
  return {
    status: "refitted",
    progress,
    fit: refitted,
    proven: answer.proven,
    bound: answer.bound,
    cords: cordBalances(options.cordsMadeFor ?? fit, refitted, row),
    nodes: answer.nodes,
    notes,
  };
}

const timeIsUp = "the time allowed was up before a fit was found";
