import { describe, expect, test } from "vitest";
import { measurementsTable } from "../../../../src/sheet/document/measurements.ts";
import { cable, laid, smallGarment, strip } from "../../../support/small-garment.ts";
import { bare, fitOf, plainGarment } from "../support/small-fits.ts";

const gauge = (within?: string) => ({
  gauge: { ground: { stitches: 20, rows: 25, over: "10 cm", ...(within && { within }) } },
});

test("each piece has its width at the cast-on, its greatest width and its length", () => {
  // Twenty stitches and 25 rows over 10 cm: a stitch is 5 mm wide and a row 4 mm high. A quarter stitch in 20 is
  // 1.25 %: 1.25 mm of 100 and 1.5 mm of 120; a quarter row in 25 is 1 %: 0.8 mm of 80 and 0.16 mm of 16.
  const fit = bare(
    plainGarment({
      pieces: {
        strip: {
          outline: [
            { height: "0 mm", width: "100 mm" },
            { height: "40 mm", width: "120 mm" },
            { height: "80 mm", width: "80 mm" },
          ],
        },
        cuff: strip(20, 4),
      },
    }),
  );
  expect(measurementsTable(fit)).toEqual({
    kind: "table",
    caption: "Finished measurements, as counted from the gauge",
    head: ["Piece", "Cast-on edge", "Widest", "Length"],
    rows: [
      ["strip", "10.0 cm ± 0.2", "12.0 cm ± 0.2", "8.0 cm ± 0.1"],
      ["cuff", "10.0 cm ± 0.2", "10.0 cm ± 0.2", "1.6 cm ± 0.1"],
    ],
  });
});

test("a piece may be widest at the very last of its rows", () => {
  const fit = bare(
    plainGarment({
      pieces: {
        strip: {
          outline: [
            { height: "0 mm", width: "100 mm" },
            { height: "36 mm", width: "100 mm" },
            { height: "36 mm", width: "110 mm" },
            { height: "40 mm", width: "110 mm" },
          ],
        },
      },
    }),
  );
  expect(measurementsTable(fit).rows[0]!.slice(1, 3)).toEqual(["10.0 cm ± 0.2", "11.0 cm ± 0.2"]);
});

test("how far off a measurement may be is what the file says of its gauge, rounded up to a millimetre", () => {
  // 2 % of 100 mm are 2 mm and of 40 mm 0.8 mm.
  const [row] = measurementsTable(bare(plainGarment(gauge("2 %")))).rows;
  expect(row).toEqual(["strip", "10.0 cm ± 0.2", "10.0 cm ± 0.2", "4.0 cm ± 0.1"]);
  // What comes out whole on paper stays whole: 3 % of 100 mm and 5 % of 40 mm.
  expect(measurementsTable(bare(plainGarment(gauge("3 %")))).rows[0]![1]).toBe("10.0 cm ± 0.3");
  expect(measurementsTable(bare(plainGarment(gauge("5 %")))).rows[0]![3]).toBe("4.0 cm ± 0.2");
  expect(measurementsTable(bare(plainGarment(gauge("1.05 %")))).rows[0]![1]).toBe("10.0 cm ± 0.2");
});

describe("what a cable draws in", () => {
  test("is no width where it is worked", async () => {
    // Four stitches crossed lie as wide as two. Twenty needles and, to make up for it, one more at each side: 22. From
    // row 2 to row 6 they lie as wide as 20, 100 mm; before and above it as 22, 110 mm.
    const fitFrom = (bottom: number) =>
      fitOf(
        smallGarment({
          pieces: { strip: strip(20, 8) },
          motifs: { rope: cable(4, { "draw-in": "50 %" }) },
          place: [laid("rope", "strip", { bottom, top: "0..9" }, { repeats: 1 })],
        }),
      );
    const widths = async (bottom: number) => measurementsTable(await fitFrom(bottom)).rows[0]!.slice(1, 3);
    expect(await widths(2)).toEqual(["11.0 cm ± 0.2", "11.0 cm ± 0.2"]);
    expect(await widths(0)).toEqual(["10.0 cm ± 0.2", "11.0 cm ± 0.2"]);
  });
});
