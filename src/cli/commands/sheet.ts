import { warningsFor } from "../../safety/warnings.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import { sheetToJson } from "../../sheet/sheet-json.ts";
import { sheetText } from "../../sheet/text/sheet-text.ts";
import type { CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { endWith, fittedFile } from "../fitted.ts";

export const run: CommandRun = async (input) => {
  const { terminal, options } = input;
  const fitted = await fittedFile(input, "sheet");
  if (!fitted.fit) return fitted.code;
  const sheet = buildSheet(fitted.fit);
  const text =
    options.json === true
      ? jsonText(sheetToJson(sheet))
      : sheetText(fitted.fit, sheet, textWidth(terminal.columns));
  await deliver(input, text);
  for (const words of warningsFor(fitted.fit)) terminal.say(words);
  return endWith(fitted, "sheet", input);
};
