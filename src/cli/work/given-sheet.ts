import type { SheetPiece } from "../../sheet/sheet.ts";
import { differencesOf } from "../../work/differences.ts";
import type { WorkEvent } from "../../work/events.ts";
import { ofAsMany, pieceNamed, type WorkRecord } from "../../work/record.ts";
import { stepsOf } from "../../work/steps.ts";
import { CommandError } from "../exit-codes.ts";

/**
 * Goes over to a sheet that is given as JSON, by itself (`evenrow-sheet/1`) or in a piece fitted anew
 * (`evenrow-refit/1`); pieces that it lacks keep theirs.
 *
 * @throws CommandError where it is none, is of other pieces, or is unlike what is knitted
 */
export function followGivenSheet(name: string, text: string, record: WorkRecord): WorkEvent {
  const given = piecesIn(name, text);
  const strange = given.find(({ piece }) => !pieceNamed(record, piece));
  if (strange)
    throw new CommandError(`${name} is of a piece called "${strange.piece}", and the garment has none.`);
  const sheets = record.pieces.map(({ sheet }) =>
    ofAsMany(given.find(({ piece }) => piece === sheet.piece) ?? sheet, sheet),
  );
  const unlike = differencesOf(record, sheets).find(({ isSameSoFar }) => !isSameSoFar);
  if (unlike)
    throw new CommandError(`${name} is unlike what is knitted of ${unlike.piece}: ${unlike.words.join(" ")}`);
  return { kind: "follow", garmentText: record.garmentText, sheets };
}

interface GivenPiece {
  readonly piece: string;
  readonly needles_at_start: SheetPiece["needlesAtStart"];
  readonly rows_in_all: number;
  readonly rows: SheetPiece["rows"];
}

function piecesIn(name: string, text: string): readonly SheetPiece[] {
  try {
    const whole = JSON.parse(text) as { readonly sheet?: unknown };
    const { format, pieces } = (whole.sheet ?? whole) as { format: string; pieces: readonly GivenPiece[] };
    if (format !== "evenrow-sheet/1" || pieces.length === 0) throw new TypeError(format);
    return pieces.map(pieceFrom);
  } catch {
    // Whatever is wrong with it, a sheet that this program wrote has none of it.
    throw new CommandError(
      `${name} is not a working sheet as evenrow sheet --json or evenrow refit --json writes it.`,
    );
  }
}

function pieceFrom({ piece, needles_at_start, rows_in_all, rows }: GivenPiece): SheetPiece {
  const sheet: SheetPiece = { piece, needlesAtStart: needles_at_start, rowsInAll: rows_in_all, rows };
  if (typeof piece !== "string" || stepsOf(sheet).at(-1)?.row !== rows_in_all) throw new TypeError(piece);
  return sheet;
}
