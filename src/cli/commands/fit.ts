import { fitToJson } from "../../report/fit-json.ts";
import { fitText } from "../../report/fit-text.ts";
import { noFitText } from "../../report/no-fit-text.ts";
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
  const solved = await solveFile(file, input, rivals);
  const { result, conflict, elapsedMs, code } = solved;
  if (input.options.json === true) await deliver(input, jsonText(fitToJson(result, elapsedMs, conflict)));
  else await tell(input, solved);
  for (const note of result.notes) input.terminal.say(note);
  return code;
};

async function tell(input: CommandInput, { loaded, result, conflict }: Solved): Promise<void> {
  const { terminal } = input;
  const width = textWidth(terminal.columns);
  switch (result.status) {
    case "fits":
      await deliver(input, fitText(result, width));
      for (const words of [...warningsFor(result.fit), ...cautionsFor(result.fit)]) terminal.say(words);
      break;
    case "does not fit":
      await deliver(input, noFitText(loaded.garment!.title, conflict, width));
      break;
    case "stopped":
      terminal.say(result.reason);
  }
}
