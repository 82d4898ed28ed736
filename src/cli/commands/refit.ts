import type { Engine } from "../../../solver/program.ts";
import { quoted } from "../../diagnostics/shown.ts";
import type { Fit } from "../../fit/fit.ts";
import { type Measured, obstaclesTo, type RefitRequest, refit } from "../../refit/refit.ts";
import { refitToJson } from "../../refit/report/refit-json.ts";
import { noRefitText, refitText } from "../../refit/report/refit-text.ts";
import { placedRules } from "../../report/fit-json.ts";
import { numberOption } from "../arguments.ts";
import { askedPieces } from "../asked-pieces.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { CommandError, type ExitCode, exitCodes } from "../exit-codes.ts";
import { fittedFile } from "../fitted.ts";
import { lengthOption } from "../length-option.ts";
import type { LoadedGarment } from "../load-garment.ts";
import { timeLimitOf, withEngine } from "../solving.ts";

export const run: CommandRun = async (input) => {
  const row = rowIn(input);
  const measured = measuredIn(input);
  const fitted = await fittedFile(input, "refit");
  if (!fitted.fit) return fitted.code;
  const { fit, locate } = fitted;
  const request = { piece: pieceIn(input, fit), row, measured };
  return withEngine((engine) => refitAndTell(input, fit, request, locate, engine));
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

async function refitAndTell(
  input: CommandInput,
  fit: Fit,
  request: RefitRequest,
  locate: LoadedGarment["locate"],
  engine: Engine,
): Promise<ExitCode> {
  const { options, terminal } = input;
  const width = textWidth(terminal.columns);
  const result = await refit(fit, request, engine, { timeLimitMs: timeLimitOf(options) });
  if (result.status === "unusable") throw new CommandError(`${request.piece}: ${result.problem}.`);
  for (const note of result.notes) terminal.say(note);
  switch (result.status) {
    case "refitted":
      await deliver(
        input,
        options.json === true ? jsonText(refitToJson(result)) : refitText(fit, result, width),
      );
      return result.proven ? exitCodes.done : exitCodes.stopped;
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
      else terminal.say(result.reason);
      return exitCodes.stopped;
  }
}
