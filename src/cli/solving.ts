import { createGuardedEngine } from "../../solver/guarded-engine.ts";
import type { Engine } from "../../solver/program.ts";
import { breakDown } from "../fit/refusal.ts";
import { type FitResult, fitGarment, RefusedFit, type SolveOptions } from "../fit/solve.ts";
import { type PlacedRule, placedRules } from "../report/fit-json.ts";
import { numberOption } from "./arguments.ts";
import type { CommandInput } from "./command.ts";
import { CommandError, exitCodes } from "./exit-codes.ts";
import type { LoadedGarment } from "./load-garment.ts";
import { garmentInOneSize } from "./load-garment.ts";

export interface Solved {
  readonly loaded: LoadedGarment;
  readonly result: FitResult;
  /** Which rules fail to meet, where nothing fits. */
  readonly conflict: readonly PlacedRule[];
  readonly elapsedMs: number;
}

const usualSeconds = 60;

/** Reads the file and fits it, with the engine starting up meanwhile. */
export async function solveFile(
  file: string,
  { options, terminal }: CommandInput,
  rivals?: number,
): Promise<Solved> {
  const timeLimitMs = timeLimitOf(options);
  return withEngine(async (engine) => {
    const loaded = await garmentInOneSize(file, terminal, options);
    const started = performance.now();
    const limits: SolveOptions = { timeLimitMs, ...(rivals !== undefined && { rivals }) };
    const result = await fitGarment(loaded.garment, engine, limits);
    const conflict =
      result.status === "does not fit"
        ? placedRules((await breakDown(loaded.garment, engine)).rules, loaded.locate)
        : [];
    return { loaded, result, conflict, elapsedMs: performance.now() - started };
  });
}

/** How long solving may take, in ms; the usual time where the command line says nothing. */
export const timeLimitOf = (options: CommandInput["options"]): number =>
  1000 * (numberOption("time-limit", options["time-limit"], { least: 0.01, most: 86_400 }) ?? usualSeconds);

/**
 * Lends an engine that is ended when it does not answer, and is closed afterwards.
 *
 * @throws CommandError where an answer is refused by the independent check
 */
export async function withEngine<Result>(work: (engine: Engine) => Promise<Result>): Promise<Result> {
  const engine = createGuardedEngine();
  engine.warm();
  try {
    return await work(engine.solve);
  } catch (error) {
    if (error instanceof RefusedFit)
      throw new CommandError(
        `An answer was found, but it does not keep the garment's own rules, so it is not shown: ${error.message}`,
        exitCodes.fault,
      );
    throw error;
  } finally {
    await engine.close();
  }
}
