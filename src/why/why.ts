import type { Engine } from "../../solver/program.ts";
import type { Beside } from "../explore/read-source.ts";
import { duringAll, WorkEnded } from "../fit/allowance.ts";
import type { Fit } from "../fit/fit.ts";
import { createAnyFit, Undecided } from "../fit/refusal/any-fit.ts";
import type { NamedRule } from "../fit/refusal/rule.ts";
import { rulesOf } from "../fit/refusal/rules-of.ts";
import { conflictAmong } from "../fit/refusal.ts";
import type { Garment } from "../garment/garment.ts";
import { type Binding, bindingRules } from "./binding.ts";
import { byCost, type LeastChange, leastChanges } from "./least-changes.ts";
import { type Unhelpful, unhelpfulAmong } from "./unhelpful.ts";

/** What stands in the way of every fit, and what would let it fit, as far as it was found out. */
export interface WhyNot {
  readonly status: "does not fit";
  /** Rules that cannot all be kept whatever else gives way; empty where no rule of the file is to blame. */
  readonly conflict: readonly NamedRule[];
  /** Whether none of them can be left out. */
  readonly smallest: boolean;
  /** The least disturbing first. */
  readonly changes: readonly LeastChange[];
  /** What is known of the others of the conflict, once everything was tried. */
  readonly unhelpful: readonly Unhelpful[];
  /** Whether everything was tried. */
  readonly complete: boolean;
}

/** Which rules a fit leans on, as far as it was found out. */
export interface WhySo {
  readonly status: "fits";
  readonly binding: readonly Binding[];
  readonly complete: boolean;
}

export type Why = WhyNot | WhySo;

/** A garment file that is asked about. */
export interface Questioned {
  readonly source: string;
  readonly name: string;
  readonly garment: Garment;
  readonly beside?: Beside;
}

/** How the asking goes on. */
export interface Pace {
  readonly leftMs: () => number;
  /**
   * Called between one question and the next with what is being done.
   *
   * @throws Ended where the asking is to end with what was found so far
   */
  readonly goOn: (words: string) => void | Promise<void>;
  /** Told of every new finding; all of the findings so far. */
  readonly found?: (why: Why) => void;
}

/** Thrown by whoever sets the pace, to end the asking. */
export class Ended extends Error {
  override readonly name = "Ended";
}

/** Why nothing fits, and what instead. Where it is ended early, what was found so far. */
export async function whyNot(file: Questioned, engine: Engine, pace: Pace): Promise<WhyNot> {
  const { garment } = file;
  const rules = rulesOf(garment);
  let why: WhyNot = {
    status: "does not fit",
    conflict: rules,
    smallest: false,
    changes: [],
    unhelpful: [],
    complete: false,
  };
  const learn = (more: Partial<WhyNot>): void => {
    why = { ...why, ...more };
    pace.found?.(why);
  };
  const anyFit = createAnyFit(garment, engine, () => ({ timeLimitMs: Math.max(1, pace.leftMs()) }));
  const asking = (words: string) => async (one: Garment) => {
    await pace.goOn(words);
    return anyFit(one);
  };
  await asFarAsPossible(pace, async () => {
    const fitsWithout = asking("Leaving out one rule after the other");
    const { rules: conflict } = await conflictAmong(rules, garment, fitsWithout, (left) =>
      learn({ conflict: left }),
    );
    learn({ conflict, smallest: true });
    const fits = asking("Looking for the least changes");
    const changes = await leastChanges({ ...file, fits }, conflict, rules, (change) =>
      learn({ changes: byCost([...why.changes, change]) }),
    );
    learn({ unhelpful: unhelpfulAmong(file, conflict, changes), complete: true });
  });
  return why;
}

/** Which rules bind a fit. Where it is ended early, those found so far. */
export async function whySo(file: Questioned, fit: Fit, engine: Engine, pace: Pace): Promise<WhySo> {
  let why: WhySo = { status: "fits", binding: [], complete: false };
  const learn = (more: Partial<WhySo>): void => {
    why = { ...why, ...more };
    pace.found?.(why);
  };
  const goOn = () => pace.goOn("Trying one step of each rule");
  await asFarAsPossible(pace, async () => {
    await bindingRules(file, fit, engine, goOn, (one) => learn({ binding: [...why.binding, one] }));
    learn({ complete: true });
  });
  return why;
}

async function asFarAsPossible({ leftMs }: Pace, work: () => Promise<void>): Promise<void> {
  try {
    await duringAll(Math.max(1, leftMs()), work);
  } catch (error) {
    if (!(error instanceof Ended || error instanceof WorkEnded || error instanceof Undecided)) throw error;
  }
}
