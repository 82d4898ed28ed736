import { fitToJson } from "../../report/fit-json.ts";
import { fitText } from "../../report/fit-text.ts";
import { noFitText } from "../../report/no-fit-text.ts";
import { steadinessToJson } from "../../report/steadiness-json.ts";
import { withSteadiness } from "../../report/steadiness-text.ts";
import { cautionsFor } from "../../safety/cautions.ts";
import { warningsFor } from "../../safety/warnings.ts";
import { numberOption } from "../arguments.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { fileOperand } from "../load-garment.ts";
import { type Solved, solveFile } from "../solving.ts";

export const run: CommandRun = async (input) => {
  const file = fileOperand(input, "fit");
  const rivals = numberOption("rivals", input.options.rivals, { least: 0, most: 50 });
  const solved = await solveFile(file, input, rivals, true);
  const { result, conflict, steadiness, elapsedMs, code } = solved;
  const steady = steadiness && steadinessToJson(steadiness);
  if (input.options.json === true)
    await deliver(input, jsonText(fitToJson(result, elapsedMs, conflict, steady)));
  else await tell(input, solved);
  for (const note of result.notes) input.terminal.say(note);
  return code;
};

async function tell(input: CommandInput, { loaded, result, conflict, steadiness }: Solved): Promise<void> {
  const { terminal } = input;
  const width = textWidth(terminal.columns);
  switch (result.status) {
    case "fits":
      await deliver(input, withSteadiness(fitText(result, width), steadiness, result, width));
      for (const words of [...warningsFor(result.fit), ...cautionsFor(result.fit)]) terminal.say(words);
      break;
    case "does not fit":
      await deliver(
        input,
        withSteadiness(noFitText(loaded.garment!.title, conflict, width), steadiness, undefined, width),
      );
      break;
    case "stopped":
      terminal.say(result.reason);
  }
}
