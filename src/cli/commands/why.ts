import type { SizeRange } from "../../garment/garment.ts";
import { fitAsked } from "../../grading/fit-asked.ts";
import { fitRange } from "../../grading/fit-range.ts";
import { placedRules } from "../../report/fit-json.ts";
import { Ended, type Pace, whyNot, whySo } from "../../why/why.ts";
import { type PlacedWhy, whyToJson } from "../../why/why-json.ts";
import { whyNotRange, whySoRange } from "../../why/why-range.ts";
import { whyRangeToJson } from "../../why/why-range-json.ts";
import { type PlacedWhyRange, whyRangeText } from "../../why/why-range-text.ts";
import { whyText } from "../../why/why-text.ts";
import type { CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";
import { fileOperand, type LoadedGarment, type SoundGarment, soundGarment } from "../load-garment.ts";
import { endedWithout, whoEnded } from "../progress/ending-words.ts";
import type { SolveWatch } from "../progress/solve-watch.ts";
import { stoppedCode, timeLimitOf, withEngine } from "../solving.ts";

/** What was found out, to be said in words or as JSON. */
interface Told {
  readonly why: Pick<PlacedWhy, "status" | "complete">;
  readonly text: (width: number) => string;
  readonly json: () => object;
}

export const run: CommandRun = async (input) => {
  const file = fileOperand(input, "why");
  const { options, terminal } = input;
  const timeLimitMs = timeLimitOf(options);
  return withEngine(input, async (watch) => {
    const loaded = await soundGarment(file, terminal, options);
    const { range, size } = loaded;
    const { why, text, json } =
      range && !size
        ? await ofAllSizes({ ...loaded, range }, watch, timeLimitMs)
        : await ofOne(loaded, watch, timeLimitMs);
    await deliver(input, options.json === true ? jsonText(json()) : text(textWidth(terminal.columns)));
    const ending = watch.ending();
    if (ending) terminal.say(`${whoEnded(ending, timeLimitMs)}.`);
    if (!why.complete) return exitCodes.stopped;
    return why.status === "fits" ? exitCodes.done : exitCodes.noFit;
  });
};

async function ofOne(loaded: SoundGarment, watch: SolveWatch, timeLimitMs: number): Promise<Told> {
  const { engine } = watch;
  const pace = paceOf(watch, timeLimitMs);
  const { garment, range, source, name, locate, drawings, size } = loaded;
  const file = { source, name, garment, beside: { drawings, ...(size && { size: size.name }) } };
  const told = (why: PlacedWhy): Told => ({
    why,
    text: (width) => whyText(garment.title, why, width),
    json: () => whyToJson(why, source),
  });
  const asked = { garment, ...(range && { range }), size: size?.name };
  const result = await fitAsked(asked, engine, { rivals: 0, timeLimitMs: pace.leftMs() });
  if (result.status === "stopped") throw endedBefore(result.reason, watch, timeLimitMs);
  if (result.status === "fits") {
    const why = await whySo(file, result.fit, engine, pace);
    return told({ ...why, complete: why.complete && result.proven });
  }
  // A size that fits by itself is kept from it by the others.
  if (range && "misfits" in result && !result.misfits.includes(size?.name ?? ""))
    return ofAllSizes({ ...loaded, range }, watch, timeLimitMs);
  const why = await whyNot(file, engine, pace);
  return told({ ...why, conflict: placedRules(why.conflict, locate) });
}

/** Said where the search ended with nothing to show. */
function endedBefore(reason: string, watch: SolveWatch, timeLimitMs: number): CommandError {
  const ending = watch.ending();
  return new CommandError(ending ? endedWithout(ending, timeLimitMs) : reason, stoppedCode(ending));
}

/** The same for all sizes of a file together. */
async function ofAllSizes(
  { range, source, name, locate, drawings }: LoadedGarment & { readonly range: SizeRange },
  watch: SolveWatch,
  timeLimitMs: number,
): Promise<Told> {
  const { engine } = watch;
  const pace = paceOf(watch, timeLimitMs);
  const file = { source, name, range, beside: { drawings } };
  const told = (why: PlacedWhyRange): Told => ({
    why,
    text: (width) => whyRangeText(why, width),
    json: () => whyRangeToJson(why, source),
  });
  const result = await fitRange(range, engine, { rivals: 0, advice: false, timeLimitMs: pace.leftMs() });
  if (result.status === "stopped") throw endedBefore(result.reason, watch, timeLimitMs);
  if (result.status === "fits") return told(await whySoRange(file, result, engine, pace));
  const why = await whyNotRange(file, result, engine, pace);
  return told({
    ...why,
    sharePlace: range.share && locate(range.share.path),
    sizes: why.sizes.map(({ size, why: one }) => ({
      size,
      why: { ...one, conflict: placedRules(one.conflict, locate) },
    })),
  });
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
