import { rowOf } from "../../cloth/counted-piece.ts";
import { groundStitch } from "../../cloth/gauge.ts";
import { outlineDifferences } from "../../cloth/outline-differences.ts";
import type { Fit } from "../../fit/fit.ts";
import type { Garment } from "../../garment/garment.ts";
import { groundWords } from "../../report/gauge-words.ts";
import { differenceLines } from "../../report/outline-differences.ts";
import { counted, inCentimetres } from "../../report/words.ts";
import { type Facts, type Paragraph, paragraph, type Section } from "./document.ts";
import { measurementsTable } from "./measurements.ts";

/** The gauge everything was counted with, and what the pieces measure by it. */
export const checkFirstSection = (fit: Fit): Section => ({
  title: "Check first",
  content: [
    gaugeFacts(fit.garment),
    measurementsTable(fit),
    ...offOutline(fit),
    paragraph(
      "Measure a swatch that is washed and rested as the garment will be. Where it differs by more than the gauge's own uncertainty, put your gauge into the file and print this sheet again.",
    ),
  ],
});

/**
 * Edges that leave their outline by more than two stitches' width: worth knowing before the piece is knitted. They are
 * measured at the outline's own length, which the fit may have changed.
 */
function offOutline({ garment, pieces }: Fit): readonly Paragraph[] {
  const stitch = groundStitch(garment.gauge);
  return garment.pieces.flatMap((piece) => {
    const rows = pieces.find(({ name }) => name === piece.name)?.rows;
    if (rows === undefined) return [];
    const ownRows = rowOf(piece.outline.at(-1)!.heightMm, stitch);
    const measured = rows === ownRows ? "" : `, before it became ${counted(rows, "row")} long`;
    return differenceLines(
      piece.name,
      outlineDifferences(piece, stitch).filter(({ mm }) => Math.abs(mm) > 2 * stitch.widthMm),
    ).map((line) => paragraph(`Knitted edge beside the outline: ${line}${measured}.`));
  });
}

function gaugeFacts({ gauge: { ground, cord } }: Garment): Facts {
  return {
    kind: "facts",
    facts: [
      {
        name: "Ground",
        value: groundWords(ground),
      },
      ...(cord
        ? [
            {
              name: "Cord",
              value: `${counted(cord.stitches, "cord stitch", "cord stitches")} over ${inCentimetres(cord.overMm)}, knitted on ${counted(cord.needles, "needle")}, measured in the middle of a piece of cord`,
            },
          ]
        : []),
    ],
  };
}
