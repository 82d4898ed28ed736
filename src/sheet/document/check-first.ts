import type { Fit } from "../../fit/fit.ts";
import type { Garment } from "../../garment/garment.ts";
import { counted, inCentimetres } from "../../report/words.ts";
import { type Facts, paragraph, type Section } from "./document.ts";
import { measurementsTable } from "./measurements.ts";

/** The gauge everything was counted with, and what the pieces measure by it. */
export const checkFirstSection = (fit: Fit): Section => ({
  title: "Check first",
  content: [
    gaugeFacts(fit.garment),
    measurementsTable(fit),
    paragraph(
      "Measure a swatch that is washed and rested as the garment will be. Where it differs by more than the gauge's own uncertainty, put your gauge into the file and print this sheet again.",
    ),
  ],
});

function gaugeFacts({ gauge: { ground, cord } }: Garment): Facts {
  return {
    kind: "facts",
    facts: [
      {
        name: "Ground",
        value: `${counted(ground.stitches, "stitch", "stitches")} and ${counted(ground.rows, "row")} over ${inCentimetres(ground.overMm)}, washed and rested`,
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
