import { extname } from "node:path";
import { quoted } from "../../diagnostics/shown.ts";
import type { Fit } from "../../fit/fit.ts";
import { type Measured, obstaclesTo, type RefitRequest, refit } from "../../refit/refit.ts";
import { refitToJson } from "../../refit/report/refit-json.ts";
import { noRefitText, refitText } from "../../refit/report/refit-text.ts";
import { placedRules } from "../../report/fit-json.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import { stateFolder } from "../../state/folder.ts";
import { keptWork, workPlace } from "../../state/work-place.ts";
import { otherSheetFollowed } from "../../work/other-sheet.ts";
import { pieceNamed } from "../../work/record.ts";
import { numberOption } from "../arguments.ts";
import { askedPieces } from "../asked-pieces.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { CommandError, type ExitCode, exitCodes } from "../exit-codes.ts";
import { fittedFile } from "../fitted.ts";
import { lengthOption } from "../length-option.ts";
import { fileOperand, type LoadedGarment } from "../load-garment.ts";
import { endedEarly, endedWithout } from "../progress/ending-words.ts";
import type { SolveWatch } from "../progress/solve-watch.ts";
import { stoppedCode, timeLimitOf, withEngine } from "../solving.ts";

export const run: CommandRun = async (input) => {
  const row = rowIn(input);
  const measured = measuredIn(input);
  refusePrintedForms(input);
  const fitted = await fittedFile(input, "refit");
  if (!fitted.fit) return fitted.code;
  const { fit, locate } = fitted;
  const request = { piece: pieceIn(input, fit), row, measured };
  await tellOfOtherSheet(input, fit, request.piece);
  return withEngine(input, (watch) => refitAndTell(input, fit, request, locate, watch));
};

const longestPiece = 100_000;

function rowIn({ options }: CommandInput): number {
  const row = numberOption("row", options.row, { least: 1, most: longestPiece });
  if (row === undefined)
    throw new CommandError(
      'refit needs the row that is knitted and what was measured there.\nFor example: evenrow refit samples/sleeve.yaml --row 50 --length "17 cm"',
    );
  return row;
}

function measuredIn({ options }: CommandInput): Measured {
  const lengthMm = lengthOption("length", options.length);
  const widthMm = lengthOption("width", options.width);
  if (lengthMm === undefined && widthMm === undefined)
    throw new CommandError('refit needs --length, --width or both, such as --length "17 cm".');
  return { ...(lengthMm !== undefined && { lengthMm }), ...(widthMm !== undefined && { widthMm }) };
}

function pieceIn({ options }: CommandInput, fit: Fit): string {
  const [piece, another] = askedPieces(options.piece, fit);
  if (piece === undefined || another !== undefined)
    throw new CommandError(
      `The garment has several pieces: say by --piece which one was measured, ${fit.pieces.map(({ name }) => quoted(name)).join(" or ")}.`,
    );
  return piece;
}

const printedForms: Readonly<Record<string, string>> = { ".html": "HTML", ".pdf": "PDF" };

/** Text under such a name could not be opened as what the name says. */
function refusePrintedForms({ options }: CommandInput): void {
  const form =
    typeof options.output === "string" ? printedForms[extname(options.output).toLowerCase()] : undefined;
  if (form !== undefined)
    throw new CommandError(
      `A refit is written as text or, with --json, as JSON, and not as ${form}.\nFor example: --output refit.txt`,
    );
}

/** A refit stands on the file's own fit, which the knitter may have left behind at the row counter; only reads. */
async function tellOfOtherSheet(input: CommandInput, fit: Fit, name: string): Promise<void> {
  const file = fileOperand(input, "refit");
  if (file === "-") return;
  const size = typeof input.options.size === "string" ? input.options.size : undefined;
  const kept = keptWork(await workPlace(stateFolder(), file, size));
  if (kept.status !== "kept") return;
  const piece = pieceNamed(kept.record, name);
  const sheet = buildSheet(fit).pieces.find((one) => one.piece === name);
  const other = piece && sheet && otherSheetFollowed(piece, sheet);
  if (!other) return;
  const ofSize = size === undefined ? "" : ` --size ${quoted(size)}`;
  const chosen = `${ofSize}${kept.record.piece === name ? "" : ` --piece ${quoted(name)}`}`;
  const goOn = other.isRefitted
    ? ` To go on from that one: evenrow work ${file}${chosen} --measure LENGTH --refit`
    : "";
  input.terminal.say(
    `The row counter follows another sheet of ${name} from row ${other.fromRow} on, and this refit goes on from the file's own.${goOn}`,
  );
}

async function refitAndTell(
  input: CommandInput,
  fit: Fit,
  request: RefitRequest,
  locate: LoadedGarment["locate"],
  watch: SolveWatch,
): Promise<ExitCode> {
  const { options, terminal } = input;
  const { engine } = watch;
  const timeLimitMs = timeLimitOf(options);
  watch.phase("Best fit of the rest", "one");
  const width = textWidth(terminal.columns);
  const result = await refit(fit, request, engine, { timeLimitMs });
  const ending = watch.ending();
  if (result.status === "unusable") throw new CommandError(`${request.piece}: ${result.problem}.`);
  for (const note of result.notes) terminal.say(note);
  switch (result.status) {
    case "refitted":
      await deliver(
        input,
        options.json === true ? jsonText(refitToJson(result)) : refitText(fit, result, width),
      );
      if (result.proven) return exitCodes.done;
      if (ending) for (const words of endedEarly(result, ending, timeLimitMs)) terminal.say(words);
      return exitCodes.stopped;
    case "does not fit": {
      const found = await obstaclesTo(fit, result.progress, engine);
      const obstacles = { ...found, conflict: placedRules(found.conflict, locate) };
      await deliver(
        input,
        options.json === true
          ? jsonText(refitToJson(result, obstacles))
          : noRefitText(fit.garment.title, result.progress, obstacles, width),
      );
      return exitCodes.noFit;
    }
    case "stopped":
      if (options.json === true) await deliver(input, jsonText(refitToJson(result)));
      else terminal.say(ending ? endedWithout(ending, timeLimitMs) : result.reason);
      return stoppedCode(ending);
  }
}
