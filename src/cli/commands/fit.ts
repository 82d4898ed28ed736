import { noRangeText } from "../../grading/report/no-range-text.ts";
import { rangeToJson } from "../../grading/report/range-json.ts";
import { rangeText } from "../../grading/report/range-text.ts";
import { warningsForSizes } from "../../grading/report/warnings-for-sizes.ts";
import { fitToJson } from "../../report/fit-json.ts";
import { fitText } from "../../report/fit-text.ts";
import { steadinessToJson } from "../../report/steadiness-json.ts";
import { withSteadiness } from "../../report/steadiness-text.ts";
import { shortCautionsFor } from "../../safety/cautions.ts";
import { warningsFor } from "../../safety/warnings.ts";
import { numberOption } from "../arguments.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { fileOperand, soundGarment } from "../load-garment.ts";
import { refusalText } from "../refusal-text.ts";
import { type SolvedRange, solveRange } from "../solve-range.ts";
import { type Solved, solveLoaded, withEngine } from "../solving.ts";
import { asAsked } from "../steadily.ts";

export const run: CommandRun = async (input) => {
  const { options, terminal } = input;
  const file = fileOperand(input, "fit");
  const rivals = numberOption("rivals", options.rivals, { least: 0, most: 50 });
  const answer = await withEngine(input, async (watch) => {
    const loaded = asAsked(await soundGarment(file, terminal, options), options);
    const { range, size } = loaded;
    return range && !size
      ? solveRange({ ...loaded, range }, watch, input, rivals)
      : solveLoaded(loaded, watch, input, rivals, true);
  });
  await ("conflicts" in answer ? showRange(input, answer) : show(input, answer));
  for (const note of answer.result.notes) terminal.say(note);
  return answer.code;
};

async function show(input: CommandInput, solved: Solved): Promise<void> {
  const { result, conflict, steadiness, elapsedMs } = solved;
  const steady = steadiness && steadinessToJson(steadiness);
  if (input.options.json === true)
    await deliver(input, jsonText(fitToJson(result, elapsedMs, conflict, steady)));
  else await tell(input, solved);
}

async function showRange(input: CommandInput, { result, conflicts, elapsedMs }: SolvedRange): Promise<void> {
  const { terminal, options } = input;
  const width = textWidth(terminal.columns);
  if (options.json === true) await deliver(input, jsonText(rangeToJson(result, elapsedMs, conflicts)));
  else if (result.status === "stopped") terminal.say(result.reason);
  else if (result.status === "does not fit") await deliver(input, noRangeText(result, conflicts, width));
  else {
    await deliver(input, rangeText(result, width));
    for (const words of warningsForSizes(result.sizes)) terminal.say(words);
  }
}

async function tell(input: CommandInput, solved: Solved): Promise<void> {
  const { terminal } = input;
  const { result, steadiness } = solved;
  const width = textWidth(terminal.columns);
  switch (result.status) {
    case "fits":
      await deliver(input, withSteadiness(fitText(result, width), steadiness, result, width));
      for (const words of [...warningsFor(result.fit), ...shortCautionsFor(result.fit)]) terminal.say(words);
      break;
    case "does not fit":
      await deliver(input, withSteadiness(refusalText(solved, width), steadiness, undefined, width));
      break;
    case "stopped":
      terminal.say(result.reason);
  }
}
