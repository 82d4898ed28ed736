import { extname } from "node:path";
import { needsToJson } from "../../report/needs-json.ts";
import { warningsFor } from "../../safety/warnings.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import { onlyPieces } from "../../sheet/only-pieces.ts";
import type { PaperName } from "../../sheet/paper.ts";
import { sheetToJson } from "../../sheet/sheet-json.ts";
import { sheetText } from "../../sheet/text/sheet-text.ts";
import { wordOption } from "../arguments.ts";
import { askedPieces } from "../asked-pieces.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { CommandError } from "../exit-codes.ts";
import { endWith, fittedFile } from "../fitted.ts";
import { printedHtml, printedPdf } from "../print-sheet.ts";

const forms = ["json", "html", "pdf"] as const;
type Form = (typeof forms)[number] | "text";

const formOfEnding: Readonly<Record<string, Form>> = { ".html": "html", ".pdf": "pdf" };

export const run: CommandRun = async (input) => {
  const { terminal, options } = input;
  const form = formFor(input);
  const paper = paperFor(input, form);
  const fitted = await fittedFile(input, "sheet");
  if (!fitted.fit) return fitted.code;
  const fit = onlyPieces(fitted.fit, askedPieces(options.piece, fitted.fit));
  const sheet = buildSheet(fit);
  switch (form) {
    case "json":
      await deliver(input, jsonText({ ...sheetToJson(sheet), ...needsToJson(fit) }));
      break;
    case "text":
      await deliver(input, sheetText(fit, sheet, textWidth(terminal.columns)));
      break;
    case "html":
      await deliver(input, await printedHtml(fit, sheet));
      break;
    case "pdf": {
      const { pdf, notes } = await printedPdf(fit, sheet, paper);
      await deliver(input, pdf);
      for (const note of notes) terminal.say(note);
    }
  }
  for (const words of warningsFor(fit)) terminal.say(words);
  return endWith(fitted, "sheet", input);
};

/** What the options say, else what the output's ending says, else text. */
function formFor({ options, terminal }: CommandInput): Form {
  const { output } = options;
  const asked = forms.filter((form) => options[form] === true);
  if (asked.length > 1)
    throw new CommandError(
      `A sheet is written in one form at a time, and these are ${asked.length}: ${asked.map((form) => `--${form}`).join(", ")}.`,
    );
  const form =
    asked[0] ??
    (typeof output === "string" ? formOfEnding[extname(output).toLowerCase()] : undefined) ??
    "text";
  if (form === "pdf" && typeof output !== "string" && terminal.outBytes === undefined)
    throw new CommandError(
      "A PDF is no text, so it goes to a file or a pipe and not to a terminal.\nFor example: --output sheet.pdf",
    );
  return form;
}

function paperFor({ options }: CommandInput, form: Form): PaperName {
  const paper = wordOption("paper", options.paper, ["a4", "letter"] as const);
  if (paper !== undefined && form !== "pdf")
    throw new CommandError(
      "--paper belongs to --pdf; HTML takes the paper that is chosen where it is printed.",
    );
  return paper ?? "a4";
}
