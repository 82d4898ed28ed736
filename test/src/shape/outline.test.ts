import { describe, expect, test } from "vitest";
import type { ShapeStation } from "../../../src/shape/description.ts";
import { outlineStations } from "../../../src/shape/outline.ts";
import { ShapeStop } from "../../../src/shape/trouble.ts";

const stitch = { widthMm: 4, heightMm: 3 };
const outlineOf = (stations: readonly ShapeStation[]) => outlineStations(stations, "shawl", Number, stitch);

describe("an outline", () => {
  test("keeps full widths where it is the same on both sides, and both sides where it is not", () => {
    expect(
      outlineOf([
        { height: "0", width: "100" },
        { height: "50", width: "80" },
      ]),
    ).toEqual([
      { heightMm: 0, widthMm: 100 },
      { heightMm: 50, widthMm: 80 },
    ]);
    expect(
      outlineOf([
        { height: "0", width: "100" },
        { height: "50", left: "20", right: "60" },
      ]),
    ).toEqual([
      { heightMm: 0, leftMm: 50, rightMm: 50 },
      { heightMm: 50, leftMm: 20, rightMm: 60 },
    ]);
  });

  test("says nothing twice, and keeps a step", () => {
    expect(
      outlineOf([
        { height: "0", width: "100" },
        { height: "0", width: "100" },
        { height: "30", width: "100" },
        { height: "30", width: "80" },
      ]),
    ).toEqual([
      { heightMm: 0, widthMm: 100 },
      { heightMm: 30, widthMm: 100 },
      { heightMm: 30, widthMm: 80 },
    ]);
  });

  test("draws a curve by as many lines as its wider side takes, and ends it exactly", () => {
    const stations = outlineOf([
      { height: "0", left: "100", right: "100" },
      { height: "90", left: "40", right: "98", curve: "scoop" },
    ]);
    expect(stations.length).toBeGreaterThan(4);
    expect(stations.at(-1)).toEqual({ heightMm: 90, leftMm: 40, rightMm: 98 });
  });

  test("has no curve where nothing lies between two heights", () => {
    expect(
      outlineOf([
        { height: "0", width: "100" },
        { height: "0", width: "60", curve: "bell" },
        { height: "10", width: "60" },
      ]),
    ).toHaveLength(3);
  });

  test.each<[string, readonly ShapeStation[], RegExp]>([
    [
      "heights that fall",
      [
        { height: "0", width: "100" },
        { height: "20", width: "100" },
        { height: "15", width: "100" },
      ],
      /leave no room between two of its heights/,
    ],
    ["no width", [{ height: "0", width: "0" }], /leave it no width 0 cm above the cast-on edge/],
    ["a side beyond the centre", [{ height: "0", left: "-1", right: "50" }], /leave it no width/],
  ])("with %s can't be made", (_, stations, message) => {
    expect(() => outlineOf(stations)).toThrow(ShapeStop);
    expect(() => outlineOf(stations)).toThrow(message);
  });
});
