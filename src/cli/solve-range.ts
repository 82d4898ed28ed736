import type { SizeRange } from "../garment/garment.ts";
import { fitRange } from "../grading/fit-range.ts";
import type { RangeDoesNotFit, RangeFits, RangeResult } from "../grading/range-result.ts";
import type { SizeConflict } from "../grading/report/no-range-text.ts";
import { placedRules } from "../report/fit-json.ts";
import type { CommandInput } from "./command.ts";
import { type ExitCode, exitCodes } from "./exit-codes.ts";
import type { SoundGarment } from "./load-garment.ts";
import { conflictCutShort, endedWithout, whoEnded } from "./progress/ending-words.ts";
import type { Ending, SolveWatch } from "./progress/solve-watch.ts";
import { rulesInTheWay } from "./rules-in-the-way.ts";
import { stoppedCode, timeLimitOf } from "./solving.ts";

export interface SolvedRange {
  /** Its notes say by whom it was ended early. */
  readonly result: RangeResult;
  /** Which rules fail to meet in sizes that do not fit by themselves. */
  readonly conflicts: readonly SizeConflict[];
  readonly elapsedMs: number;
  /** How the command ends that shows this. */
  readonly code: ExitCode;
}

/** Fits all sizes of a file that was read already. */
export async function solveRange(
  loaded: SoundGarment & { readonly range: SizeRange },
  watch: SolveWatch,
  { options }: CommandInput,
  rivals: number | undefined,
): Promise<SolvedRange> {
  const timeLimitMs = timeLimitOf(options);
  const started = performance.now();
  const found = await fitRange(loaded.range, watch.engine, {
    timeLimitMs,
    ...(rivals !== undefined && { rivals }),
    onStep: ({ looksFor, size }) =>
      watch.phase(looksFor === "alone" ? `${size} by itself` : `Without ${size}`, "one"),
    onRivals: (count, of) => watch.phase(`Next best look ${Math.min(count + 1, of)} of ${of}`, "many"),
  });
  const result = withEnding(found, watch.ending(), timeLimitMs);
  const conflicts = result.status === "does not fit" ? await conflictsOf(loaded, result, watch) : [];
  const cutShort = result.status === "does not fit" && conflicts.length < result.misfits.length;
  return {
    result: { ...result, notes: [...result.notes, ...(cutShort ? [conflictCutShort] : [])] },
    conflicts,
    elapsedMs: performance.now() - started,
    code: exitCodeFor(result, watch.ending()),
  };
}

async function conflictsOf(
  { range, locate }: SoundGarment & { readonly range: SizeRange },
  { misfits }: RangeDoesNotFit,
  watch: SolveWatch,
): Promise<readonly SizeConflict[]> {
  const conflicts: SizeConflict[] = [];
  for (const { name, garment } of range.sizes) {
    if (!misfits.includes(name)) continue;
    const rules = await rulesInTheWay(garment, watch, `Leaving out one rule after the other of ${name}`);
    if (!rules) break;
    conflicts.push({ size: name, rules: placedRules(rules, locate) });
  }
  return conflicts;
}

function withEnding(result: RangeResult, ending: Ending | undefined, timeLimitMs: number): RangeResult {
  if (ending === undefined || result.status === "does not fit") return result;
  return result.status === "stopped"
    ? { ...result, reason: endedWithout(ending, timeLimitMs) }
    : { ...result, notes: [...result.notes, `${whoEnded(ending, timeLimitMs)}; ${whatIsThere(result)}.`] };
}

const whatIsThere = ({ proven }: RangeFits): string =>
  proven
    ? "the best fit of all sizes is proven, but not all that is told beside it was found or proven"
    : "this is the best so far";

function exitCodeFor(result: RangeResult, ending: Ending | undefined): ExitCode {
  if (result.status === "does not fit") return exitCodes.noFit;
  if (result.status === "stopped") return stoppedCode(ending);
  return result.proven && ending === undefined ? exitCodes.done : exitCodes.stopped;
}
