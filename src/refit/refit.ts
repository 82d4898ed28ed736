import type { Engine } from "../../solver/program.ts";
import { unlessEnded } from "../fit/allowance.ts";
import { describeBreaches } from "../fit/check.ts";
import { type Fit, lookOf } from "../fit/fit.ts";
import { RefusedFit, type SolveOptions } from "../fit/solve.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";
import { inCentimetres } from "../report/words.ts";
import { assembleRefit } from "./assemble.ts";
import { checkRefit } from "./check/check-refit.ts";
import { hasValuesOf } from "./choices.ts";
import { type CordBalance, cordBalances } from "./cord-balance.ts";
import { strainedSegments } from "./going-on.ts";
import { type Measured, measureProgress, type Progress, type Unusable } from "./progress.ts";
import { solveRest } from "./solve-rest.ts";
import { isElsewhere } from "./undertaking.ts";

export { obstaclesTo } from "./obstacles.ts";
export { type Measured, measureProgress } from "./progress.ts";

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
  /** Whether the garment asks for a fit that holds for every gauge the measurement leaves possible, and there is none. */
  readonly unsteady: boolean;
  /** Motifs whose quantities differ now from those on the other pieces. */
  readonly unlike: readonly string[];
  /** Stretches of a repeat in hand whose ease goes beyond its limits at the gauge as measured. */
  readonly strained: readonly { readonly motif: string; readonly segment: string; readonly ease: number }[];
  readonly nodes: number;
  readonly notes: readonly string[];
}

/** Nothing that the rules allow is left for the rest of the piece; `obstaclesTo` says why. */
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
 * is finished as it was begun; what follows is the best that the garment's rules leave, as for a fit. A motif of which
 * some is worked keeps its quantities, here as on other pieces that have it, unless nothing would fit then.
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
  const growing = growingAbove(fit, piece, row);
  if (growing !== undefined)
    return {
      status: "unusable",
      problem: `${growing} grows from repeat to repeat, and the rest of a growing motif cannot be fitted anew yet; knitted on as it stands, ${piece} will end at ${inCentimetres(progress.length.mm)}`,
    };
  const parted = workedInPart(fit, piece, row);
  if (parted !== undefined)
    return {
      status: "unusable",
      problem: `the repeat of ${parted} that cannot be finished is being worked in part, and the rest of it cannot be fitted anew; knitted on as it stands, ${piece} will end at ${inCentimetres(progress.length.mm)}`,
    };
  const limits = options.timeLimitMs === undefined ? {} : { timeLimitMs: options.timeLimitMs };
  const place = { fit, piece, row, gauge: progress.gauge };
  const solved = (await unlessEnded(() => solveRest(place, engine, limits))) ?? outOfTime;
  const notes = [
    ...(solved.note === undefined ? [] : [solved.note]),
    ...(fit.garment.onHand ? [onHandIsNotHeld] : []),
  ];
  switch (solved.status) {
    case "solved":
      break;
    case "infeasible":
      return {
        status: "does not fit",
        progress,
        nodes: solved.nodes,
        notes,
      };
    case "stopped":
      return { status: "stopped", progress, reason: timeIsUp, nodes: solved.nodes, notes };
    case "failed":
      return { status: "stopped", progress, reason: solved.reason, nodes: 0, notes };
  }
  const refitted = assembleRefit(fit.garment, solved.undertaking, solved.looks, solved.layouts);
  const isSteady = solved.undertaking.garment.steady !== undefined;
  const breaches = checkRefit(fit, refitted, row, solved.cost, isSteady);
  if (breaches.length > 0) throw new RefusedFit(describeBreaches(breaches));
  return {
    status: "refitted",
    progress,
    fit: refitted,
    proven: solved.proven,
    bound: solved.bound,
    unsteady: fit.garment.steady !== undefined && !isSteady,
    cords: cordBalances(options.cordsMadeFor ?? fit, refitted, row),
    unlike: refitted.looks
      .filter((look) => !hasValuesOf(look, lookOf(fit, look.motif.name)))
      .map(({ motif }) => motif.name)
      .filter((motif) => isElsewhere(fit.garment, motif, piece)),
    strained: solved.undertaking.standing.flatMap((standing) =>
      standing && standing.endRow > row
        ? strainedSegments(standing, refitted.garment.gauge).map(({ name, ease }) => ({
            motif: standing.placed.motif,
            segment: name,
            ease,
          }))
        : [],
    ),
    nodes: solved.nodes,
    notes,
  };
}

/** The motif that still has to grow on a piece, where there is one. */
const growingAbove = (fit: Fit, piece: string, row: number): string | undefined =>
  fit.placements.find(
    (placed) =>
      placed.piece === piece &&
      placed.lastRow > row &&
      growingQuantity(lookOf(fit, placed.motif).motif) !== undefined,
  )?.motif;

/** The motif of a piece whose unfinished repeat is begun at a row, where there is one: what of it is hung has to stay. */
const workedInPart = (fit: Fit, piece: string, row: number): string | undefined =>
  fit.placements.find((placed) => placed.piece === piece && placed.part && row > placed.lastRow)?.motif;

const onHandIsNotHeld =
  "What is on hand of cord and yarn is not held to here: compare what is left of it with what the rest takes.";

const timeIsUp = "the time allowed was up before a fit was found";

const outOfTime = { status: "stopped", nodes: 0, note: undefined } as const;
