import { describe, expect, test } from "vitest";
import { readSwatch } from "../../../src/swatch/read-swatch.ts";

describe("readSwatch", () => {
  test.each([
    [
      "40 stitches 18.2 cm, 60 rows 19.4 cm",
      { of: "ground", washed: false, stitches: { count: 40, mm: 182 }, rows: { count: 60, mm: 194 } },
    ],
    [
      "Washed: 60 rows over 7.5 in, 40.5 stitches over 7 in",
      { of: "ground", washed: true, stitches: { count: 40.5, mm: 177.8 }, rows: { count: 60, mm: 190.5 } },
    ],
    ["cord: 50 stitches 26 cm", { of: "cord", washed: false, stitches: { count: 50, mm: 260 } }],
    [
      "washed cord on 3 needles: 50 stitches 26 cm",
      { of: "cord", washed: true, needles: 3, stitches: { count: 50, mm: 260 } },
    ],
    [
      "cord 40 stitches over 21 cm on 3 needles",
      { of: "cord", washed: false, needles: 3, stitches: { count: 40, mm: 210 } },
    ],
    ["40 sts over 21 cm of washed cord", { of: "cord", washed: true, stitches: { count: 40, mm: 210 } }],
    [
      "40 stitches 21 cm on 4 needles",
      { of: "cord", washed: false, needles: 4, stitches: { count: 40, mm: 210 } },
    ],
    [
      "unwashed cord on 3: 40 st. 21 cm",
      { of: "cord", washed: false, needles: 3, stitches: { count: 40, mm: 210 } },
    ],
    [
      "washed 31 sts 14.2 cm and 44 rows over 14.6 cm",
      { of: "ground", washed: true, stitches: { count: 31, mm: 142 }, rows: { count: 44, mm: 146 } },
    ],
    [
      "31 st 14.2 cm,44 rows 14.6 cm",
      { of: "ground", washed: false, stitches: { count: 31, mm: 142 }, rows: { count: 44, mm: 146 } },
    ],
  ])("%s", (text, swatch) => {
    expect(readSwatch(text)).toEqual({ swatch });
  });

  test.each([
    ["", "missing"],
    ["40 stitches 18.2 cm", "rows over a height are missing"],
    ["60 rows 19.4 cm", "stitches over a width are missing"],
    ["40 stitches 18.2 cm, 40 stitches 18 cm", "said twice"],
    ["40 stitches 18,2 cm, 60 rows 19.4 cm", "with a point"],
    ["40 stitches 18.2, 60 rows 19.4 cm", "needs its unit"],
    ["40,5 stitches 18.2 cm, 60 rows 19.4 cm", "with a point"],
    ["40 stiches 18.2 cm, 60 rows 19.4 cm", "nothing that is counted"],
    ["ground on 3 needles 40 stitches 18.2 cm", "what was measured"],
    ["forty stitches 18.2 cm, 60 rows 19.4 cm", "how many over what length"],
    ["sleeve: 40 stitches 18.2 cm, 60 rows 19.4 cm", "what was measured"],
    ["ground: washed: 40 stitches 18.2 cm", "what was measured"],
    ["40 stitches 182 m, 60 rows 19.4 cm", "over that length"],
    ["40 stitches 1 cm, 60 rows 19.4 cm", "0.25 mm"],
    ["0 stitches 18 cm, 60 rows 19.4 cm", "no count"],
    ["cord on 40 needles: 50 stitches 26 cm", "on 40 needles"],
    ["cord: 50 stitches 26 cm, 50 rows 26 cm", "rows are not counted"],
    [`${"4".repeat(120)} stitches 18 cm`, "too long"],
  ])("refuses %s", (text, problem) => {
    expect(readSwatch(text)).toEqual({
      problem: expect.stringContaining(problem) as string,
      right: expect.any(String) as string,
    });
  });

  test.each([
    ["31 stitches 14,2 cm, 44 rows 14.6 cm", "14.2 cm"],
    ["31 stiches 14.2 cm, 44 rows 14.6 cm", "stitches (the nearest known word)"],
    ["31 stitches 14.2 cm, 44 rwos 14.6 cm", "rows (the nearest known word)"],
    ["cord stitches over 21 cm on 3 needles", "cord on 3 needles: 50 stitches 26 cm"],
    ["40 furlongs 18.2 cm", "40 stitches 18.2 cm, 60 rows 19.4 cm"],
  ])("says what is right instead of %s", (text, right) => {
    expect(readSwatch(text)).toMatchObject({ right });
  });
});
