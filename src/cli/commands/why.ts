import type { Engine } from "../../../solver/program.ts";
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
import { timeLimitOf, withEngine } from "../solving.ts";

/** Longer silence than this is broken by a word about what is being done. */
const silenceMs = 1000;

export const run: CommandRun = async (input) => {
  const file = fileOperand(input, "why");
  const pace = paceOf(timeLimitOf(input.options), input.terminal.say);
  return withEngine(input, async ({ engine }) => {
    const loaded = await garmentInOneSize(file, input.terminal, input.options);
    const why = await whyOf(loaded, engine, pace);
    const text =
      input.options.json === true
        ? jsonText(whyToJson(why, loaded.source))
        : whyText(loaded.garment.title, why, textWidth(input.terminal.columns));
    await deliver(input, text);
    if (!why.complete) return exitCodes.stopped;
    return why.status === "fits" ? exitCodes.done : exitCodes.noFit;
  });
};

async function whyOf(
  loaded: LoadedGarment & { readonly garment: Garment },
  engine: Engine,
  pace: Pace,
): Promise<PlacedWhy> {
  const { garment, source, name, locate, drawings, size } = loaded;
  const file = { source, name, garment, beside: { drawings, ...(size && { size: size.name }) } };
  const result = await fitGarment(garment, engine, { rivals: 0, timeLimitMs: pace.leftMs() });
  if (result.status === "stopped") throw new CommandError(result.reason, exitCodes.stopped);
  if (result.status === "fits") {
    const why = await whySo(file, result.fit, engine, pace);
    return { ...why, complete: why.complete && result.proven };
  }
  const why = await whyNot(file, engine, pace);
  return { ...why, conflict: placedRules(why.conflict, locate) };
}

/** Ends the asking when the time allowed is up, and says what is being done where that takes long. */
function paceOf(allowedMs: number, say: (text: string) => void): Pace {
  const started = performance.now();
  let spoken = started;
  let last = "";
  const leftMs = (): number => Math.max(1, started + allowedMs - performance.now());
  return {
    leftMs,
    goOn: (words) => {
      const now = performance.now();
      if (now - started > allowedMs) throw new Ended();
      if (words === last || now - spoken < silenceMs) return;
      [spoken, last] = [now, words];
      say(`${words} ...`);
    },
  };
}
