import { keptWork } from "../../state/work-place.ts";
import { keptMarks } from "../../work/kept-marks.ts";
import { placeToJson } from "../../work/place-json.ts";
import { placeLines } from "../../work/place-text.ts";
import { currentPiece, pieceNamed, type WorkRecord } from "../../work/record.ts";
import { numberOption } from "../arguments.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { jsonText } from "../deliver.ts";
import { CommandError, type ExitCode, exitCodes } from "../exit-codes.ts";
import { readInput } from "../files.ts";
import { fileOperand, soundGarment } from "../load-garment.ts";
import { doneInOneStep, refuseUnknownPiece } from "../work/one-step.ts";
import { placeOfWork, readable, type WorkAtHand, workAtHand } from "../work/work-at-hand.ts";

const longestRestMs = 10_000;

export const run: CommandRun = async (input) => {
  const { options, terminal } = input;
  const restMs = numberOption("rest", options.rest, { least: 0, most: longestRestMs });
  if (options.where === true || options.notes === true) return sayWhere(input);
  const work = await workAtHand(input);
  refuseUnknownPiece(work.record, options.piece);
  const sheet = options.sheet;
  if (typeof sheet === "string") {
    const text = new TextDecoder().decode(await readInput(sheet, terminal));
    return doneInOneStep(input, work, { name: sheet, text });
  }
  const withoutScreen = [
    "next",
    "back",
    "row",
    "note",
    "mistake",
    "measure",
    "measure-width",
    "refit",
    ...(terminal.interactive ? [] : ["new-sheet"]),
  ];
  if (withoutScreen.some((name) => options[name] !== undefined)) return doneInOneStep(input, work);
  if (!terminal.interactive) return say(input, work.record);
  return onScreen(input, work, restMs);
};

/** Only reads, without the lock. Once the work is begun the garment file is not fitted, but a mistake in it is said. */
async function sayWhere(input: CommandInput): Promise<ExitCode> {
  const place = await placeOfWork(input);
  const kept = readable(keptWork(place), place);
  if (kept) await sayMistakes(input);
  const record = kept ?? (await workAtHand(input)).record;
  refuseUnknownPiece(record, input.options.piece);
  return say(input, record);
}

/** What is kept holds whatever has become of the file. */
async function sayMistakes(input: CommandInput): Promise<void> {
  const file = fileOperand(input, "work");
  try {
    await soundGarment(file, input.terminal);
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    input.terminal.say(
      `${error.message}\n${file} gives no sheet now; the place is that of the sheet that was begun.`,
    );
  }
}

function say({ options, terminal }: CommandInput, record: WorkRecord): ExitCode {
  const named = typeof options.piece === "string" ? pieceNamed(record, options.piece) : undefined;
  const piece = named ?? currentPiece(record);
  if (options.notes === true) {
    terminal.out(keptMarks(piece).join("\n"));
    return exitCodes.done;
  }
  terminal.out(options.json === true ? jsonText(placeToJson(piece)) : placeLines(piece).join("\n"));
  return exitCodes.done;
}

async function onScreen(
  input: CommandInput,
  work: WorkAtHand,
  restMs: number | undefined,
): Promise<ExitCode> {
  const { options, terminal } = input;
  const { workAtMachine, stepKeyNamed } = await import("../../../tui/work/run.ts");
  const stepKey = typeof options["step-key"] === "string" ? stepKeyNamed(options["step-key"]) : undefined;
  if (stepKey === undefined && options["step-key"] !== undefined)
    throw new CommandError(
      `--step-key takes one key: a letter, space, enter, right, pagedown, F1 to F12 and the like; this is "${options["step-key"]}".`,
    );
  const how = await workAtMachine({
    ...work,
    colour: options["no-color"] !== true,
    bell: options.bell === true,
    takeOver: options["take-over"] === true,
    takeNewSheet: options["new-sheet"] === true,
    ...(typeof options.piece === "string" && { piece: options.piece }),
    ...(stepKey !== undefined && { stepKey }),
    ...(restMs !== undefined && { restMs }),
  });
  if (how.kind === "quit") {
    terminal.say(how.words);
    return exitCodes.done;
  }
  terminal.say(
    `Evenrow met a fault of its own and stopped: ${how.reason}\nThe place that was shown last is kept.`,
  );
  return exitCodes.fault;
}
