import fc from "fast-check";
import { best, type ChoiceProgram } from "../../../solver/choice.ts";
import { violations } from "../../../solver/feasibility.ts";
import { highsEngine } from "../../../solver/highs-engine.ts";
import type { Column, Engine, Program, Row, Term } from "../../../solver/program.ts";
import { type Dice, thrown } from "../../support/random/dice.ts";
import { choiceLike, coverProgram, type GeneralKind, generalProgram } from "./differential-programs.ts";
import { glpkEngine } from "./glpk-engine.ts";

/** What came of putting the same programs to an engine and to both referees, kind by kind. */
export interface DifferentialReport {
  readonly kinds: readonly KindReport[];
  readonly disagreements: readonly Disagreement[];
}

interface KindReport {
  readonly kind: string;
  readonly programs: number;
  readonly optimal: number;
  readonly infeasible: number;
  readonly unbounded: number;
  /** Nodes of the engine under test: programs that it solved at the root. */
  readonly atTheRoot: number;
  /** Where it did not come to an end in its time, or said that it could not answer. */
  readonly unanswered: number;
  readonly disagreements: number;
}

interface Disagreement {
  readonly kind: string;
  readonly program: Program;
  /** How the engine under test, HiGHS and GLPK ended. */
  readonly ends: readonly string[];
}

type Drawn = { readonly choice: ChoiceProgram } | { readonly program: Program };

const general =
  (kind: GeneralKind) =>
  (dice: Dice): Drawn => ({ program: generalProgram(dice, kind) });

const kinds: Readonly<Record<string, (dice: Dice) => Drawn>> = {
  "trees of choices": (dice) => ({ choice: choiceLike(dice, { tied: false, budgets: 0 }) }),
  "large trees of choices": (dice) => ({ choice: choiceLike(dice, { tied: false, budgets: 0, places: 40 }) }),
  "choices with ties": (dice) => ({ choice: choiceLike(dice, { tied: true, budgets: 0 }) }),
  "choices with budgets": (dice) => ({
    choice: choiceLike(dice, { tied: false, budgets: dice.whole(1, 2) }),
  }),
  "choices with both": (dice) => ({ choice: choiceLike(dice, { tied: true, budgets: dice.whole(1, 2) }) }),
  "choices with fine budgets": (dice) => ({
    choice: choiceLike(dice, { tied: dice.chance(50), budgets: dice.whole(1, 2), scale: 100_000 }),
  }),
  covers: (dice) => ({ program: coverProgram(dice) }),
  "0/1 programs": general({
    columns: [4, 18],
    rows: [2, 10],
    greatestUpper: 1,
    wholePercent: 100,
    grain: 1,
    openPercent: 0,
  }),
  "whole-number programs": general({
    columns: [3, 12],
    rows: [2, 8],
    greatestUpper: 9,
    wholePercent: 100,
    grain: 0.25,
    openPercent: 10,
  }),
  "mixed programs": general({
    columns: [4, 16],
    rows: [3, 10],
    greatestUpper: 6,
    wholePercent: 60,
    grain: 0.01,
    openPercent: 10,
  }),
};

export const differentialKinds: readonly string[] = Object.keys(kinds);

/** Costs are sums of a few hundred numbers below 1e4, and engines work to about 1e-7 of them. */
const same = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(a));

/**
 * Puts random programs, as many of each kind, to an engine, to HiGHS and to GLPK. A choice program goes to the engine
 * the way a garment's does (options dropped, twins merged), and to the referees with every option in it.
 *
 * @param count programs over all kinds
 * @param fallback asked where the engine did not come to an end, and held to the same
 */
export async function differential(
  engine: Engine,
  count: number,
  seed: number,
  timeLimitMs: number,
  fallback?: Engine,
): Promise<DifferentialReport> {
  const reports: KindReport[] = [];
  const disagreements: Disagreement[] = [];
  const each = Math.ceil(count / differentialKinds.length);
  for (const [number, [kind, draw]] of Object.entries(kinds).entries()) {
    const tally = { optimal: 0, infeasible: 0, unbounded: 0, atTheRoot: 0, unanswered: 0, disagreements: 0 };
    for (const drawn of fc.sample(thrown(draw), { seed: seed + number, numRuns: each })) {
      const program = "choice" in drawn ? withEveryOption(drawn.choice) : drawn.program;
      const first = await answerOf(engine, drawn, timeLimitMs);
      const isAnswered = ["optimal", "infeasible", "unbounded"].includes(first.status);
      if (!isAnswered) tally.unanswered += 1;
      const answer = isAnswered || !fallback ? first : await answerOf(fallback, drawn, 60_000);
      const referees = [
        await answerOf(highsEngine, { program }, 60_000),
        await answerOf(glpkEngine, { program }, 60_000),
      ];
      if (answer.nodes === 1) tally.atTheRoot += 1;
      if (answer.status === "optimal") tally.optimal += 1;
      else if (answer.status === "infeasible") tally.infeasible += 1;
      else if (answer.status === "unbounded") tally.unbounded += 1;
      else if (!fallback) continue;
      if (referees.every((referee) => agree(answer, referee))) continue;
      tally.disagreements += 1;
      disagreements.push({ kind, program, ends: [answer, ...referees].map(inWords) });
    }
    reports.push({ kind, programs: each, ...tally });
  }
  return { kinds: reports, disagreements };
}

interface Answer {
  readonly status: string;
  readonly cost?: number;
  readonly nodes?: number;
}

async function answerOf(engine: Engine, drawn: Drawn, timeLimitMs: number): Promise<Answer> {
  if ("choice" in drawn) {
    const picks = await best(drawn.choice, engine, { timeLimitMs });
    if (picks.status !== "picked") return picks;
    return { ...picks, status: picks.proven ? "optimal" : "stopped" };
  }
  const outcome = await engine(drawn.program, { timeLimitMs });
  if (outcome.status === "optimal" && violations(drawn.program, outcome.point).length > 0)
    return { ...outcome, status: "breaks the program" };
  return outcome;
}

const agree = (a: Answer, b: Answer): boolean =>
  a.status === b.status && (a.cost === undefined || b.cost === undefined || same(a.cost, b.cost));

const inWords = ({ status, cost }: Answer): string => (cost === undefined ? status : `${status} ${cost}`);

/** One column for every option, whatever makes it needless. */
function withEveryOption({ groups, rows }: ChoiceProgram): Program {
  const columns: Column[] = [];
  const terms: Term[][] = rows.map(() => []);
  const takeOne = groups.map(({ name, options }): Row => {
    const taken = options.map((option): Term => {
      for (const [row, coefficient] of option.terms) terms[row]!.push([columns.length, coefficient]);
      columns.push({ name: option.name, cost: option.cost, whole: true, upper: 1 });
      return [columns.length - 1, 1];
    });
    return { name, terms: taken, relation: "=", bound: 1 };
  });
  return { columns, rows: [...takeOne, ...rows.map((row, index) => ({ ...row, terms: terms[index]! }))] };
}
