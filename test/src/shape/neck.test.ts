import { describe, expect, test } from "vitest";
import { nearest } from "../../../src/cloth/gauge.ts";
import { neckStations } from "../../../src/shape/neck.ts";
import { NECKS } from "../../../src/shape/necks/index.ts";
import { ShapeStop } from "../../../src/shape/trouble.ts";

// 20 stitches and 28 rows over 10 cm.
const stitch = { widthMm: 5, heightMm: 100 / 28 };
const stationsOf = (style: string, widthMm: number, depthMm: number, topMm = 600) =>
  neckStations(NECKS.get(style)!, { style, widthMm, depthMm, topMm }, stitch);

describe("a neckline's stations", () => {
  test.each([...NECKS.keys()])(
    "of a %s neck stand on whole rows at whole stitches, and widen upward",
    (style) => {
      const stations = stationsOf(style, 160, 150);
      // The top is the shoulders' own height, to its nearest row.
      for (const { heightMm, widthMm } of stations.slice(0, -1)) {
        expect(heightMm / stitch.heightMm).toBeCloseTo(nearest(heightMm / stitch.heightMm), 9);
        expect(widthMm / stitch.widthMm).toBeCloseTo(nearest(widthMm / stitch.widthMm), 9);
      }
      for (const [index, { heightMm, widthMm }] of stations.slice(1).entries()) {
        expect(heightMm).toBeGreaterThanOrEqual(stations[index]!.heightMm);
        expect(widthMm).toBeGreaterThanOrEqual(stations[index]!.widthMm);
      }
      expect(stations.at(-1)).toEqual({ heightMm: 600, widthMm: 160 });
    },
  );

  test("begin as deep as is asked for", () => {
    // 600 mm are 168 rows, 90 mm are 25.
    expect(stationsOf("crew", 160, 90)[0]).toEqual({ heightMm: 143 * stitch.heightMm, widthMm: 60 });
  });

  test("need as many rows as their steps take, and a row to end on", () => {
    // 32 stitches: six steps, the last on the 12th row, so 13 rows.
    expect(() => stationsOf("crew", 160, 13 * stitch.heightMm)).not.toThrow();
    expect(() => stationsOf("crew", 160, 12 * stitch.heightMm)).toThrow(
      "a crew neck of 32 stitches takes 13 rows, and its depth has 12",
    );
    // Of a back neck's two stitches at once one half may wait a row for the carriage: 4 rows, 1 to wait, 1 to end on.
    expect(() => stationsOf("back", 160, 6 * stitch.heightMm)).not.toThrow();
    expect(() => stationsOf("back", 160, 5 * stitch.heightMm)).toThrow(ShapeStop);
  });

  test("leave something of the piece below them", () => {
    expect(() => stationsOf("square", 160, 600)).toThrow("the neck is as deep as the piece is long");
    expect(() => stationsOf("square", 160, 599)).toThrow("the neck is as deep as the piece is long");
    expect(() => stationsOf("square", 160, 590)).not.toThrow();
  });
});
