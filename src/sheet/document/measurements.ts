import { groundStitch } from "../../cloth/gauge.ts";
import { gaugeUncertainty } from "../../cloth/gauge-uncertainty.ts";
import type { Fit } from "../../fit/fit.ts";
import { stitchesAcross } from "../../fit/stitches-across.ts";
import type { Table } from "./document.ts";

/** What each piece measures once it is washed and rested, and how far off that may be by the gauge alone. */
export function measurementsTable(fit: Fit): Table {
  const { ground } = fit.garment.gauge;
  const { widthMm, heightMm } = groundStitch({ ground });
  const doubt = gaugeUncertainty(ground);
  return {
    kind: "table",
    caption: "Finished measurements, as counted from the gauge",
    head: ["Piece", "Cast-on edge", "Widest", "Length"],
    rows: fit.pieces.map((piece) => {
      const widths = Array.from({ length: piece.rows + 1 }, (_, row) => stitchesAcross(fit, piece, row));
      return [
        piece.name,
        measured(widths[0]! * widthMm, doubt.stitches),
        measured(Math.max(...widths) * widthMm, doubt.stitches),
        measured(piece.rows * heightMm, doubt.rows),
      ];
    }),
  };
}

const measured = (mm: number, within: number): string =>
  `${(mm / 10).toFixed(1)} cm ± ${(Math.ceil(within * mm - 1e-9) / 10).toFixed(1)}`;
