import type { Engine } from "../../../solver/program.ts";
import { rulesOf } from "../../fit/refusal/rules-of.ts";
import { conflictAmong, hasFit } from "../../fit/refusal.ts";
import { fitGarment } from "../../fit/solve.ts";
import type { Garment } from "../../garment/garment.ts";
import { placedRules } from "../../report/fit-json.ts";
import { bindingRules } from "../../why/binding.ts";
import { leastChanges } from "../../why/least-changes.ts";
import { type Why, whyToJson } from "../../why/why-json.ts";
import { whyText } from "../../why/why-text.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";
import { fileOperand, garmentInOneSize, type LoadedGarment } from "../load-garment.ts";
import { timeLimitOf, withEngine } from "../solving.ts";

/** Longer silence than this is broken by a word about what is being done. */
const silenceMs = 1000;

class OutOfTime extends Error {}

export const run: CommandRun = async (input) => {
  const file = fileOperand(input, "why");
  const clock = createClock(timeLimitOf(input.options), input.terminal.say);
  return withEngine(input, async ({ engine }) => {
    const loaded = await garmentInOneSize(file, input.terminal, input.options);
    const why = await whyOf(loaded, engine, clock);
    if (input.options.json === true) await deliver(input, jsonText(whyToJson(why, loaded.source)));
    else await tell(input, loaded.garment, why);
    if (!why.complete) return exitCodes.stopped;
    return why.status === "fits" ? exitCodes.done : exitCodes.noFit;
  });
};

const tell = (input: CommandInput, { title }: Garment, why: Why): Promise<void> =>
  deliver(input, whyText(title, why, textWidth(input.terminal.columns)));

async function whyOf(
  loaded: LoadedGarment & { garment: Garment },
  engine: Engine,
  clock: Clock,
): Promise<Why> {
  const { garment, source, name, locate, drawings } = loaded;
  const result = await fitGarment(garment, engine, { rivals: 0, timeLimitMs: clock.leftMs() });
  if (result.status === "stopped") throw new CommandError(result.reason, exitCodes.stopped);
  if (result.status === "fits") {
    const tried = await within(
      () =>
        bindingRules({ source, name, garment, drawings }, result.fit, engine, () =>
          clock.goOn("Trying one step of each rule"),
        ),
      [],
    );
    return { status: "fits", binding: tried.value, complete: tried.complete && result.proven };
  }
  const asking = (words: string) => (one: Garment) => {
    clock.goOn(words);
    return hasFit(one, engine);
  };
  const breakdown = await within(
    () => conflictAmong(rulesOf(garment), garment, asking("Leaving out one rule after the other")),
    undefined,
  );
  if (!breakdown.value)
    throw new CommandError(
      "The time allowed was up before it was known what stands in the way.",
      exitCodes.stopped,
    );
  const { rules } = breakdown.value;
  const changes = await within(
    () =>
      leastChanges(
        { source, name, garment, drawings, fits: asking("Looking for the least changes") },
        rules.map(({ rule }) => rule),
      ),
    [],
  );
  return {
    status: "does not fit",
    conflict: placedRules(rules, locate),
    changes: changes.value,
    complete: changes.complete,
  };
}

async function within<Result, Otherwise>(
  work: () => Promise<Result>,
  otherwise: Otherwise,
): Promise<{ readonly value: Result | Otherwise; readonly complete: boolean }> {
  try {
    return { value: await work(), complete: true };
  } catch (error) {
    if (error instanceof OutOfTime) return { value: otherwise, complete: false };
    throw error;
  }
}

interface Clock {
  /** @throws OutOfTime where the time allowed is up */
  readonly goOn: (words: string) => void;
  readonly leftMs: () => number;
}

function createClock(allowedMs: number, say: (text: string) => void): Clock {
  const started = performance.now();
  let spoken = started;
  let last = "";
  return {
    leftMs: () => Math.max(1, started + allowedMs - performance.now()),
    goOn: (words) => {
      const now = performance.now();
      if (now - started > allowedMs) throw new OutOfTime();
      if (words === last || now - spoken < silenceMs) return;
      [spoken, last] = [now, words];
      say(`${words} ...`);
    },
  };
}
