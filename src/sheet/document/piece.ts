import { needleCount, rangeName } from "../../cloth/bed.ts";
import type { Fit, FittedPlacement } from "../../fit/fit.ts";
import { workedSegments } from "../../fit/worked-segments.ts";
import { timesMade } from "../../garment/times-made.ts";
import { mirrorWords } from "../../report/mirror-words.ts";
import { partWords } from "../../report/part-words.ts";
import { counted, listed } from "../../report/words.ts";
import type { SheetPiece } from "../sheet.ts";
import { blocksOf } from "./blocks.ts";
import { castOnWords } from "./cast-on.ts";
import type { Fact, PieceSection } from "./document.ts";
import { runningRows } from "./running-row.ts";

/** One piece of the sheet, from its needles to its bind-off. */
export function pieceSection(fit: Fit, piece: SheetPiece): PieceSection {
  const placements = fit.placements.filter((placement) => placement.piece === piece.piece);
  const columns = (motif: string): number =>
    Math.max(...placements.filter((one) => one.motif === motif).map((one) => one.columns));
  const start = piece.needlesAtStart;
  const times = timesMade(fit.garment, piece.piece);
  return {
    piece: piece.piece,
    needles: {
      kind: "facts",
      facts: [
        ...(times > 1 ? [{ name: "Make", value: `${times} alike` }] : []),
        { name: "Needles", value: `${needleCount(start)}, ${rangeName(start)}` },
        { name: "Rows", value: String(piece.rowsInAll) },
        ...placements.map(ornamentFact),
      ],
    },
    castOn: castOnWords(piece),
    blocks: blocksOf(piece, { columns, running: runningRows(fit, piece.piece) }),
  };
}

function ornamentFact(placement: FittedPlacement): Fact {
  const { motif, sections, panel } = placement;
  const worked = workedSegments(sections);
  const more = [mirrorWords(panel), partWords(placement)].filter((words) => words !== undefined);
  return {
    name: motif,
    value: [
      sections
        .map(({ look, repeats }, index) => {
          const quantities = [...look.values].map(([name, value]) => `${name} ${value}`);
          const counts = worked[index]!.map(({ name, pickup }) => `${name} count ${pickup}`);
          return [listed([...quantities, ...counts]), counted(repeats, "repeat")]
            .filter((words) => words !== "")
            .join("; ");
        })
        .join("; then "),
      ...more,
    ].join("; "),
  };
}
