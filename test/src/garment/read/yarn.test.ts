import { describe, expect, it } from "vitest";
import type { Yarns } from "../../../../src/garment/garment.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { type Changes, expectOnly, type Mistake } from "../../../support/one-mistake.ts";
import { soundGarment } from "../../../support/run-garment.ts";

const yarns = (text: string): Yarns => soundGarment(garmentText({ yarn: `yarn: ${text}` })).yarn;

describe("the yarn", () => {
  it.each<[string, Yarns]>([
    ["{ ground: { tex: 370 } }", { ground: { tex: 370 } }],
    [
      "{ ground: { tex: 370, swatch: { stitches: 50, rows: 70, weight: 38 g } } }",
      { ground: { tex: 370, swatch: { stitches: 3500, grams: 38 } } },
    ],
    [
      "{ ground: { swatch: { stitches: 50, rows: 70, weight: 0.05 kg } }, cord: { swatch: { stitches: 40, weight: 1/4 oz } } }",
      {
        ground: { swatch: { stitches: 3500, grams: 50 } },
        cord: { swatch: { stitches: 40, grams: 7.087381 } },
      },
    ],
  ])("reads %s", (text, expected) => {
    expect(yarns(text)).toEqual(expected);
  });

  const ground = (swatch: string): Changes => ({ yarn: `yarn: { ground: { swatch: ${swatch} } }` });
  const cord = (swatch: string): Changes => ({ yarn: `yarn: { cord: { swatch: ${swatch} } }` });
  it.each<Mistake>([
    [{ yarn: "yarn: { §ground: {} }" }, "missing-key", undefined, "tex: 370, or swatch: { stitches: 50"],
    [
      ground("{ stitches: 50, rows: 70, weight: §38 }"),
      "missing-unit",
      "38",
      "38 g, or another of g, kg or oz",
    ],
    [ground('{ stitches: 50, rows: 70, weight: §"38" }'), "missing-unit", '"38"', "38 g, or another"],
    [ground("{ stitches: 50, rows: 70, weight: §38 grams }"), "unknown-unit", '"38 grams"', "38 g"],
    [ground('{ stitches: 50, rows: 70, weight: §"38,5 g" }'), "decimal-comma", '"38,5 g"', "38.5 g"],
    [
      ground("{ stitches: 50, rows: 70, weight: §38 stone }"),
      "unknown-unit",
      '"38 stone"',
      "one of g, kg or oz",
    ],
    [
      ground("{ stitches: 50, rows: 70, weight: §light }"),
      "not-a-weight",
      '"light"',
      "a weight such as 38 g",
    ],
    [ground("{ stitches: 50, rows: 70, weight: §[38] }"), "wrong-type", "a list of 1", "such as 38 g"],
    [ground("{ stitches: 50, rows: 70, weight: §0 g }"), "zero-size", '"0 g"', "from 0.1 g to 10000 g"],
    [ground("{ stitches: 50, rows: 70, weight: §-3 g }"), "negative-size", '"-3 g"', "from 0.1 g"],
    [ground("{ stitches: 50, rows: 70, weight: §38 kg }"), "absurd-size", '"38 kg"', "to 10000 g"],
    [
      { yarn: "yarn: { ground: { §swatch: { stitches: 50, rows: 70 } } }" },
      "missing-key",
      undefined,
      "weight: 38 g",
    ],
    [
      { yarn: "yarn: { ground: { §swatch: { stitches: 50, weight: 38 g } } }" },
      "missing-key",
      undefined,
      "rows: 70",
    ],
    [ground("{ stitches: §50.5, rows: 70, weight: 38 g }"), "not-whole", "50.5", "50 or 51"],
    [ground("§38 g"), "wrong-type", '"38 g"', "{ stitches: 50, rows: 70, weight: 38 g }"],
    [cord("{ stitches: 40, §rows: 2, weight: 4 g }"), "unknown-key", "rows", "one of stitches, weight"],
    [cord("{ stitches: 40, weight: §4 }"), "missing-unit", "4", "4 g"],
    [
      cord("{ stitches: 40, §wheight: 4 g }".replace("§wheight", "weight: 4 g, §wheight")),
      "unknown-key",
      "wheight",
      "weight",
    ],
  ])("%j is %s", expectOnly);
});
