import { rivals as nextBest } from "../../solver/choice.ts";
import type { Engine } from "../../solver/program.ts";
import { WorkEnded, within } from "../fit/allowance.ts";
import type { Fit } from "../fit/fit.ts";
import { looksOf } from "../fit/looks.ts";
import { fitFrom, prepare } from "../fit/prepare.ts";
import { type Fits, fitGarment, type SolveOptions } from "../fit/solve.ts";
import { timeLeft } from "../fit/time-left.ts";
import type { Share, SizeRange } from "../garment/garment.ts";
import { fitRange } from "./fit-range.ts";
import { picksFor } from "./picks-for.ts";
import type { RangeDoesNotFit, RangeResult } from "./range-result.ts";
import { sharedKey } from "./shared-look.ts";

/** What came of looking for the fit of one size among all. */
export type SizeResult = Fits | Exclude<RangeResult, { status: "fits" }>;

const usualRivals = 5;

/**
 * The fit of one size of a range, as it is within the best fit of all sizes together. Its rivals keep to what the sizes
 * share. Sizes that share nothing have nothing to do with one another.
 *
 * @throws RefusedFit where the check refuses what the engine answered
 */
export async function fitSize(
  range: SizeRange,
  size: string,
  engine: Engine,
  options: SolveOptions = {},
): Promise<SizeResult> {
  const { rivals: wanted = usualRivals, ...limits } = options;
  if (!range.share) return fitAlone(range, size, engine, options);
  const left = timeLeft(limits.timeLimitMs);
  const result = await fitRange(range, engine, { ...left(), rivals: 0, advice: false });
  if (result.status !== "fits") return result;
  const { fit } = result.sizes.find(({ name }) => name === size)!;
  const next = await rivalsOf(fit, range.share, wanted, engine, { ...limits, ...left() });
  return {
    status: "fits",
    fit,
    amongSizes: true,
    proven: result.proven,
    // Where it is not proven, how much less this one size might give up cannot be told from the bound for all.
    bound: result.proven ? fit.cost : Number.NEGATIVE_INFINITY,
    rivals: next.fits,
    rivalsProven: next.proven,
    bestNodes: result.bestNodes,
    nodes: result.nodes + next.nodes,
    notes: [...new Set([...result.notes, ...next.notes])],
  };
}

async function fitAlone(
  range: SizeRange,
  size: string,
  engine: Engine,
  options: SolveOptions,
): Promise<SizeResult> {
  const { garment } = range.sizes.find(({ name }) => name === size)!;
  const result = await fitGarment(garment, engine, options);
  if (result.status !== "does not fit") return result;
  const nothing: Pick<RangeDoesNotFit, "misfits" | "freeing" | "clash"> = {
    misfits: [size],
    freeing: [],
    clash: [],
  };
  return { ...result, range, ...nothing };
}

interface NextBest {
  readonly fits: readonly Fit[];
  readonly proven: boolean;
  readonly nodes: number;
  readonly notes: readonly string[];
}

const none: NextBest = { fits: [], proven: true, nodes: 0, notes: [] };

/** The next best fits of a size that look as it does in what is shared. */
async function rivalsOf(
  fit: Fit,
  share: Share,
  wanted: number,
  engine: Engine,
  limits: SolveOptions,
): Promise<NextBest> {
  if (wanted === 0) return none;
  const keys = new Map(fit.looks.map((look) => [look.motif.name, sharedKey(share, look)]));
  const prepareLikeIt = () =>
    prepare(fit.garment, {
      fits: wanted + 1,
      looksOf: (motif, ...rest) =>
        looksOf(motif, ...rest).filter((look) => sharedKey(share, look) === keys.get(motif.name)),
    });
  try {
    const prepared = within(limits.timeLimitMs, prepareLikeIt)!;
    const first = {
      status: "picked",
      cost: fit.cost,
      bound: fit.cost,
      proven: true,
      nodes: 0,
      engine: "",
    } as const;
    const picks = picksFor(fit, prepared);
    const next = await nextBest(prepared.program, { ...first, picks }, wanted, engine, {
      ...(limits.timeLimitMs !== undefined && { timeLimitMs: limits.timeLimitMs }),
      onFound: (found) => limits.onRivals?.(found, wanted),
    });
    const { proven, nodes, note } = next;
    const fits = next.list.map((one) => fitFrom(prepared, one));
    return { fits, proven, nodes, notes: note === undefined ? [] : [note] };
  } catch (error) {
    if (error instanceof WorkEnded) return { ...none, proven: false };
    throw error;
  }
}
