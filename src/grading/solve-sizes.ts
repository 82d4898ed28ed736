import { best, type Joined, type NoPicks, type Picks } from "../../solver/choice.ts";
import type { Engine, EngineOptions } from "../../solver/program.ts";
import { describeBreaches } from "../fit/check.ts";
import type { Fit } from "../fit/fit.ts";
import { fitFrom, type Prepared } from "../fit/prepare.ts";
import { RefusedFit } from "../fit/refused-fit.ts";
import { timeLeft } from "../fit/time-left.ts";
import type { SizeRange } from "../garment/garment.ts";
import { checkSharing } from "./check-sharing.ts";
import { joinSizes } from "./prepare-range.ts";

/** A size that has something to choose from. */
export interface ReadySize {
  readonly name: string;
  readonly prepared: Prepared;
}

/** Solves for some sizes of a range and adds up what it took. */
export interface Solving {
  /** @param without the size that is left out, where it is to be seen what that does */
  readonly together: (sizes: readonly ReadySize[], without?: ReadySize) => Promise<Together | NoPicks>;
  readonly alone: (size: ReadySize) => Promise<Picks | NoPicks>;
  readonly engine: Engine;
  /** For the next of several solves that have one limit together. */
  readonly limits: () => EngineOptions;
  readonly count: (nodes: number, note?: string) => void;
  readonly spent: () => { readonly nodes: number; readonly notes: readonly string[] };
}

/** The best choice for sizes that share a look. */
export interface Together {
  readonly status: "picked";
  readonly joined: Joined;
  readonly picks: Picks;
}

/** What is looked for beside the best fit: how a size fits by itself, or all others without it. */
export interface RangeStep {
  readonly looksFor: "alone" | "without";
  readonly size: string;
}

export function createSolving(
  { share }: SizeRange,
  engine: Engine,
  timeLimitMs: number | undefined,
  onStep: ((step: RangeStep) => void) | undefined,
): Solving {
  const limits = timeLeft(timeLimitMs);
  let nodes = 0;
  const notes = new Set<string>();
  const count = (more: number, note?: string): void => {
    nodes += more;
    if (note !== undefined) notes.add(note);
  };
  const counted = <Answer extends Picks | NoPicks>(answer: Answer): Answer => {
    count(answer.status === "failed" ? 0 : answer.nodes, answer.note);
    return answer;
  };
  return {
    engine,
    limits,
    count,
    spent: () => ({ nodes, notes: [...notes] }),
    alone: async ({ name, prepared }) => {
      onStep?.({ looksFor: "alone", size: name });
      return counted(await best(prepared.program, engine, limits()));
    },
    together: async (sizes, without) => {
      if (without) onStep?.({ looksFor: "without", size: without.name });
      const joined = joinSizes(share, sizes);
      const picks = counted(await best(joined.choice, engine, limits()));
      return picks.status === "picked" ? { status: "picked", joined, picks } : picks;
    },
  };
}

/**
 * The fits of all sizes of a range that picks of the joined program stand for.
 *
 * @throws RefusedFit where the independent check refuses one of them, or what they share
 */
export function fitsOf(
  range: SizeRange,
  sizes: readonly ReadySize[],
  joined: Joined,
  { picks, cost }: Pick<Picks, "picks" | "cost">,
): readonly Fit[] {
  const fits = sizes.map(({ prepared }, size) => {
    const own = joined.picksOf(size, picks);
    return fitFrom(prepared, { picks: own, cost: costOf(prepared, own) });
  });
  const breaches = checkSharing(range, fits, cost);
  if (breaches.length > 0) throw new RefusedFit(describeBreaches(breaches));
  return fits;
}

const costOf = ({ program }: Prepared, picks: readonly number[]): number =>
  picks.reduce((sum, option, group) => sum + program.groups[group]!.options[option]!.cost, 0);
