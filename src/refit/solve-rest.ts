import { best, type NoPicks } from "../../solver/choice.ts";
import type { Engine, EngineOptions } from "../../solver/program.ts";
import { within } from "../fit/allowance.ts";
import { formulate } from "../fit/formulate.ts";
import type { Layout } from "../fit/layouts.ts";
import type { Look } from "../fit/looks.ts";
import { openChoices } from "./choices.ts";
import { plannedWhereAsGood } from "./planned-picks.ts";
import { leewaysFor, type Stand, type Undertaking, undertake } from "./undertaking.ts";

/** The best for what is left of a piece. */
export interface SolvedRest {
  readonly status: "solved";
  readonly undertaking: Undertaking;
  readonly looks: readonly Look[];
  readonly layouts: readonly Layout[];
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly nodes: number;
  readonly note?: string;
}

/** The best for what is left of a piece, with no more leeway than it takes for something to fit. */
export async function solveRest(
  stand: Stand,
  engine: Engine,
  limits: EngineOptions,
): Promise<SolvedRest | NoPicks> {
  let nodes = 0;
  for (const leeway of leewaysFor(stand.fit.garment)) {
    const answer = await solveUndertaking(undertake(stand, leeway), engine, limits);
    if (answer.status !== "infeasible") return answer;
    nodes += answer.nodes;
  }
  return { status: "infeasible", nodes, engine: "none" };
}

/** Chooses looks and layouts by the same choice program as a whole fit. */
export async function solveUndertaking(
  undertaking: Undertaking,
  engine: Engine,
  limits: EngineOptions,
): Promise<SolvedRest | NoPicks> {
  const choices = within(limits.timeLimitMs, () => openChoices(undertaking));
  if ([...choices.looks, ...choices.layouts].some((ones) => ones.length === 0))
    return { status: "infeasible", nodes: 0, engine: "none" };
  const program = formulate(choices, choices.footingUnder);
  const answer = await best(program, engine, limits);
  if (answer.status !== "picked") return answer;
  const picks = plannedWhereAsGood(undertaking, choices, program, answer);
  return {
    status: "solved",
    undertaking,
    looks: choices.looks.map((ofMotif, motif) => ofMotif[picks[motif]!]!),
    layouts: choices.layouts.map((ofPlacement, index) => ofPlacement[picks[choices.looks.length + index]!]!),
    cost: answer.cost,
    bound: answer.bound,
    proven: answer.proven,
    nodes: answer.nodes,
    ...(answer.note !== undefined && { note: answer.note }),
  };
}
