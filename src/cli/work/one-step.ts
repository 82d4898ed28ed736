import { startWork } from "../../state/work-session.ts";
import { applyEvents, type WorkEvent } from "../../work/events.ts";
import { ownerWords } from "../../work/owner-words.ts";
import { pieceWords, placeLines } from "../../work/place-text.ts";
import { currentPiece, pieceNamed, stepOf, type WorkRecord } from "../../work/record.ts";
import { partsWith, stepsOf } from "../../work/steps.ts";
import { numberOption } from "../arguments.ts";
import type { CommandInput } from "../command.ts";
import { CommandError, type ExitCode, exitCodes } from "../exit-codes.ts";
import { followGivenSheet } from "./given-sheet.ts";
import { measureHere, measurementAsked } from "./measure.ts";
import { readable, type WorkAtHand } from "./work-at-hand.ts";

const mostRows = 100_000;

/** What the command line asks to be done, in this order; a piece that is named comes first. */
function eventsAsked({ options }: CommandInput, record: WorkRecord): readonly WorkEvent[] {
  const choose: readonly WorkEvent[] =
    typeof options.piece === "string" ? [{ kind: "choose", piece: options.piece }] : [];
  const chosen = currentPiece(applyEvents(record, choose));
  const row = numberOption("row", options.row, { least: 0, most: mostRows });
  const half = numberOption("half", options.half, { least: 1, most: 2 });
  return [
    ...choose,
    ...(row === undefined
      ? []
      : [
          {
            kind: "jump",
            row,
            part: half ?? nearestPart(partsWith(chosen.sheet, row), stepOf(chosen).part),
          } as const,
        ]),
    ...(options.next === true ? [{ kind: "next" } as const] : []),
    ...(options.back === true ? [{ kind: "back" } as const] : []),
    ...(typeof options.note === "string" ? [{ kind: "note", text: options.note } as const] : []),
    ...(options.mistake === true ? [{ kind: "mistake" } as const] : []),
  ];
}

const nearestPart = (parts: readonly number[], present: number): number =>
  parts.includes(present) ? present : (parts[0] ?? 1);

/** Does what is asked without a screen, through the same lock and journal, and says what to do now. */
export async function doneInOneStep(
  input: CommandInput,
  { place, record, change }: WorkAtHand,
  givenSheet?: { readonly name: string; readonly text: string },
): Promise<ExitCode> {
  const { terminal, options } = input;
  const measured = measurementAsked(input);
  const starting = startWork(place, options["take-over"] === true);
  if (starting.status === "held")
    throw new CommandError(`${ownerWords(starting.owner)}\nLeave it there, or add --take-over.`);
  if (starting.status === "failed") throw notKept(place.folder, starting.reason);
  const { session } = starting;
  try {
    // Another copy may have gone on since this one looked.
    const now = change
      ? (readable(starting.kept, place) ?? record)
      : (latest(starting.kept, record) ?? record);
    if (change && options["new-sheet"] !== true) sayChange(input, change.differences);
    const followed: readonly WorkEvent[] = change && options["new-sheet"] === true ? [change.take] : [];
    const before = applyEvents(now, followed);
    const given = givenSheet ? [followGivenSheet(givenSheet.name, givenSheet.text, before)] : [];
    const asked = [...followed, ...given, ...eventsAsked(input, applyEvents(before, given))];
    refuseImpossible(now, asked);
    const taken = measured && (await measureHere(input, place, applyEvents(now, asked), measured));
    const events = [...asked, ...(taken?.events ?? [])];
    const keeping = session.keep(now, events);
    if (keeping.status === "failed") throw notKept(place.folder, keeping.reason);
    if (keeping.status === "lost")
      throw new CommandError("Another copy took the work over; nothing was done.");
    sayLeap(input, now, asked);
    terminal.out([...(taken?.lines ?? []), ...placeLines(currentPiece(applyEvents(now, events)))].join("\n"));
    return taken?.code ?? exitCodes.done;
  } finally {
    session.close();
  }
}

/** What is kept now, unless it was kept under an earlier text of the file whose sheets are the same. */
function latest(kept: Parameters<typeof readable>[0], found: WorkRecord): WorkRecord | undefined {
  return kept.status === "kept" && kept.record.garmentText === found.garmentText ? kept.record : undefined;
}

const notKept = (folder: string, reason: string): CommandError =>
  new CommandError(`The place cannot be kept in ${folder}: ${reason}. Nothing was counted.`);

function refuseImpossible(record: WorkRecord, events: readonly WorkEvent[]): void {
  let now = record;
  for (const event of events) {
    const after = applyEvents(now, [event]);
    const piece = currentPiece(now);
    const { sheet } = piece;
    if (after === now && event.kind === "next")
      throw new CommandError(
        `${pieceWords(piece)}${sheet.make === undefined ? "" : ","} is finished: it has ${sheet.rowsInAll} rows.`,
      );
    if (after === now && event.kind === "back") throw new CommandError(`${sheet.piece} is at its beginning.`);
    if (
      after === now &&
      event.kind === "jump" &&
      (stepOf(piece).row !== event.row || stepOf(piece).part !== event.part)
    )
      throw new CommandError(`${sheet.piece} has no row ${event.row} there; it has ${sheet.rowsInAll} rows.`);
    now = after;
  }
}

/** More rows than these are not gone over unsaid, because nobody can be asked here. */
const longestLeap = 20;

/** Says how to take it back where a jump goes on over many rows at which something was to do. */
function sayLeap(
  { terminal, operands, options }: CommandInput,
  record: WorkRecord,
  events: readonly WorkEvent[],
): void {
  const index = events.findIndex(({ kind }) => kind === "jump");
  if (index < 0) return;
  const [before, after] = [index, index + 1].map((end) =>
    currentPiece(applyEvents(record, events.slice(0, end))),
  );
  const over = stepsOf(after!.sheet).slice(before!.at, after!.at);
  if (over.length <= longestLeap || over.every(({ phrases }) => phrases.length === 0)) return;
  const [from, to] = [stepOf(before!), stepOf(after!)];
  const size = typeof options.size === "string" ? ` --size "${options.size}"` : "";
  const half = partsWith(before!.sheet, from.row).length > 1 ? ` --half ${from.part}` : "";
  terminal.say(
    `${pieceWords(after!)}: went from row ${from.row} to row ${to.row}; evenrow work ${operands[0]}${size} --row ${from.row}${half} goes back.`,
  );
}

function sayChange(
  { terminal }: CommandInput,
  differences: readonly { piece: string; words: readonly string[] }[],
) {
  terminal.say("The garment file was changed since; the work goes on with the sheet that was begun.");
  for (const { piece, words } of differences) terminal.say(`${piece}: ${words.join(" ")}`);
  terminal.say("To follow the new sheet add --new-sheet.");
}

/** @throws CommandError where the garment has no piece of that name */
export function refuseUnknownPiece(record: WorkRecord, name: string | boolean | undefined): void {
  if (typeof name !== "string" || pieceNamed(record, name)) return;
  const names = record.pieces.map(({ sheet }) => `"${sheet.piece}"`).join(", ");
  throw new CommandError(`The garment has no piece called "${name}"; it has ${names}.`);
}
