import { noFitText } from "../../report/no-fit-text.ts";
import { warningsFor } from "../../safety/warnings.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import { sheetToJson } from "../../sheet/sheet-json.ts";
import { sheetText } from "../../sheet/text/sheet-text.ts";
import type { CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { exitCodes } from "../exit-codes.ts";
import { fileOperand } from "../load-garment.ts";
import { solveFile } from "../solving.ts";

export const run: CommandRun = async (input) => {
  const { terminal, options } = input;
  const { loaded, result, conflict } = await solveFile(fileOperand(input, "sheet"), input, 0);
  for (const note of result.notes) terminal.say(note);
  if (result.status === "does not fit") {
    terminal.say(noFitText(loaded.garment!.title, conflict, textWidth(terminal.columns)));
    return exitCodes.noFit;
  }
  if (result.status === "stopped") {
    terminal.say(result.reason);
    return exitCodes.stopped;
  }
  const sheet = buildSheet(result.fit);
  const text =
    options.json === true
      ? jsonText(sheetToJson(sheet))
      : sheetText(result.fit, sheet, textWidth(terminal.columns));
  await deliver(input, text);
  for (const words of warningsFor(result.fit)) terminal.say(words);
  if (result.proven) return exitCodes.done;
  terminal.say("This sheet is of the best fit found in the time allowed; a better one may exist.");
  return exitCodes.stopped;
};
