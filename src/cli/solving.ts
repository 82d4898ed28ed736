import { createGuardedEngine } from "../../solver/guarded-engine.ts";
import { breakDown } from "../fit/refusal.ts";
import { type FitResult, fitGarment, RefusedFit, type SolveOptions } from "../fit/solve.ts";
import type { PlacedRule } from "../report/fit-json.ts";
import { numberOption } from "./arguments.ts";
import type { CommandInput } from "./command.ts";
import { CommandError, exitCodes } from "./exit-codes.ts";
import type { LoadedGarment } from "./load-garment.ts";
import { soundGarment } from "./load-garment.ts";

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
  const seconds = numberOption("time-limit", options["time-limit"], { least: 0.01, most: 86_400 });
  const engine = createGuardedEngine();
  engine.warm();
  try {
    const loaded = await soundGarment(file, terminal);
    const started = performance.now();
    const limits: SolveOptions = {
      timeLimitMs: 1000 * (seconds ?? usualSeconds),
      ...(rivals !== undefined && { rivals }),
    };
    const result = await fitGarment(loaded.garment, engine.solve, limits);
    const conflict =
      result.status === "does not fit"
        ? (await breakDown(loaded.garment, engine.solve)).rules.map((rule): PlacedRule => {
            const place = loaded.locate(rule.path);
            return place ? { ...rule, place } : rule;
          })
        : [];
    return { loaded, result, conflict, elapsedMs: performance.now() - started };
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
