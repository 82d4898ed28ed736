import { expect, test } from "vitest";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import { needlesSection } from "../../../../src/sheet/document/needles.ts";
import { strip } from "../../../support/small-garment.ts";
import { bare, plainGarment } from "../support/small-fits.ts";

test("the bed and the needles of each piece are told, from the start and in all", () => {
  const fit = bare(
    plainGarment({
      bed: { needles: 101 },
      pieces: {
        strip: strip(20, 10),
        // Leans to the right: 8 needles to each side at first, then 4 and 12.
        leaning: {
          outline: [
            { height: "0 mm", left: "40 mm", right: "40 mm" },
            { height: "80 mm", left: "20 mm", right: "60 mm" },
            { height: "100 mm", left: "20 mm", right: "60 mm" },
          ],
        },
      },
    }),
  );
  expect(needlesSection(fit, buildSheet(fit))).toEqual({
    title: "Needles",
    content: [
      {
        kind: "paragraph",
        text: "The bed has 101 needles, named L1, L2 and on from the centre to the left, R1, R2 and on to the right.",
      },
      {
        kind: "table",
        caption: "Needles in work",
        head: ["Piece", "At the start", "In all", "Rows", "Carriage starts"],
        rows: [
          ["strip", "20, L10 to R10", "20, L10 to R10", "10", "right"],
          // Never more than 16 at once, but 20 of the bed.
          ["leaning", "16, L8 to R8", "20, L8 to R12", "25", "right"],
        ],
      },
    ],
  });
});

test("each piece starts with the carriage where it says itself", () => {
  const fit = bare(plainGarment());
  const pieces = fit.pieces.map((piece) => ({ ...piece, carriage: "left" as const }));
  const [, table] = needlesSection({ ...fit, pieces }, buildSheet(fit)).content;
  expect(table).toMatchObject({ rows: [["strip", "20, L10 to R10", "20, L10 to R10", "10", "left"]] });
});
