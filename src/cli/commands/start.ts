import { join } from "node:path";
import { fitText } from "../../report/fit-text.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import { sheetText } from "../../sheet/text/sheet-text.ts";
import type { CommandRun } from "../command.ts";
import { textWidth } from "../deliver.ts";
import { CommandError } from "../exit-codes.ts";
import { samplesFolder } from "../samples.ts";
import { solveFile } from "../solving.ts";
import { onScreen } from "./explore.ts";

const sheetLinesShown = 40;

export const run: CommandRun = async (input) => {
  const { terminal, operands } = input;
  if (terminal.interactive) return onScreen(input, operands[0]);
  const file = operands[0] ?? sampleFile();
  const { result, code } = await solveFile(file, input);
  if (result.status !== "fits") {
    terminal.say(result.status === "stopped" ? result.reason : `Nothing fits. See: evenrow fit ${file}`);
    return code;
  }
  const width = textWidth(terminal.columns);
  const lines = sheetText(result.fit, buildSheet(result.fit), width).split("\n");
  terminal.out(fitText(result, width));
  terminal.out("");
  terminal.out(lines.slice(0, sheetLinesShown).join("\n"));
  if (lines.length > sheetLinesShown)
    terminal.out(`... ${lines.length - sheetLinesShown} more lines: evenrow sheet ${file}`);
  for (const note of result.notes) terminal.say(note);
  return code;
};

function sampleFile(): string {
  const folder = samplesFolder();
  if (folder === undefined)
    throw new CommandError("The samples are missing; give a garment file of your own.");
  return join(folder, "sleeve.yaml");
}
