import { fitGarment } from "../../fit/solve.ts";
import type { Garment } from "../../garment/garment.ts";
import { placedRules } from "../../report/fit-json.ts";
import { Ended, type Pace, whyNot, whySo } from "../../why/why.ts";
import { type PlacedWhy, whyToJson } from "../../why/why-json.ts";
import { whyText } from "../../why/why-text.ts";
import type { CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";
import { fileOperand, garmentInOneSize, type LoadedGarment } from "../load-garment.ts";
import { endedWithout, whoEnded } from "../progress/ending-words.ts";
import type { SolveWatch } from "../progress/solve-watch.ts";
import { stoppedCode, timeLimitOf, withEngine } from "../solving.ts";

export const run: CommandRun = async (input) => {
  const file = fileOperand(input, "why");
  const timeLimitMs = timeLimitOf(input.options);
  return withEngine(input, async (watch) => {
    const loaded = await garmentInOneSize(file, input.terminal, input.options);
    const why = await whyOf(loaded, watch, timeLimitMs);
    const text =
      input.options.json === true
        ? jsonText(whyToJson(why, loaded.source))
        : whyText(loaded.garment.title, why, textWidth(input.terminal.columns));
    await deliver(input, text);
    const ending = watch.ending();
    if (ending) input.terminal.say(`${whoEnded(ending, timeLimitMs)}.`);
    if (!why.complete) return exitCodes.stopped;
    return why.status === "fits" ? exitCodes.done : exitCodes.noFit;
  });
};

async function whyOf(
  loaded: LoadedGarment & { readonly garment: Garment },
  watch: SolveWatch,
  timeLimitMs: number,
): Promise<PlacedWhy> {
  const { engine } = watch;
  const pace = paceOf(watch, timeLimitMs);
  const { garment, source, name, locate, drawings, size } = loaded;
  const file = { source, name, garment, beside: { drawings, ...(size && { size: size.name }) } };
  const result = await fitGarment(garment, engine, { rivals: 0, timeLimitMs: pace.leftMs() });
  const ending = watch.ending();
  if (result.status === "stopped")
    throw new CommandError(ending ? endedWithout(ending, timeLimitMs) : result.reason, stoppedCode(ending));
  if (result.status === "fits") {
    const why = await whySo(file, result.fit, engine, pace);
    return { ...why, complete: why.complete && result.proven };
  }
  const why = await whyNot(file, engine, pace);
  return { ...why, conflict: placedRules(why.conflict, locate) };
}

/** Ends the asking when the time allowed is up or the knitter stops it, and shows what is being asked. */
const paceOf = (watch: SolveWatch, allowedMs: number): Pace => {
  const deadline = performance.now() + allowedMs;
  return {
    leftMs: () => Math.max(1, deadline - performance.now()),
    goOn: async (words) => {
      if (!(await watch.turn(words))) throw new Ended();
    },
  };
};
