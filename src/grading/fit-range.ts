import { type NoPicks, rivals as nextBest, type Picks } from "../../solver/choice.ts";
import type { Engine } from "../../solver/program.ts";
import { WorkEnded, within } from "../fit/allowance.ts";
import type { Fit } from "../fit/fit.ts";
import { fitFrom } from "../fit/prepare.ts";
import type { SolveOptions } from "../fit/solve.ts";
import type { SizeRange } from "../garment/garment.ts";
import { gainsOfDropping } from "./dropping.ts";
import { type PreparedSize, prepareRange } from "./prepare-range.ts";
import type { FittedSize, RangeFits, RangeResult, RangeRival } from "./range-result.ts";
import { sharedLook } from "./shared-look.ts";
import {
  createSolving,
  fitsOf,
  type RangeStep,
  type ReadySize,
  type Solving,
  type Together,
} from "./solve-sizes.ts";
import { whyTogetherNothingFits } from "./together-nothing-fits.ts";

export interface RangeOptions extends SolveOptions {
  /** How many of the next best looks to look for; 3 unless stated. */
  readonly rivals?: number;
  /** Whether to find out what each size gives up for the others, and what dropping one would gain; it is, unless stated. */
  readonly advice?: boolean;
  /** Told what is being looked for before it is: a size by itself, or all without one, by the size's name. */
  readonly onStep?: (step: RangeStep) => void;
}

const usualRivals = 3;

/**
 * The best fit of every size of a range, with one look for all in what they share: one program, proven by the engine;
 * each size is then checked by itself, and what they share by arithmetic of its own.
 *
 * @throws RefusedFit where the check refuses what the engine answered
 */
export async function fitRange(
  range: SizeRange,
  engine: Engine,
  options: RangeOptions = {},
): Promise<RangeResult> {
  const { rivals: wanted = usualRivals, advice = true, timeLimitMs, onStep, onRivals } = options;
  const solving = createSolving(range, engine, timeLimitMs, onStep);
  let sizes: readonly PreparedSize[];
  try {
    sizes = within(timeLimitMs, () => prepareRange(range, wanted + 1));
  } catch (error) {
    if (error instanceof WorkEnded) return { status: "stopped", reason: error.message, ...solving.spent() };
    throw error;
  }
  const ready = sizes.flatMap(({ name, prepared }): ReadySize[] => (prepared ? [{ name, prepared }] : []));
  if (ready.length < sizes.length) return doesNotFit(range, ready, solving);
  if (!range.share) return fitEachAlone(range, ready, solving);

  const together = await solving.together(ready);
  if (together.status === "infeasible") return doesNotFit(range, ready, solving);
  if (together.status !== "picked") return stopped(together, solving);
  const { joined, picks } = together;
  const fits = fitsOf(range, ready, joined, picks);
  const alone = advice ? await inTurn(ready, solving.alone) : [];
  const fitted = ready.map(({ name }, index) => sizeOf(name, fits[index]!, alone[index]));
  const dropping = advice ? await gainsOfDropping(range.share, picks, ready, fitted, solving) : [];
  const rivals = await nextLooks(range, ready, together, wanted, solving, onRivals);
  const { nodes, notes } = solving.spent();
  return {
    status: "fits",
    range,
    sizes: fitted,
    cost: picks.cost,
    proven: picks.proven,
    bound: picks.bound,
    ...rivals,
    dropping,
    bestNodes: picks.nodes,
    nodes,
    notes,
  };
}

async function inTurn<Item, Result>(
  items: readonly Item[],
  task: (item: Item) => Promise<Result>,
): Promise<readonly Result[]> {
  const results: Result[] = [];
  for (const item of items) results.push(await task(item));
  return results;
}

const sizeOf = (name: string, fit: Fit, alone: Picks | NoPicks | undefined): FittedSize => ({
  name,
  fit,
  ...(alone?.status === "picked" && { alone: { cost: alone.cost, proven: alone.proven } }),
});

async function nextLooks(
  range: SizeRange,
  sizes: readonly ReadySize[],
  { joined, picks }: Together,
  wanted: number,
  solving: Solving,
  onRivals: SolveOptions["onRivals"],
): Promise<Pick<RangeFits, "rivals" | "rivalsProven">> {
  const next = await nextBest(joined.choice, picks, wanted, solving.engine, {
    ...solving.limits(),
    onFound: (found) => onRivals?.(found, wanted),
  });
  solving.count(next.nodes, next.note);
  return {
    rivalsProven: next.proven,
    rivals: next.list.map((one): RangeRival => {
      const fits = fitsOf(range, sizes, joined, one);
      return {
        cost: one.cost,
        fits,
        looks: fits[0]!.looks.flatMap((look) => sharedLook(range.share, look) ?? []),
      };
    }),
  };
}

/** Sizes that share nothing are fitted one by one. */
async function fitEachAlone(
  range: SizeRange,
  ready: readonly ReadySize[],
  solving: Solving,
): Promise<RangeResult> {
  const picked: Picks[] = [];
  for (const size of ready) {
    const answer = await solving.alone(size);
    if (answer.status === "infeasible") return doesNotFit(range, ready, solving);
    if (answer.status !== "picked") return stopped(answer, solving);
    picked.push(answer);
  }
  const sum = (of: (picks: Picks) => number): number => picked.reduce((total, one) => total + of(one), 0);
  const { nodes, notes } = solving.spent();
  return {
    status: "fits",
    range,
    sizes: ready.map(({ name, prepared }, index) =>
      sizeOf(name, fitFrom(prepared, picked[index]!), picked[index]),
    ),
    cost: sum(({ cost }) => cost),
    proven: picked.every(({ proven }) => proven),
    bound: sum(({ bound }) => bound),
    rivals: [],
    rivalsProven: true,
    dropping: [],
    bestNodes: sum((one) => one.nodes),
    nodes,
    notes,
  };
}

/** Which sizes do not fit by themselves; where each does, which of them cannot go together. */
async function doesNotFit(
  range: SizeRange,
  ready: readonly ReadySize[],
  solving: Solving,
): Promise<RangeResult> {
  const fitting: string[] = [];
  for (const size of ready) {
    const answer = await solving.alone(size);
    if (answer.status === "picked") fitting.push(size.name);
    else if (answer.status !== "infeasible") return stopped(answer, solving);
  }
  const misfits = range.sizes.map(({ name }) => name).filter((name) => !fitting.includes(name));
  const apart =
    misfits.length > 0 ? { freeing: [], clash: [] } : await whyTogetherNothingFits(ready, solving);
  return { status: "does not fit", range, misfits, ...apart, ...solving.spent() };
}

function stopped(answer: Exclude<NoPicks, { status: "infeasible" }>, solving: Solving): RangeResult {
  return {
    status: "stopped",
    reason:
      answer.status === "failed"
        ? answer.reason
        : "the time allowed was up before a fit of every size was found",
    ...solving.spent(),
  };
}
