import { needleCount, needlesBetween, rangeName } from "../../cloth/bed.ts";
import type { Fit } from "../../fit/fit.ts";
import { counted } from "../../report/words.ts";
import type { Sheet } from "../sheet.ts";
import { paragraph, type Section } from "./document.ts";

/** The needles each piece takes, so that all are seen to before anything is cast on. */
export const needlesSection = (fit: Fit, sheet: Sheet): Section => ({
  title: "Needles",
  content: [
    paragraph(
      `The bed has ${counted(fit.garment.bed.needles, "needle")}, named L1, L2 and on from the centre to the left, R1, R2 and on to the right.`,
    ),
    {
      kind: "table",
      caption: "Needles in work",
      head: ["Piece", "At the start", "In all", "Rows", "Carriage starts"],
      rows: sheet.pieces.map(({ piece: name, needlesAtStart, rowsInAll }) => {
        const piece = fit.pieces.find((one) => one.name === name)!;
        // A piece that leans to one side takes more of the bed than it ever has in work at once.
        const inAll = needlesBetween(-Math.max(...piece.left), Math.max(...piece.right));
        return [name, inWork(needlesAtStart), inWork(inAll), String(rowsInAll), piece.carriage];
      }),
    },
  ],
});

const inWork = (range: readonly [number, number]): string => `${needleCount(range)}, ${rangeName(range)}`;
