import { buildSheet } from "../../sheet/build-sheet.ts";
import type { Sheet } from "../../sheet/sheet.ts";
import { stateFolder } from "../../state/folder.ts";
import { type KeptWork, keptWork, type WorkPlace, workPlace } from "../../state/work-place.ts";
import { differencesOf, type SheetChange, sheetsToKeep } from "../../work/differences.ts";
import { applyEvent, type WorkEvent } from "../../work/events.ts";
import { newRecord, type WorkRecord } from "../../work/record.ts";
import type { CommandInput } from "../command.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";
import { readInput } from "../files.ts";
import { fittedFile } from "../fitted.ts";
import { fileOperand } from "../load-garment.ts";

/** The work on a garment as the command finds it. */
export interface WorkAtHand {
  readonly file: string;
  readonly place: WorkPlace;
  readonly record: WorkRecord;
  /** What the knitter is to be asked, where the garment file gives another sheet than the one that is followed. */
  readonly change?: SheetChange;
  /** Why nothing of the garment file as it is now could be looked at. */
  readonly trouble?: string;
}

/** Where the work on the command's file is kept. */
export async function placeOfWork(input: CommandInput): Promise<WorkPlace> {
  const file = fileOperand(input, "work");
  if (file === "-")
    throw new CommandError("work needs a garment file that it can find again, not standard input.");
  const { size } = input.options;
  return workPlace(stateFolder(), file, typeof size === "string" ? size : undefined);
}

/**
 * Reads what is kept and, where there is nothing yet or the garment file was changed since, what the file says now.
 *
 * @throws CommandError where there is nothing to work from
 */
export async function workAtHand(input: CommandInput): Promise<WorkAtHand> {
  const place = await placeOfWork(input);
  const file = fileOperand(input, "work");
  const kept = readable(keptWork(place), place);
  if (!kept) {
    const sheet = await sheetNow(input);
    return { file, place, record: newRecord(sheet, await textOf(file, input)) };
  }
  const text = await textOf(file, input).catch(() => undefined);
  if (text === kept.garmentText) return { file, place, record: kept };
  const sheet = text === undefined ? undefined : await sheetNow(input).catch(toldWhy(input));
  if (text === undefined || !sheet) {
    const why = text === undefined ? "cannot be read" : "was changed and gives no sheet now";
    const trouble = `${file} ${why}; the work goes on with the sheet that was begun.`;
    input.terminal.say(trouble);
    return { file, place, record: kept, trouble };
  }
  return changedFile(file, place, kept, text, sheet);
}

/** @throws CommandError where what is kept cannot be read */
export function readable(kept: KeptWork, place: WorkPlace): WorkRecord | undefined {
  if (kept.status === "kept") return kept.record;
  if (kept.status === "none") return undefined;
  throw new CommandError(
    `The place that was kept in ${place.journal} cannot be read: ${kept.reason}.\nIt was left as it is. To begin anew, move it away.`,
  );
}

function changedFile(
  file: string,
  place: WorkPlace,
  record: WorkRecord,
  garmentText: string,
  { pieces }: Sheet,
): WorkAtHand {
  const differences = differencesOf(record, pieces);
  const take: WorkEvent = { kind: "follow", garmentText, sheets: pieces };
  if (differences.length === 0) return { file, place, record: applyEvent(record, take) };
  const keep: WorkEvent = { kind: "follow", garmentText, sheets: sheetsToKeep(record, pieces) };
  return { file, place, record, change: { differences, keep, take } };
}

const textOf = async (file: string, { terminal }: CommandInput): Promise<string> =>
  new TextDecoder().decode(await readInput(file, terminal));

/** Why there is no sheet was said, save where the file is wrong. */
async function sheetNow(input: CommandInput): Promise<Sheet> {
  const fitted = await fittedFile(input, "work");
  if (!fitted.fit) throw new CommandError("There is no sheet to work from.", fitted.code);
  return buildSheet(fitted.fit);
}

const toldWhy =
  ({ terminal }: CommandInput) =>
  (error: unknown): undefined => {
    if (!(error instanceof CommandError) || error.code === exitCodes.fault) throw error;
    terminal.say(error.message);
  };
