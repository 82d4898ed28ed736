import { createGuardedEngine } from "../../solver/guarded-engine.ts";
import { highsIsInstalled } from "../../solver/highs-installed.ts";
import { duringAll, unlessEnded } from "../fit/allowance.ts";
import { type FitResult, RefusedFit } from "../fit/solve.ts";
import { fitAsked } from "../grading/fit-asked.ts";
import type { SizeResult } from "../grading/fit-size.ts";
import { type PlacedRule, placedRules } from "../report/fit-json.ts";
import { type Steadiness, steadinessOf } from "../steady/steadiness.ts";
import { numberOption, wordOption } from "./arguments.ts";
import type { CommandInput } from "./command.ts";
import { CommandError, type ExitCode, exitCodes } from "./exit-codes.ts";
import { garmentInOneSize, type LoadedGarment, type SoundGarment } from "./load-garment.ts";
import { conflictCutShort, endedEarly, endedWithout } from "./progress/ending-words.ts";
import { type Ending, type SolveWatch, watchSolves } from "./progress/solve-watch.ts";
import { rulesInTheWay } from "./rules-in-the-way.ts";
import { asAsked } from "./steadily.ts";

export interface Solved {
  readonly loaded: LoadedGarment;
  /** Its notes say by whom it was ended early. */
  readonly result: FitResult | SizeResult;
  /** Which rules fail to meet, where nothing fits; absent where that was not found out. */
  readonly conflict?: readonly PlacedRule[];
  /** What there is to know of a garment that has to be steady, where that was asked for. */
  readonly steadiness?: Steadiness;
  readonly elapsedMs: number;
  /** How the command ends that shows this. */
  readonly code: ExitCode;
}

const usualSeconds = 60;

/**
 * Reads the file and fits it, with the engine starting up meanwhile.
 *
 * @param looksRound whether, for a garment that has to be steady, it is looked for how wide a range can be had and what
 *   a larger swatch would gain
 */
export async function solveFile(
  file: string,
  input: CommandInput,
  rivals?: number,
  looksRound = false,
): Promise<Solved> {
  const { options, terminal } = input;
  return withEngine(input, async (watch) =>
    solveLoaded(
      asAsked(await garmentInOneSize(file, terminal, options), options),
      watch,
      input,
      rivals,
      looksRound,
    ),
  );
}

/** The same for a file that was read already; one size of it where it has sizes. */
export async function solveLoaded(
  loaded: SoundGarment,
  watch: SolveWatch,
  { options }: CommandInput,
  rivals: number | undefined,
  looksRound: boolean,
): Promise<Solved> {
  const timeLimitMs = timeLimitOf(options);
  const started = performance.now();
  const found = await fitAsked({ ...loaded, size: loaded.size?.name }, watch.engine, {
    timeLimitMs,
    ...(rivals !== undefined && { rivals }),
    onRivals: (count, of) => watch.phase(`Next best fit ${Math.min(count + 1, of)} of ${of}`, "many"),
  });
  const result = withEnding(found, watch.ending(), timeLimitMs);
  const conflict = fitsAlone(result, loaded) ? { notes: [] } : await conflictOf(loaded, watch);
  // A size that shares its look with others is not fitted by itself.
  const looks = looksRound && loaded.range?.share === undefined;
  if (looks && loaded.garment.steady !== undefined)
    watch.phase("How wide a range of gauges can be had", "many");
  const leftMs = (): number =>
    watch.ending() === undefined ? timeLimitMs - (performance.now() - started) : 0;
  const steadiness = looks
    ? await unlessEnded(() => steadinessOf(loaded.garment, result, watch.engine, rivals, leftMs))
    : undefined;
  return {
    loaded,
    ...(steadiness && { steadiness }),
    result: { ...result, notes: [...result.notes, ...conflict.notes] },
    ...("rules" in conflict && { conflict: conflict.rules }),
    elapsedMs: performance.now() - started,
    code: exitCodeFor(result, watch.ending()),
  };
}

/** Whether there is no rule to look for: something fits, or would if it were not for other sizes. */
const fitsAlone = (result: Solved["result"], { size }: LoadedGarment): boolean =>
  result.status !== "does not fit" || ("misfits" in result && !result.misfits.includes(size?.name ?? ""));

function withEnding(
  result: Solved["result"],
  ending: Ending | undefined,
  timeLimitMs: number,
): Solved["result"] {
  if (ending === undefined || result.status === "does not fit") return result;
  return result.status === "stopped"
    ? { ...result, reason: endedWithout(ending, timeLimitMs) }
    : { ...result, notes: [...result.notes, ...endedEarly(result, ending, timeLimitMs)] };
}

async function conflictOf(
  { garment, locate }: SoundGarment,
  watch: SolveWatch,
): Promise<{ readonly rules?: readonly PlacedRule[]; readonly notes: readonly string[] }> {
  const rules = await rulesInTheWay(garment, watch, "Leaving out one rule after the other");
  return rules ? { rules: placedRules(rules, locate), notes: [] } : { notes: [conflictCutShort] };
}

function exitCodeFor(result: Solved["result"], ending: Ending | undefined): ExitCode {
  if (result.status === "does not fit") return exitCodes.noFit;
  if (result.status === "stopped") return stoppedCode(ending);
  return result.proven && (result.rivalsProven || ending === undefined) ? exitCodes.done : exitCodes.stopped;
}

/** How a command ends that has nothing to show because it was ended early. */
export const stoppedCode = (ending: Ending | undefined): ExitCode =>
  ending === "knitter" ? exitCodes.interrupted : exitCodes.stopped;

/** How long solving may take, in ms; the usual time where the command line says nothing. */
export const timeLimitOf = (options: CommandInput["options"]): number =>
  1000 *
  (numberOption(
    "time-limit",
    options["time-limit"],
    { least: 0.01, most: 86_400 },
    "a number of seconds such as 2,",
  ) ?? usualSeconds);

/**
 * Lends the engine that the command line asks for, watched: it is ended when it does not answer, at the time limit and
 * by Ctrl-C, it shows how far it has come, and it is closed afterwards.
 *
 * @throws CommandError where an answer is refused by the independent check, or the engine is not there
 */
export async function withEngine<Result>(
  { options, terminal }: CommandInput,
  work: (watch: SolveWatch) => Promise<Result>,
): Promise<Result> {
  const timeLimitMs = timeLimitOf(options);
  const guarded = createGuardedEngine(engineAsked(options));
  guarded.warm();
  const watch = watchSolves(guarded.solve, terminal, { timeLimitMs, phase: "Best fit" });
  try {
    return await duringAll(timeLimitMs, () => work(watch));
  } catch (error) {
    if (error instanceof RefusedFit)
      throw new CommandError(
        `An answer was found, but it does not keep the garment's own rules, so it is not shown: ${error.message}`,
        exitCodes.fault,
      );
    throw error;
  } finally {
    watch.close();
    // What was found is shown while the thread comes to its end.
    void guarded.close();
  }
}

function engineAsked({ engine }: CommandInput["options"]): { readonly only?: "highs" } {
  if (wordOption("engine", engine, ["usual", "highs"]) !== "highs") return {};
  if (!highsIsInstalled())
    throw new CommandError(
      "The second solver, HiGHS, is not installed. It is the package highs: npm install highs\nWithout --engine the usual solver answers, and needs nothing.",
    );
  return { only: "highs" };
}
