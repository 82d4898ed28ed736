import { beforeAll, describe, expect, test } from "vitest";
import type { Fit } from "../../../../src/fit/fit.ts";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import { sheetText } from "../../../../src/sheet/text/sheet-text.ts";
import { band, laid, smallGarment, strip } from "../../../support/small-garment.ts";
import { bare, fitOf, plainGarment } from "../support/small-fits.ts";

let fit: Fit;
beforeAll(async () => {
  fit = await fitOf(
    smallGarment({
      title: "Mat",
      gauge: { ground: { stitches: 20, rows: 25, over: "10 cm" } },
      pieces: { mat: strip(20, 12) },
      motifs: { dots: band(4, 6) },
      place: [laid("dots", "mat", {}, { columns: 5 })],
    }),
  );
});

test("a whole sheet reads from the gauge to the finish", () => {
  expect(sheetText(fit, buildSheet(fit), 80).split("\n")).toEqual([
    "Mat: working sheet",
    "==================",
    "",
    "Check first",
    "-----------",
    "",
    "- Ground: 20 stitches and 25 rows over 10 cm",
    "- Finished measurements, as counted from the gauge",
    "  Piece   Cast-on edge    Widest          Length",
    "  mat     10.0 cm ± 0.2   10.0 cm ± 0.2   4.8 cm ± 0.1",
    "- Measure a swatch that is washed and rested as the garment will be. Where it",
    "  differs by more than the gauge's own uncertainty, put your gauge into the file",
    "  and print this sheet again.",
    "",
    "Needles",
    "-------",
    "",
    "- The bed has 100 needles, named L1, L2 and on from the centre to the left, R1,",
    "  R2 and on to the right.",
    "- Needles in work",
    "  Piece   At the start     In all           Rows   Carriage starts",
    "  mat     20, L10 to R10   20, L10 to R10   12     right",
    "",
    "Yarn",
    "----",
    "",
    "- Ground by the gauge: about 6 m (4 to 6 m)",
    "- Ground, to add: 1 m for casting on, seams, tails and waste",
    "- Ground, to have at hand: at least 6 m",
    "- The gauge leaves room: how fully the swatch has relaxed, and a quarter of a",
    "  stitch in its count. A swatch that was weighed is surer: put its stitches,",
    "  rows and weight into the file under yarn.",
    "",
    "mat",
    "---",
    "",
    "- Needles: 20, L10 to R10",
    "- Rows: 12",
    "- dots: 2 repeats",
    "- Knit a few rows of waste yarn, then set the row counter to 0 with the carriage",
    "  at the right.",
    "",
    "row  0  cast on L10 to R10",
    "        dots, repeat 1 of 2: knit the pattern on L10 to R10, 5 repeats of 4",
    "          stitches by 6 rows side by side",
    "        knit 6 rows, to row 6, carriage right",
    "row  6  dots, repeat 2 of 2: from its first row again",
    "        knit 6 rows, to row 12, carriage right",
    "row 12  dots ends: knit plain again on L10 to R10",
    "        bind off all stitches, L10 to R10",
    "",
    "Finish",
    "------",
    "",
    "- Wash and rest the pieces as you did the swatch, then compare their width and",
    "  length with the finished measurements.",
    "",
  ]);
});

/** The lines of a sheet from one that is all of this on. */
const from = (fit: Fit, heading: string, width: number): readonly string[] => {
  const lines = sheetText(fit, buildSheet(fit), width).split("\n");
  return lines.slice(lines.indexOf(heading));
};

describe("the blocks of a piece with a neck", () => {
  const necked = bare(
    plainGarment({
      pieces: {
        strip: strip(20, 12, {
          neck: [
            { height: "32 mm", width: "40 mm" },
            { height: "48 mm", width: "40 mm" },
          ],
        }),
      },
    }),
  );

  test("have a heading each, what to know before them and their shaping above their rows", () => {
    expect(from(necked, "Up to the neck", 80).slice(0, 26)).toEqual([
      "Up to the neck",
      "~~~~~~~~~~~~~~",
      "",
      "- Shaping: bind off 8 at the centre on row 8",
      "",
      "row 0  cast on L10 to R10",
      "       knit 8 rows, to row 8, carriage right",
      "row 8  bind off L4 to R4 with a separate length of yarn",
      "       put L10 to L5 on hold",
      "",
      "First half: the right one, R5 to R10",
      "~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~",
      "",
      "- 6 needles, R5 to R10; it starts at row 8 with the carriage at the right. The",
      "  left half waits on hold, L10 to L5.",
      "",
      "        knit 4 rows, to row 12, carriage right",
      "row 12  bind off all stitches, R5 to R10",
      "",
      "Second half: the left one, L10 to L5",
      "~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~",
      "",
      "- 6 needles, L10 to L5; it starts at row 8 with the carriage at the right. Set",
      "  the row counter back to 8.",
      "",
      "row  8  bring the carriage back to this side, join the yarn again and take L10",
    ]);
  });

  test("are underlined no further than a line is wide", () => {
    const [first, second, underline] = from(necked, "First half: the right one, R5", 30);
    expect([first, second, underline]).toEqual(["First half: the right one, R5", "to R10", "~".repeat(30)]);
  });

  test("break a long run of shaping as an item", () => {
    const shaped = bare(
      plainGarment({
        pieces: {
          strip: {
            outline: [
              { height: "0 mm", width: "100 mm" },
              { height: "80 mm", width: "140 mm" },
              { height: "88 mm", width: "140 mm" },
            ],
          },
        },
      }),
    );
    const lines = from(shaped, "strip", 30);
    const at = lines.findIndex((line) => line.startsWith("- Shaping"));
    expect(lines.slice(at, at + 4)).toEqual([
      "- Shaping: increase 1 at each",
      "  side on rows 3, 8, 13 and 18",
      "",
      "row  0  cast on L10 to R10",
    ]);
  });
});

test("headings of wide characters are underlined as far as they go", () => {
  const wide = { ...fit, garment: { ...fit.garment, title: "編み" } };
  expect(sheetText(wide, buildSheet(wide), 80).split("\n").slice(0, 2)).toEqual([
    "編み: working sheet",
    "=".repeat(4 + 15),
  ]);
});
