import type { Engine } from "../../../solver/program.ts";
import { drawingsIn, loadDrawings } from "../../drawing-file/load-drawings.ts";
import { RefusedFit } from "../../fit/solve.ts";
import { readGarment } from "../../garment/read-garment.ts";
import { type Measured, measureProgress, type Progress } from "../../refit/progress.ts";
import { obstaclesTo, type Refitted, refit } from "../../refit/refit.ts";
import {
  changeWords,
  cordWords,
  noRefitWords,
  outcomeWords,
  soFarWords,
  warningWords,
} from "../../refit/report/refit-text.ts";
import { placedRules } from "../../report/fit-json.ts";
import { inCentimetres } from "../../report/words.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import type { SheetPiece } from "../../sheet/sheet.ts";
import { type PieceWork, stepOf } from "../record.ts";
import { replay } from "./replay.ts";

/** What is asked of a piece in work; plain data, which can be sent to another thread. */
export interface MidwayRequest {
  /** The garment file's path, by which its drawings are found. */
  readonly file: string;
  /** The text that the piece's sheet stands on. */
  readonly garmentText: string;
  /** Which of the file's sizes the piece belongs to. */
  readonly size?: string;
  readonly piece: PieceWork;
  readonly measured: Measured;
  /** Whether the rest is to be fitted anew, or only what was measured to be reckoned with. */
  readonly refits: boolean;
}

/** What is answered, in lines for the knitter; plain data. */
export type MidwayAnswer =
  /** `headline` says in few words where the piece ends at this rate. */
  | { readonly status: "measured"; readonly headline: readonly string[]; readonly lines: readonly string[] }
  | {
      readonly status: "refitted";
      readonly headline: readonly string[];
      readonly lines: readonly string[];
      readonly sheet: SheetPiece;
    }
  /** Nothing fits, or nothing was found in the time allowed; the sheet stays. */
  | { readonly status: "no refit"; readonly lines: readonly string[]; readonly outOfTime?: true }
  /** Nothing can be made of the measurement. */
  | { readonly status: "refused"; readonly lines: readonly string[] };

/** Reckons with what was measured at the row where a piece stands. Never throws what an answer can say. */
export async function midway(
  request: MidwayRequest,
  engine: Engine,
  timeLimitMs: number,
): Promise<MidwayAnswer> {
  const { file, garmentText, size, piece, measured, refits } = request;
  const { row, part } = stepOf(piece);
  const name = piece.sheet.piece;
  if (part > 1)
    return refused(
      "The second half is worked as the first one was: measure in the first half, or below the neck.",
    );
  const read = readGarment(new TextEncoder().encode(garmentText), file, {
    drawing: drawingsIn(await loadDrawings(garmentText, file)),
  });
  const { locate } = read;
  if (!read.garment) return refused("The garment file that the sheet was made from cannot be read any more.");
  const made = await replay({ ...read, garment: read.garment, size }, piece, engine, timeLimitMs);
  if (made.status === "not replayed") return refused(made.reason);
  const { fit, planned } = made;
  const progress = measureProgress(fit, name, row, measured);
  if (progress.status === "unusable") return refused(sentence(progress.problem));
  if (!refits)
    return { status: "measured", headline: headlineOf(progress), lines: soFarWords(progress).map(sentence) };
  try {
    const result = await refit(fit, { piece: name, row, measured }, engine, {
      timeLimitMs,
      cordsMadeFor: planned,
    });
    switch (result.status) {
      case "refitted": {
        const [sheet] = buildSheet(result.fit).pieces;
        const { headline, lines } = refittedWords(result, changeWords(fit, result.fit));
        return { status: "refitted", headline, lines, sheet: sheet! };
      }
      case "does not fit": {
        const found = await obstaclesTo(fit, result.progress, engine);
        const conflict = placedRules(found.conflict, locate);
        return { status: "no refit", lines: [...noRefitWords(name, { ...found, conflict }), stays] };
      }
      case "stopped":
        return { status: "no refit", lines: [sentence(result.reason), stays], outOfTime: true };
      case "unusable":
        return { status: "no refit", lines: [sentence(result.problem), stays] };
    }
  } catch (error) {
    if (!(error instanceof RefusedFit)) throw error;
    return {
      status: "no refit",
      lines: [`An answer was found, but it does not keep the garment's own rules: ${error.message}`, stays],
    };
  }
}

const stays = "The sheet that you follow stays as it is.";

const refused = (...lines: readonly string[]): MidwayAnswer => ({ status: "refused", lines });

const sentence = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? "" : "."}`;

const headlineOf = ({ length }: Progress): readonly string[] => [
  `ends at ${inCentimetres(length.mm)}`,
  `planned ${inCentimetres(length.plannedMm)}`,
];

function refittedWords(result: Refitted, changes: readonly string[]) {
  const short = result.cords.filter(({ left }) => left < 0);
  return {
    headline: [
      `ends at row ${result.fit.pieces[0]!.rows}`,
      result.cords.length === 0 ? "" : short.length === 0 ? "cord enough" : "cord too short",
    ].filter((text) => text !== ""),
    lines: [
      ...changes.map((words) => sentence(`what changes: ${words}`)),
      ...outcomeWords(result).map(sentence),
      ...result.cords.map((cord) => sentence(`cord, ${cordWords(cord)}`)),
      ...warningWords(result),
      ...(result.proven ? [] : ["This is the best found in the time allowed; a better one may exist."]),
    ],
  };
}
